package fit

import (
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

// JSON returns the report for other programs, in millimetres, exact to a
// thousandth; lengths within sentences are in millimetres too.
func JSON(r fit.Report) []byte {
	whatIf := []data.Object{}
	for _, w := range r.WhatIf {
		for _, tried := range w.Tried {
			whatIf = append(whatIf, data.Object{{"material", w.Material}, {"sold_as", tried.Name}, {"thickness_mm", mm(tried.Thickness)},
				{"left_mm", data.List(tried.Left, data.InMM)}}) // of each gap
		}
	}
	gaps := []data.Object{}
	for i := range r.Gaps {
		gaps = append(gaps, gapJSON(r, i))
	}
	return data.JSON(data.Object{
		{"title", r.Title},
		{"chance", ChanceJSON(r.Settled)},
		{"gaps", gaps},
		{"mends", data.List(r.Mends, func(m fit.Mend) data.Object {
			return data.Object{{"what", InMM(m.What)}, {"sets", SetsJSON(m.Sets)}, {"chance", ChanceJSON(m.Chance)}, {"enough", m.Chance.Enough()}, {"advised", m.Advised}}
		})},
		{"what_if", whatIf},
		{"checks", data.List(r.Checks(), checkJSON)},
		{"gauges", data.List(r.Gauges, func(g plan.Gauge) data.Object {
			return data.Object{{"name", g.Name}, {"closed", g.Closed}, {"panels", data.List(g.Panels, func(p plan.Panel) data.Object {
				return data.Object{{"name", p.Name}, {"length_mm", mm(p.Length)}}
			})}}
		})},
		{"weight", weightJSON(r.Weight)},
	})
}

func gapJSON(r fit.Report, i int) data.Object {
	g := r.Gaps[i]
	d := g.Distribution
	errors := []data.Object{} // what each error does to the gap
	for k, e := range r.Errors {
		if f := e.Effects[i]; f.Moves() > 0 || f.Mean != 0 {
			errors = append(errors, data.Object{{"name", e.Name}, {"key", e.Key}, {"shift_mm", mm(f.Mean)}, {"standard_deviation_mm", mm(f.SD)},
				{"low_mm", mm(f.Low)}, {"high_mm", mm(f.High)}, {"share_of_variance", part(r.Share(k, i))}})
		}
	}
	return data.Object{
		{"dimension", g.Dimension},
		{"place", g.Place},
		{"volume", data.Given(g.Volume)},
		{"drawn_mm", mm(g.Drawn)},
		{"swelling_mm", mm(g.Swell)},
		{"when_damp_mm", mm(g.Left())},
		{"worst_mm", mm(g.Low)},
		{"best_mm", mm(g.High)},
		{"expected_mm", mm(d.Expected())},
		{"standard_deviation_mm", mm(d.StandardDeviation())},
		{"tight_limit_mm", mm(g.Tight)},
		{"loose_limit_mm", mm(g.Loose)},
		{"chance", ChanceJSON(g.Chance)},
		{"chain", data.List(g.Chain, func(l fit.Link) data.Object {
			return data.Object{{"name", l.Name}, {"length_mm", mm(l.Length)}, {"counts", part(l.Counts)}}
		})},
		{"errors", errors},
	}
}

func checkJSON(c plan.Check) data.Object {
	found := any(nil)
	if len(c.Found) > 0 {
		found = data.List(c.Found, func(f plan.Finding) data.Object {
			return data.Object{{"what", InMM(f.What)}, {"means", InMM(f.Means)}, {"do", InMM(f.Do)}}
		})
	}
	return data.Object{{"step", c.Step}, {"name", c.Name}, {"when", c.When}, {"see", data.List(c.See, InMM)}, {"else", data.Given(InMM(c.Fails))}, {"found", found}}
}

// ChanceJSON reports chances.
func ChanceJSON(c fit.Chance) data.Object {
	return data.Object{{"too_tight", part(c.Tight)}, {"snug", part(c.Snug)}, {"too_loose", part(c.Loose)}}
}

// SetsJSON reports settings.
func SetsJSON(changes []job.Change) []data.Object {
	return data.List(changes, func(c job.Change) data.Object {
		if c.Word != "" {
			return data.Object{{"key", c.Key}, {"word", c.Word}}
		}
		return data.Object{{"key", c.Key}, {"value_mm", mm(c.Value)}}
	})
}

// InMM writes a sentence with its lengths in millimetres.
func InMM(r plan.Remark) string {
	return r.In(func(l Length) string { return wording.Decimal(mm(l).Value(), 3) + " mm" })
}
