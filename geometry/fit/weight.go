package fit

import (
	"forel/geometry"
	"forel/geometry/onepiece"
	"forel/geometry/plan"
	"forel/geometry/slipcase"
)

// Gravity is standard gravity in m/s² (3rd CGPM, 1901; from memory).
const Gravity = 9.80665

// Scale gives the weight in grams of an area in mm² of a material at a thickness,
// and where the figure comes from.
type Scale func(m geometry.Material, area float64, thickness Length) (grams float64, source string)

// Weight is what a finished case weighs, dry and without adhesive, and what it
// carries.
type Weight struct {
	Parts  []Part
	Case   float64 // grams, of all parts
	Books  float64 // grams, as far as they were weighed
	Known  int     // how many of the books were weighed
	Of     int     // how many there are
	Load   float64 // newtons on the wall that the books stand on
	Seam   Length  // along which that wall is joined to the others
	Needs  Length  // the thinnest board for such a load, by the rule of leastFor; 0 where nothing was weighed
	Has    Length  // the board or card
	Beyond bool    // heavier than the rule goes
}

// Part is all that is in a case of one material.
type Part struct {
	Material geometry.Material
	Area     float64 // mm², of the finished case
	Grams    float64
	Source   string // of its density
}

// Thin tells whether the books are heavy for the board.
func (w Weight) Thin() bool { return w.Known > 0 && (w.Beyond || w.Has < w.Needs-1e-6) }

// leastFor is how thick a board a case needs for the weight that it carries, in
// grams (common practice, no source). Heavier still is more than a case with
// butted walls should carry.
var leastFor = []struct {
	most float64
	thin Length
}{{500, 1.5}, {1500, 2}, {3000, 2.5}, {6000, 3}}

// mostInCard is the most that a case of folded card should carry, in grams (common
// practice, no source).
const mostInCard = 1000

// weigh works the weight of a case out. Board, cloth and paper count as they are
// cut; a lining cut larger counts as its board does, to which it is trimmed.
func (s subject) weigh(p plan.Plan, scale Scale) *Weight {
	w := &Weight{Has: s.thick, Of: len(s.job.Books)}
	area := map[string]float64{}
	for _, q := range p.Pieces {
		area[q.Name] = q.Outline.SignedArea()
	}
	for _, q := range p.Pieces {
		one := area[q.Name]
		if q.Material == geometry.Lining && s.job.Lining.Order == slipcase.LinedBefore {
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
		w.Parts[i].Grams, w.Parts[i].Source = scale(part.Material, part.Area, p.Thickness(part.Material))
		w.Case += w.Parts[i].Grams
	}
	for _, b := range s.job.Books {
		if b.Weight > 0 {
			w.Books += b.Weight
			w.Known++
		}
	}
	w.Load = w.Books / 1000 * Gravity
	w.Seam = 2*p.Cavity.Width + p.Cavity.Thickness // both sides and the spine wall
	w.judge(s.card != nil)
	return w
}

// judge holds what a case carries against the rule.
func (w *Weight) judge(card bool) {
	switch {
	case w.Known == 0:
		return
	case card:
		w.Beyond = w.Books > mostInCard
		return
	}
	w.Beyond = true
	for _, l := range leastFor {
		if w.Books <= l.most {
			w.Needs, w.Beyond = l.thin, false
			return
		}
	}
}

// WeighedCard is Weighed for a case of card.
func (r Report) WeighedCard(c onepiece.Case, scale Scale) Report {
	s := subject{card: &c.Job, thick: c.Job.Card.Thickness}
	s.job.Books = c.Job.Books
	r.Weight = s.weigh(c.Plan(), scale)
	return r
}

// Weighed gives the report with the weight of the case of boards it is on.
func (r Report) Weighed(c slipcase.Case, scale Scale) Report {
	s := subject{job: c.Job, thick: c.Job.Board.Thickness}
	r.Weight = s.weigh(c.Plan(), scale)
	return r
}
