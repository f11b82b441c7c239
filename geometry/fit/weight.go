package fit

import (
	"forel/geometry"
	"forel/geometry/plan"
)

// Gravity is standard gravity in m/s² (3rd CGPM, 1901; from memory).
const Gravity = 9.80665

// Scale returns the weight in grams of an area in mm² of a material at a thickness,
// and where the figure comes from.
type Scale func(m geometry.Material, area float64, thickness Length) (grams float64, source string)

// Weight is what a finished case weighs, dry and without adhesive, and what it
// carries.
type Weight struct {
	plan.Load
	Parts   []Part
	Case    float64 // grams, of all parts
	Books   float64 // grams, as far as they were weighed
	Known   int     // how many of the books were weighed
	Of      int     // how many there are
	Newtons float64 // with which the books bear on what carries them
}

// Part is all that is in a case of one material.
type Part struct {
	Material geometry.Material
	Area     float64 // mm², of the finished case
	Grams    float64
	Source   string // of its density
}

// Thin tells whether the books are heavy for what carries them, and the least
// thickness that would do, zero where none does.
func (w Weight) Thin() (least Length, thin bool) {
	if w.Known == 0 {
		return 0, false
	}
	least, ok := w.Bears(w.Books)
	return least, !ok || w.Has < least-1e-6
}

// Weighed returns the report with the weight of the case that it is on. Board,
// cloth and paper count as they are cut; what is trimmed flush counts as what it
// lies on.
func (r Report) Weighed(scale Scale) Report {
	w := &Weight{Load: r.Load, Of: len(r.Load.Weights)}
	area := map[string]float64{}
	for _, q := range r.Pieces {
		area[q.Name] = q.Outline.SignedArea()
	}
	for _, q := range r.Pieces {
		one := area[q.Name]
		if q.Trimmed {
			one = area[q.Over]
		}
		i := 0
		for i < len(w.Parts) && w.Parts[i].Material != q.Material {
			i++
		}
		if i == len(w.Parts) {
			w.Parts = append(w.Parts, Part{Material: q.Material})
		}
		w.Parts[i].Area += one * float64(q.Count)
	}
	for i, part := range w.Parts {
		w.Parts[i].Grams, w.Parts[i].Source = scale(part.Material, part.Area, r.Thickness(part.Material))
		w.Case += w.Parts[i].Grams
	}
	for _, grams := range r.Load.Weights {
		if grams > 0 {
			w.Books += grams
			w.Known++
		}
	}
	w.Newtons = w.Books / 1000 * Gravity
	r.Weight = w
	return r
}
