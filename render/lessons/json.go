package lessons

import (
	"fmt"

	"forel/geometry/fit"
	"forel/geometry/lessons"
	"forel/render/data"
	renderfit "forel/render/fit"
)

type mm = data.MM

type jsonLessons struct {
	Records int          `json:"records"`
	Fewest  int          `json:"fewest_cases"` // that anything is concluded from
	Lessons []jsonLesson `json:"lessons"`
	Sets    []jsonSet    `json:"sets"` // of [uncertainty]
	Slips   []jsonSlip   `json:"slips"`
	Changed int          `json:"changed"` // lengths left out since something was done to the case before
	Job     *jsonAdvice  `json:"job,omitempty"`
}

type jsonSet = renderfit.JSONSet

type jsonLesson struct {
	Key     string      `json:"key"`
	Name    string      `json:"name"`
	Sort    string      `json:"sort"`
	Cases   int         `json:"cases"`
	Lengths int         `json:"lengths"`
	Enough  bool        `json:"enough"`
	Off     *jsonAbout  `json:"off,omitempty"`        // from what was expected
	Spread  *jsonAround `json:"plus_minus,omitempty"` // of its own, two standard deviations
	Was     mm          `json:"reckoned_plus_minus_mm"`
}

// jsonAbout is a mean with the interval that holds the truth in 19 of 20 such samples.
type jsonAbout struct {
	Mean   mm   `json:"mean_mm"`
	Low    mm   `json:"low_mm"`
	High   mm   `json:"high_mm"`
	Biased bool `json:"biased"` // by more than chance
}

type jsonAround struct {
	Value mm `json:"value_mm"`
	Low   mm `json:"low_mm"`
	High  mm `json:"high_mm"`
}

type jsonSlip struct {
	Record   string `json:"record"`
	Line     int    `json:"line"`
	Key      string `json:"key"`
	Value    mm     `json:"value_mm"`
	Expected mm     `json:"expected_mm"`
}

type jsonAdvice struct {
	Title      string               `json:"title"`
	Clearances []jsonSet            `json:"clearances"`
	Told       renderfit.JSONChance `json:"chance_as_told"`
	Own        renderfit.JSONChance `json:"chance_with_own_errors"`
	Then       renderfit.JSONChance `json:"chance_with_clearances"`
}

// JSON returns what was learnt for other programs, in millimetres. Advice may be nil.
func JSON(l lessons.Learnt, a *Advice) ([]byte, error) {
	out := jsonLessons{Records: l.Cases, Fewest: lessons.Fewest, Lessons: []jsonLesson{}, Sets: renderfit.SetsJSON(l.Sets()), Slips: []jsonSlip{}, Changed: l.Changed}
	for _, one := range l.Lessons {
		j := jsonLesson{Key: one.Key, Name: one.Name, Sort: string(one.Sort), Cases: one.Cases, Lengths: max(one.Off.N, one.Cases), Enough: one.Enough, Was: mm(one.Was)}
		if one.Enough {
			o, w := one.Off, one.Own
			if one.Sort == fit.Play {
				w = o
			}
			j.Off = &jsonAbout{mm(o.Mean), mm(o.MeanLow), mm(o.MeanHigh), o.Biased()}
			j.Spread = &jsonAround{mm(2 * w.SD), mm(2 * w.SDLow), mm(2 * w.SDHigh)}
		}
		out.Lessons = append(out.Lessons, j)
	}
	for _, s := range l.Slips {
		out.Slips = append(out.Slips, jsonSlip{s.Case, s.Line, s.Key, mm(s.Value), mm(s.Mean)})
	}
	if a != nil {
		out.Job = &jsonAdvice{a.Title, renderfit.SetsJSON(a.Clearances), renderfit.ChanceJSON(a.Told), renderfit.ChanceJSON(a.Own), renderfit.ChanceJSON(a.Then)}
	}
	written, err := data.JSON(out)
	if err != nil {
		return nil, fmt.Errorf("lessons: %w", err)
	}
	return written, nil
}
