package rescue

import (
	"fmt"

	"forel/geometry/fit"
	"forel/geometry/rescue"
	"forel/render/data"
	renderfit "forel/render/fit"
)

type mm = data.MM

type jsonReport struct {
	Title      string      `json:"title"`
	Unfinished bool        `json:"unfinished"`
	Places     []jsonPlace `json:"places"`
	Ways       []jsonWay   `json:"ways"` // the least work first; none where nothing needs to be done
}

type jsonPlace struct {
	Key       string `json:"key"`
	Dimension string `json:"dimension"`
	Place     string `json:"place"`
	Volume    string `json:"volume,omitempty"`
	Measured  *mm    `json:"measured_mm,omitempty"`
	Planned   mm     `json:"planned_mm"`
	Room      mm     `json:"comes_to_mm"`
	Tight     mm     `json:"tight_limit_mm"`
	Loose     mm     `json:"loose_limit_mm"`
	TooTight  bool   `json:"too_tight"`
	TooLoose  bool   `json:"too_loose"`
	Slip      bool   `json:"slip"` // it is more likely a slip of reading or writing
}

type jsonWay struct {
	Minutes int                  `json:"work_min"`
	Steps   []jsonStep           `json:"steps"`
	Again   []string             `json:"cut_again"`
	Sets    []renderfit.JSONSet  `json:"sets"`
	Room    []mm                 `json:"room_mm"` // at each place
	Chance  renderfit.JSONChance `json:"chance"`
	Fits    bool                 `json:"fits"`
}

type jsonStep struct {
	Name    string `json:"name"`
	Amount  mm     `json:"amount_mm"`
	Do      string `json:"do"`
	Keeps   string `json:"keeps"`
	Minutes int    `json:"work_min"`
}

// JSON returns the report for other programs; lengths within sentences are in millimetres too.
func JSON(title string, r rescue.Report, early bool) ([]byte, error) {
	out := jsonReport{Title: title, Unfinished: early, Places: []jsonPlace{}, Ways: []jsonWay{}}
	for _, p := range r.Places {
		j := jsonPlace{Key: fit.PlayKey(p.Gap), Dimension: p.Dimension, Place: p.Place, Volume: p.Volume, Planned: mm(p.Planned), Room: mm(p.Room),
			Tight: mm(p.Tight), Loose: mm(p.Loose), TooTight: p.TooTight(), TooLoose: p.TooLoose(), Slip: p.Slip}
		if p.Told {
			m := mm(p.Measured)
			j.Measured = &m
		}
		out.Places = append(out.Places, j)
	}
	for _, w := range r.Ways {
		j := jsonWay{Minutes: w.Minutes, Steps: []jsonStep{}, Again: append([]string{}, w.Again...), Sets: renderfit.SetsJSON(w.Sets), Chance: renderfit.ChanceJSON(w.Chance), Fits: w.Fits()}
		for _, s := range w.Steps {
			j.Steps = append(j.Steps, jsonStep{s.Name, mm(s.Amount), renderfit.InMM(how(s)), s.Keeps, s.Minutes})
		}
		for _, l := range w.Room {
			j.Room = append(j.Room, mm(l))
		}
		out.Ways = append(out.Ways, j)
	}
	written, err := data.JSON(out)
	if err != nil {
		return nil, fmt.Errorf("rescue: %w", err)
	}
	return written, nil
}
