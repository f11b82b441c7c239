package fit

import (
	"fmt"

	"forel/geometry/plan"
)

// Gauge is a strip of paper, printed at true size, to fold and lay round the
// book before any board is cut.
type Gauge struct {
	Name   string
	Panels []Panel
	Closed bool   // its ends meet: a sleeve
	Try    string // what to do with it
}

// Panel is what lies between two folds of a gauge.
type Panel struct {
	Name   string
	Length Length
}

// Length gives the strip from end to end, without the tab that closes it.
func (g Gauge) Length() Length {
	var sum Length
	for _, p := range g.Panels {
		sum += p.Length
	}
	return sum
}

// gauges gives the strips: a sleeve as wide as the mouth and one as wide as the
// body for each compartment, and one round the spine.
func (s subject) gauges(p plan.Plan) []Gauge {
	a := s.assembly()
	at := a.clear(a.drawn)
	height := func(left Length) Length { return p.Contents.Height + left }
	sleeve := func(name string, h, t Length) Gauge {
		return Gauge{Name: name, Closed: true,
			Panels: []Panel{{"head to tail", h}, {"thickness", t}, {"head to tail", h}, {"thickness", t}},
			Try:    "Fold at the marks, ink outside, and join the ends mark on mark. Slide it over the fore-edge and along the book: it should pass everywhere without being pushed."}
	}
	var out []Gauge
	for i, spot := range a.spots {
		if spot.dimension != Thickness {
			continue
		}
		volume, of := p.Contents.Thickness, ""
		if s.card == nil && s.job.Dividers() > 0 {
			volume = s.job.Books[spot.room].Thick()
			of = fmt.Sprintf(", compartment %d", spot.room+1)
		}
		h := at[0]
		name := "Sleeve as wide as the body"
		switch {
		case spot.place == Mouth:
			name = "Sleeve as wide as the mouth"
			for k, q := range a.spots {
				if q.dimension == Height && q.place == Mouth {
					h = at[k]
				}
			}
		case of != "":
			continue // the mouth is enough, where there are several
		case s.card != nil:
			name = "Sleeve as wide as the case inside"
		}
		out = append(out, sleeve(name+of, height(h), volume+at[i]))
	}
	thick := p.Cavity.Thickness
	if s.card == nil && s.job.Dividers() > 0 {
		deepest := 0
		for i, b := range s.job.Books {
			if b.Width.Largest() > s.job.Books[deepest].Width.Largest() {
				deepest = i
			}
		}
		thick = s.job.Books[deepest].Thick() + s.job.Clearance.Thickness
	}
	return append(out, Gauge{Name: "Strip round the spine",
		Panels: []Panel{{"fore-edge to spine", p.Cavity.Width}, {"thickness", thick}, {"spine to fore-edge", p.Cavity.Width}},
		Try:    "Fold at the marks, ink outside, and lay it round the spine, close to it. Both ends should reach past the fore-edge: what they reach is the clearance in depth."})
}
