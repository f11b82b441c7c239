package lessons

import (
	"forel/geometry/fit"
	"forel/geometry/lessons"
	"forel/render/data"
	renderfit "forel/render/fit"
)

type mm = data.MM

// JSON returns what was learnt for other programs, in millimetres. Advice may be nil.
func JSON(l lessons.Learnt, a *Advice) ([]byte, error) {
	job := any(nil)
	if a != nil {
		job = data.Object{
			{"title", a.Title},
			{"clearances", renderfit.SetsJSON(a.Clearances)},
			{"chance_as_told", renderfit.ChanceJSON(a.Told)},
			{"chance_with_own_errors", renderfit.ChanceJSON(a.Own)},
			{"chance_with_clearances", renderfit.ChanceJSON(a.Then)},
		}
	}
	return data.JSON("lessons", data.Object{
		{"records", l.Cases},
		{"fewest_cases", lessons.Fewest}, // that anything is concluded from
		{"lessons", data.List(l.Lessons, lessonJSON)},
		{"sets", renderfit.SetsJSON(l.Sets())}, // of [uncertainty]
		{"slips", data.List(l.Slips, func(s lessons.Slip) data.Object {
			return data.Object{{"record", s.Case}, {"line", s.Line}, {"key", s.Key}, {"value_mm", mm(s.Value)}, {"expected_mm", mm(s.Mean)}}
		})},
		{"changed", l.Changed}, // lengths left out since something was done to the case before
		{"job", job},
	})
}

func lessonJSON(one lessons.Lesson) data.Object {
	var off, spread any
	if one.Enough {
		o, w := one.Off, one.Own
		if one.Sort == fit.Play {
			w = o
		}
		// A mean, from what was expected, with the interval that holds the truth in 19 of 20
		// such samples, and whether it is off by more than chance; two standard deviations of
		// its own.
		off = data.Object{{"mean_mm", mm(o.Mean)}, {"low_mm", mm(o.MeanLow)}, {"high_mm", mm(o.MeanHigh)}, {"biased", o.Biased()}}
		spread = data.Object{{"value_mm", mm(2 * w.SD)}, {"low_mm", mm(2 * w.SDLow)}, {"high_mm", mm(2 * w.SDHigh)}}
	}
	return data.Object{
		{"key", one.Key},
		{"name", one.Name},
		{"sort", one.Sort},
		{"cases", one.Cases},
		{"lengths", max(one.Off.N, one.Cases)},
		{"enough", one.Enough},
		{"off", off},
		{"plus_minus", spread},
		{"reckoned_plus_minus_mm", mm(one.Was)},
	}
}
