package slipcase

import (
	"cmp"
	"fmt"
	"slices"

	"forel/geometry/job"
	"forel/geometry/plan"
)

// gauges returns the strips of paper to try round the book: a sleeve as wide as
// the mouth and one as wide as the body, for each compartment the narrower, and
// one round the spine.
func (j Job) gauges() []plan.Gauge {
	in, m := j.Contents(), j.Mouth()
	var out []plan.Gauge
	for _, s := range j.spots() {
		volume, of := j.thickAt(s.room), ""
		if j.Dividers() > 0 {
			of = fmt.Sprintf(", compartment %d", s.room+1)
		}
		switch {
		case s.dimension != plan.Thickness:
		case s.place == AtMouth:
			out = append(out, plan.Sleeve("Sleeve as wide as the mouth"+of, in.Height+m.Height, volume+j.MouthThickness(s.room)))
		case of == "": // of several the mouth is enough
			out = append(out, plan.Sleeve("Sleeve as wide as the body", in.Height+j.Clearance.Height, volume+j.Clearance.Thickness))
		}
	}
	thick := j.Cavity().Thickness
	if j.Dividers() > 0 {
		deepest := slices.MaxFunc(j.Books, func(a, b job.Book) int { return cmp.Compare(a.Width.Largest(), b.Width.Largest()) })
		thick = deepest.Thick() + j.Clearance.Thickness
	}
	return append(out, plan.SpineStrip(j.Cavity().Width, thick))
}
