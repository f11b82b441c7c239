package fit

import (
	"forel/geometry/job"
	"forel/geometry/plan"
	"forel/geometry/tolerance"
)

// Report is all that is known of how a case will fit.
type Report struct {
	plan.Plan // of the case
	Gaps      []Gap
	Errors    []Error // with an effect for each gap
	Settled   Chance  // of the case as a whole
	Worst     Worst
	Mends     []Mend // what can be done, the least effort first
	WhatIf    []WhatIf
	Weight    *Weight // where it was weighed; see Weighed
}

// Gap is one gap and how much room is left in it.
type Gap struct {
	plan.Gap
	Drawn        Length // when everything is as it was measured and drawn
	Low, High    Length // worst case: every error at the end of its plus-or-minus
	Distribution tolerance.Distribution
	Chance       Chance
	Chain        []Link // adds up to Drawn less Swell
}

// Left returns what is left as drawn, less what the book takes when damp.
func (g Gap) Left() Length { return fine(g.Drawn - g.Swell) }

// fine takes the noise of arithmetic from a length: what is just between two steps
// is shown the same wherever it comes from.
func fine(l Length) Length { return l.Round(1e-6) }

// Sums returns what is left after each link of the chain.
func (g Gap) Sums() []Length {
	out := make([]Length, len(g.Chain))
	var sum Length
	for i, l := range g.Chain {
		sum += l.Takes()
		out[i] = fine(sum)
	}
	return out
}

// Chance is how likely each is. For one place the three add up to 1; a case as a
// whole can be too tight one way and too loose another.
type Chance struct{ Tight, Snug, Loose float64 }

// Worst names the gap most likely to be too tight and the error that eats the
// most of it, by index.
type Worst struct {
	Gap, Error int
	Share      float64 // of the gap's variance
}

// WhatIf is what is left when a material really is another that is sold by the
// same name, cut sizes and all else as drawn.
type WhatIf struct {
	Material string // the name of its link in a chain
	Tried    []Tried
}

// Tried is what is left with one thickness of a material.
type Tried struct {
	job.Sold
	Left []Length // in each gap
}

// Share returns the part of a gap's variance that is an error's, 0 to 1.
func (r Report) Share(err, gap int) float64 {
	var sum float64
	for _, e := range r.Errors {
		sum += float64(e.Effects[gap].SD * e.Effects[gap].SD)
	}
	if sum == 0 {
		return 0
	}
	sd := r.Errors[err].Effects[gap].SD
	return float64(sd*sd) / sum
}

// Of returns the report on a case worked out.
func Of(p plan.Plan) Report {
	c := p.Chain
	r := Report{Plan: p}
	r.Gaps, r.Errors = gapsOf(c)
	r.Settled = settled(r.Gaps)
	r.Worst = r.worst()
	r.Mends = r.mends(c)
	r.WhatIf = whatIf(c)
	return r
}

// gapsOf works out every gap and what each error does to it.
func gapsOf(c plan.Chain) ([]Gap, []Error) {
	slopes := c.Sensitivities()
	at, errors := c.Left(c.Drawn()), errorsOf(c, slopes)
	for i := range errors {
		errors[i].Effects = errors[i].Effects[:len(c.Gaps)]
	}
	gaps := make([]Gap, len(c.Gaps))
	for i := range gaps {
		g := Gap{Gap: c.Gaps[i], Drawn: at[i], Chain: counted(c.Links, slopes[i])}
		if g.Swell > 0 {
			g.Chain = append(g.Chain, Link{plan.Link{Name: "swelling when damp", Length: g.Swell}, -1})
		}
		g.Distribution, g.Low, g.High = sum(g.Drawn, errors, i)
		g.Chance = g.chance()
		gaps[i] = g
	}
	return gaps, errors
}

func (g Gap) chance() Chance {
	c := Chance{Tight: g.Distribution.Below(g.Tight)}
	if g.Loose > 0 {
		c.Loose = 1 - g.Distribution.Below(g.Loose)
	}
	c.Snug = max(0, 1-c.Tight-c.Loose)
	return c
}

// Enough tells whether a case is neither too tight nor too loose more than Once.
func (c Chance) Enough() bool { return c.Tight <= Once && c.Loose <= Once }

// settled returns the chances of the case as a whole: that it sticks at any of
// its tightest places, that it is loose at any place judged for that, and that it
// does neither. The places are taken for independent, which they nearly are.
func settled(gaps []Gap) Chance {
	free, quiet := 1.0, 1.0
	for _, g := range gaps {
		if g.Decides {
			free *= 1 - g.Chance.Tight
		}
		quiet *= 1 - g.Chance.Loose
	}
	return Chance{Tight: 1 - free, Snug: free * quiet, Loose: 1 - quiet}
}

// worst finds the gap that is most likely too tight, of two alike the one whose
// limit is nearer in deviations, and the error with the largest part in it.
func (r Report) worst() Worst {
	var w Worst
	best := -1.0
	for i, g := range r.Gaps {
		near := float64(g.Distribution.StandardDeviation()) / max(1e-9, float64(g.Distribution.Expected()-g.Tight))
		if score := g.Chance.Tight + 1e-6*min(near, 1e3); g.Decides && score > best {
			best, w.Gap = score, i
		}
	}
	for e := range r.Errors {
		if share := r.Share(e, w.Gap); share > w.Share {
			w.Error, w.Share = e, share
		}
	}
	return w
}

// Tightest returns the index of the tightest gap of a dimension, of several
// volumes the one most likely to be too tight; -1 where there is none.
func (r Report) Tightest(dimension string) int {
	best := -1
	for i, g := range r.Gaps {
		if g.Decides && g.Dimension == dimension && (best < 0 || g.Chance.Tight > r.Gaps[best].Chance.Tight) {
			best = i
		}
	}
	return best
}

// Find returns the gap of a dimension at a place, of several volumes the one
// most likely to be too tight.
func (r Report) Find(dimension, place string) (Gap, bool) {
	var found Gap
	ok := false
	for _, g := range r.Gaps {
		if g.Dimension == dimension && g.Place == place && (!ok || g.Chance.Tight > found.Chance.Tight) {
			found, ok = g, true
		}
	}
	return found, ok
}

// whatIf returns what is left with each size that a material could be.
func whatIf(c plan.Chain) []WhatIf {
	var out []WhatIf
	for i, l := range c.Links {
		w := WhatIf{Material: l.Name}
		for _, s := range l.Sold {
			v := c.Drawn()
			v[i] = s.Thickness
			w.Tried = append(w.Tried, Tried{s, c.Left(v)[:len(c.Gaps)]})
		}
		if len(w.Tried) > 0 {
			out = append(out, w)
		}
	}
	return out
}
