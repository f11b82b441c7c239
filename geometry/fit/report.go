package fit

import (
	"forel/geometry/onepiece"
	"forel/geometry/plan"
	"forel/geometry/slipcase"
)

// Report is all that is known of how a case will fit.
type Report struct {
	Title   string
	Content string // what it is for, such as "book"
	Kind    string // what is made
	Card    bool   // of one piece of card
	Gaps    []Gap
	Errors  []Error // with an effect for each gap
	Settled Chance  // of the case as a whole
	Worst   Worst
	Mends   []Mend // what can be done, the least effort first
	WhatIf  []WhatIf
	Checks  []Check
	Gauges  []Gauge
	Weight  *Weight // where it was weighed; see Weighed
}

// Gap is one clearance.
type Gap struct {
	Dimension    Dimension
	Place        Place
	Volume       string // whose compartment, where there are several; else ""
	Drawn        Length // when everything is as it was measured and drawn
	Low, High    Length // worst case: every error at the end of its plus-or-minus
	Distribution Distribution
	Tight, Loose Length // limits: less is too tight, more is too loose
	Chance       Chance
	Swell        Length // what the book takes of it when damp, where it is allowed for
	Chain        []Link // adds up to Drawn less Swell
}

// Left gives what is left as drawn, less what the book takes when damp.
func (g Gap) Left() Length { return fine(g.Drawn - g.Swell) }

// fine takes the noise of arithmetic from a length: what is just between two steps
// is shown the same wherever it comes from.
func fine(l Length) Length { return l.Round(1e-6) }

// Sums gives what is left after each link of the chain.
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

// Share gives the part of a gap's variance that is an error's, 0 to 1.
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

// Of gives the report on a case of boards.
func Of(c slipcase.Case) Report {
	s := subject{job: c.Job, thick: c.Job.Board.Thickness}
	return s.report(c.Plan())
}

// OfCard gives the report on a case of card.
func OfCard(c onepiece.Case) Report {
	j := slipcase.DefaultJob()
	j.Common = c.Job.Common
	s := subject{job: j, card: &c.Job, thick: c.Job.Card.Thickness}
	return s.report(c.Plan())
}

// subject is a job of either kind.
type subject struct {
	job   slipcase.Job
	card  *onepiece.Job
	thick Length // of board or card
}

// assembly gives how the case is put together.
func (s subject) assembly() assembly {
	if s.card != nil {
		c := *s.card
		c.Clearance = s.job.Clearance
		return ofCard(c)
	}
	return ofBoards(s.job)
}

// gaps works out every clearance and what each error does to it.
func (s subject) gaps() ([]Gap, []Error) {
	a := s.assembly()
	slopes := a.sensitivities()
	chains, at := a.chains(slopes), a.clear(a.drawn)
	known := knowledge{job: s.job, thick: s.thick, card: s.card != nil}
	errors := known.errors(a, slopes)
	gaps := make([]Gap, len(a.spots))
	for i, p := range a.spots {
		g := Gap{Dimension: p.dimension, Place: p.place, Drawn: at[i], Low: at[i], High: at[i], Chain: chains[i],
			Tight: s.job.Limits.Tight, Loose: s.job.Limits.Loose}
		if p.dimension == Depth {
			g.Tight = 0 // a book that is too deep does not stick; it looks out
		}
		if p.dimension == Thickness && s.card == nil && s.job.Dividers() > 0 {
			g.Volume = s.job.Whose(p.room)
		}
		if p.place == Corners {
			g.Tight = 0 // tabs there are few layers and can be pared: only no room at all is too little
		}
		if g.Swell = known.swell(p); g.Swell > 0 {
			g.Chain = append(g.Chain, Link{Name: "swelling when damp", Length: g.Swell, Counts: -1})
		}
		d := Distribution{Mean: g.Drawn}
		for _, e := range errors {
			f := e.Effects[i]
			g.Low, g.High = g.Low+f.Low, g.High+f.High
			if f.Flat {
				d.Low, d.High = d.Low+f.Low, d.High+f.High // there is one such error
				continue
			}
			d.Mean += f.Mean
			d.SD = rss(d.SD, f.SD)
		}
		g.Distribution = d
		g.Chance = g.chance()
		gaps[i] = g
	}
	return gaps, errors
}

func (g Gap) chance() Chance {
	c := Chance{Tight: g.Distribution.Below(g.Tight), Loose: 1 - g.Distribution.Below(g.Loose)}
	c.Snug = max(0, 1-c.Tight-c.Loose)
	return c
}

// report makes the report.
func (s subject) report(p plan.Plan) Report {
	r := Report{Title: p.Title, Content: p.Content, Kind: p.Kind, Card: s.card != nil}
	r.Gaps, r.Errors = s.gaps()
	r.Settled = settled(r.Gaps)
	r.Worst = r.worst()
	r.Mends = s.mends(r)
	r.WhatIf = s.whatIf()
	r.Checks = s.checks(p, r)
	r.Gauges = s.gauges(p)
	return r
}

// Tightest tells of each gap whether it is the tightest place of its dimension
// and compartment: the corners of the mouth, where tabs lie over each other
// there, else the mouth, where something is turned in, else the body.
func Tightest(gaps []Gap) []bool {
	out := make([]bool, len(gaps))
	for i := range gaps {
		out[i] = i+1 == len(gaps) || gaps[i+1].Place == Body
	}
	return out
}

// settled gives the chances of the case as a whole: that it sticks at any of its
// tightest places, that it rattles in the body, and that it does neither. The
// places are taken for independent, which they nearly are.
func settled(gaps []Gap) Chance {
	free, quiet := 1.0, 1.0
	for i, tightest := range Tightest(gaps) {
		if tightest {
			free *= 1 - gaps[i].Chance.Tight
		}
		if gaps[i].Place == Body {
			quiet *= 1 - gaps[i].Chance.Loose
		}
	}
	return Chance{Tight: 1 - free, Snug: free * quiet, Loose: 1 - quiet}
}

// worst finds the gap that is most likely too tight, of two alike the one whose
// limit is nearer in deviations, and the error with the largest part in it.
func (r Report) worst() Worst {
	var w Worst
	best := -1.0
	for i, tightest := range Tightest(r.Gaps) {
		g := r.Gaps[i]
		near := float64(g.Distribution.StandardDeviation()) / max(1e-9, float64(g.Distribution.Expected()-g.Tight))
		if score := g.Chance.Tight + 1e-6*min(near, 1e3); tightest && score > best {
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

// Find gives the gap of a dimension at a place, of several compartments the one
// most likely to be too tight.
func (r Report) Find(d Dimension, p Place) (Gap, bool) {
	var found Gap
	ok := false
	for _, g := range r.Gaps {
		if g.Dimension == d && g.Place == p && (!ok || g.Chance.Tight > found.Chance.Tight) {
			found, ok = g, true
		}
	}
	return found, ok
}
