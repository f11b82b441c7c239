package fit

import (
	"fmt"
	"math"

	"forel/geometry/fit"
	"forel/geometry/job"
	"forel/geometry/plan"
	"forel/geometry/wording"
	"forel/render/data"
)

type (
	mm   = data.MM
	part = data.Part
)

// JSONChance are chances as they are reported to other programs.
type JSONChance struct {
	Tight part `json:"too_tight"`
	Snug  part `json:"snug"`
	Loose part `json:"too_loose"`
}

type jsonLink struct {
	Name   string  `json:"name"`
	Length mm      `json:"length_mm"`
	Counts float64 `json:"counts"`
}

type jsonGap struct {
	Dimension string     `json:"dimension"`
	Place     string     `json:"place"`
	Volume    string     `json:"volume,omitempty"`
	Drawn     mm         `json:"drawn_mm"`
	Swell     mm         `json:"swelling_mm"`
	Damp      mm         `json:"when_damp_mm"`
	Worst     mm         `json:"worst_mm"`
	Best      mm         `json:"best_mm"`
	Expected  mm         `json:"expected_mm"`
	SD        mm         `json:"standard_deviation_mm"`
	Tight     mm         `json:"tight_limit_mm"`
	Loose     mm         `json:"loose_limit_mm"`
	Chance    JSONChance `json:"chance"`
	Chain     []jsonLink `json:"chain"`
	Errors    []jsonPart `json:"errors"`
}

// jsonPart is what one error does to a gap.
type jsonPart struct {
	Name  string `json:"name"`
	Key   string `json:"key"`
	Shift mm     `json:"shift_mm"`
	SD    mm     `json:"standard_deviation_mm"`
	Low   mm     `json:"low_mm"`
	High  mm     `json:"high_mm"`
	Share part   `json:"share_of_variance"`
}

// JSONSet is a setting of a job.
type JSONSet struct {
	Key   string `json:"key"`
	Value *mm    `json:"value_mm,omitempty"`
	Word  string `json:"word,omitempty"`
}

type jsonMend struct {
	What    string     `json:"what"`
	Sets    []JSONSet  `json:"sets"`
	Chance  JSONChance `json:"chance"`
	Enough  bool       `json:"enough"`
	Advised bool       `json:"advised"`
}

type jsonWhatIf struct {
	Material  string `json:"material"`
	Name      string `json:"sold_as"`
	Thickness mm     `json:"thickness_mm"`
	Left      []mm   `json:"left_mm"` // of each gap
}

type jsonCheck struct {
	Step  int         `json:"step"`
	Name  string      `json:"name"`
	When  string      `json:"when"`
	See   []string    `json:"see"`
	Fails string      `json:"else,omitempty"`
	Found []jsonFound `json:"found,omitempty"`
}

// jsonFound is what may be found at a check.
type jsonFound struct {
	What  string `json:"what"`
	Means string `json:"means"`
	Do    string `json:"do"`
}

type jsonGauge struct {
	Name   string      `json:"name"`
	Closed bool        `json:"closed"`
	Panels []jsonPanel `json:"panels"`
}

type jsonPanel struct {
	Name   string `json:"name"`
	Length mm     `json:"length_mm"`
}

type jsonReport struct {
	Title  string       `json:"title"`
	Chance JSONChance   `json:"chance"`
	Gaps   []jsonGap    `json:"gaps"`
	Mends  []jsonMend   `json:"mends"`
	WhatIf []jsonWhatIf `json:"what_if"`
	Checks []jsonCheck  `json:"checks"`
	Gauges []jsonGauge  `json:"gauges"`
	Weight *jsonWeight  `json:"weight,omitempty"`
}

// JSON returns the report for other programs, in millimetres, exact to a
// thousandth; lengths within sentences are in millimetres too.
func JSON(r fit.Report) ([]byte, error) {
	out := jsonReport{Title: r.Title, Chance: ChanceJSON(r.Settled), Gaps: []jsonGap{}, Mends: []jsonMend{}, WhatIf: []jsonWhatIf{}, Checks: []jsonCheck{}, Gauges: []jsonGauge{}}
	for i, g := range r.Gaps {
		d := g.Distribution
		j := jsonGap{Dimension: g.Dimension, Place: g.Place, Volume: g.Volume, Drawn: mm(g.Drawn), Swell: mm(g.Swell), Damp: mm(g.Left()), Worst: mm(g.Low), Best: mm(g.High),
			Expected: mm(d.Expected()), SD: mm(d.StandardDeviation()), Tight: mm(g.Tight), Loose: mm(g.Loose), Chance: ChanceJSON(g.Chance), Errors: []jsonPart{}}
		for _, l := range g.Chain {
			j.Chain = append(j.Chain, jsonLink{l.Name, mm(l.Length), math.Round(l.Counts*1e6) / 1e6})
		}
		for k, e := range r.Errors {
			if f := e.Effects[i]; f.Moves() > 0 || f.Mean != 0 {
				j.Errors = append(j.Errors, jsonPart{e.Name, e.Key, mm(f.Mean), mm(f.SD), mm(f.Low), mm(f.High), part(r.Share(k, i))})
			}
		}
		out.Gaps = append(out.Gaps, j)
	}
	for _, m := range r.Mends {
		j := jsonMend{What: InMM(m.What), Sets: SetsJSON(m.Sets), Chance: ChanceJSON(m.Chance), Enough: m.Enough, Advised: m.Advised}
		out.Mends = append(out.Mends, j)
	}
	for _, w := range r.WhatIf {
		for _, tried := range w.Tried {
			j := jsonWhatIf{Material: w.Material, Name: tried.Name, Thickness: mm(tried.Thickness)}
			for _, l := range tried.Left {
				j.Left = append(j.Left, mm(l))
			}
			out.WhatIf = append(out.WhatIf, j)
		}
	}
	for _, c := range r.Checks {
		j := jsonCheck{Step: c.Step, Name: c.Name, When: c.When, Fails: InMM(c.Fails)}
		for _, s := range c.See {
			j.See = append(j.See, InMM(s))
		}
		for _, f := range c.Found {
			j.Found = append(j.Found, jsonFound{InMM(f.What), InMM(f.Means), InMM(f.Do)})
		}
		out.Checks = append(out.Checks, j)
	}
	for _, g := range r.Gauges {
		j := jsonGauge{Name: g.Name, Closed: g.Closed}
		for _, p := range g.Panels {
			j.Panels = append(j.Panels, jsonPanel{p.Name, mm(p.Length)})
		}
		out.Gauges = append(out.Gauges, j)
	}
	out.Weight = weightJSON(r)
	written, err := data.JSON(out)
	if err != nil {
		return nil, fmt.Errorf("fit: %w", err)
	}
	return written, nil
}

// ChanceJSON reports chances.
func ChanceJSON(c fit.Chance) JSONChance {
	return JSONChance{part(c.Tight), part(c.Snug), part(c.Loose)}
}

// SetsJSON reports settings.
func SetsJSON(changes []job.Change) []JSONSet {
	out := []JSONSet{}
	for _, c := range changes {
		set := JSONSet{Key: c.Key, Word: c.Word}
		if c.Word == "" {
			v := mm(c.Value)
			set.Value = &v
		}
		out = append(out, set)
	}
	return out
}

// InMM writes a sentence with its lengths in millimetres.
func InMM(r plan.Remark) string {
	return r.In(func(l Length) string { return wording.Decimal(mm(l).Value(), 3) + " mm" })
}
