package rescue

import (
	"forel/geometry/fit"
	"forel/geometry/rescue"
	"forel/render/data"
	renderfit "forel/render/fit"
)

type mm = data.MM

// JSON returns the report for other programs; lengths within sentences are in millimetres too.
// Of the ways that of least work is the first; there are none where nothing needs to be done.
func JSON(title string, r rescue.Report, early bool) ([]byte, error) {
	return data.JSON("rescue", data.Object{{"title", title}, {"unfinished", early}, {"places", data.List(r.Places, placeJSON)}, {"ways", data.List(r.Ways, wayJSON)}})
}

func placeJSON(p rescue.Place) data.Object {
	measured := any(nil)
	if p.Told {
		measured = mm(p.Measured)
	}
	return data.Object{
		{"key", fit.PlayKey(p.Gap)},
		{"dimension", p.Dimension},
		{"place", p.Place},
		{"volume", data.Given(p.Volume)},
		{"measured_mm", measured},
		{"planned_mm", mm(p.Planned)},
		{"comes_to_mm", mm(p.Room)},
		{"tight_limit_mm", mm(p.Tight)},
		{"loose_limit_mm", mm(p.Loose)},
		{"too_tight", p.TooTight()},
		{"too_loose", p.TooLoose()},
		{"slip", p.Slip}, // it is more likely a slip of reading or writing
	}
}

func wayJSON(w rescue.Way) data.Object {
	return data.Object{
		{"work_min", w.Minutes},
		{"steps", data.List(w.Steps, func(s rescue.Step) data.Object {
			return data.Object{{"name", s.Name}, {"amount_mm", mm(s.Amount)}, {"do", renderfit.InMM(how(s))}, {"keeps", s.Keeps}, {"work_min", s.Minutes}}
		})},
		{"cut_again", append([]string{}, w.Again...)},
		{"sets", renderfit.SetsJSON(w.Sets)},
		{"room_mm", data.List(w.Room, data.InMM)}, // at each place
		{"chance", renderfit.ChanceJSON(w.Chance)},
		{"fits", w.Fits()},
	}
}
