package slipcase

import "forel/geometry/plan"

// Size is the extent of a space: head to tail, spine to mouth, side to side.
type Size = plan.Size

// Fit is what a stacked dry fit shows: how far a side reaches beyond the book
// at the fore-edge when laid flush with its spine, and at the head or the tail
// when laid flush with the other. Of several books the tallest and the deepest.
type Fit struct{ ForeEdge, HeadOrTail Length }

// Mouth is the clearance left where the case is tightest.
type Mouth struct {
	Height    Length // head to tail
	Thickness Length // side to side, in the tightest compartment
}

// linedBefore tells whether the boards are lined when they are joined.
func (j Job) linedBefore() bool { return j.Lining.Order != LinedAfter }

// Edge returns the thickness of a board as it is joined and covered: with its
// lining where that goes in before.
func (j Job) Edge() Length {
	if j.linedBefore() {
		return j.Board.Thickness + j.Lining.Thickness
	}
	return j.Board.Thickness
}

// liningAfter returns the thickness of a lining pasted in when the boards are joined; zero
// where there is none.
func (j Job) liningAfter() Length {
	if j.linedBefore() {
		return 0
	}
	return j.Lining.Thickness
}

// Contents returns the space the volumes take standing side by side, with the
// dividers between them but without clearance.
func (j Job) Contents() Size {
	var s Size
	for _, b := range j.Books {
		s.Height = max(s.Height, b.Height.Largest())
		s.Width = max(s.Width, b.Width.Largest())
		s.Thickness += b.Thick()
	}
	s.Thickness += Length(j.Dividers()) * j.dividerThickness()
	return s
}

// compartments returns how many separate spaces the cavity has.
func (j Job) compartments() int { return j.Dividers() + 1 }

// Dividers returns how many dividers stand in the case.
func (j Job) Dividers() int {
	if j.Compartments != EachItsOwn || len(j.Books) < 2 {
		return 0
	}
	return len(j.Books) - 1
}

// dividerThickness returns a divider lined on both faces.
func (j Job) dividerThickness() Length { return j.Board.Thickness + 2*j.Lining.Thickness }

// Cavity returns the space between the lined faces: the volumes with their
// clearance, in thickness for each compartment.
func (j Job) Cavity() Size {
	room := j.Clearance
	room.Thickness *= Length(j.compartments())
	return j.Contents().Plus(room)
}

// Between returns the space between the boards as they are joined: the cavity,
// and where linings go in afterwards, their thickness too.
func (j Job) Between() Size {
	l := j.liningAfter()
	return j.Cavity().Plus(Size{Height: 2 * l, Width: l, Thickness: 2 * l})
}

// Outside returns the carcass from outside, bare of covering. The depth has one
// board, the spine wall; height and thickness have two.
func (j Job) Outside() Size {
	s := j.Edge()
	return j.Between().Plus(Size{Height: 2 * s, Width: s, Thickness: 2 * s})
}

// Fit returns what shows of a side beyond the book.
func (j Job) Fit() Fit {
	out, c := j.Outside(), j.Contents()
	return Fit{ForeEdge: out.Width - c.Width, HeadOrTail: out.Height - c.Height}
}

// Mouth returns the clearance left at the mouth. In height, one thickness of
// cover is turned in at head and tail each. On each side, cloth and side paper, and the cloth twice where head and tail cloth
// meet on a low case; beside a round thumb hole its tabs lie on the turn-in; a
// divider's strip lies on both its faces.
func (j Job) Mouth() Mouth {
	m, _ := j.turnedIn()
	for i := range j.compartments() {
		m.Thickness = min(m.Thickness, j.MouthThickness(i))
	}
	return m
}

// turnedIn returns the clearance at the mouth, in thickness without what is
// turned in, and what of that lies on one side.
func (j Job) turnedIn() (m Mouth, side Length) {
	k, p := j.cover(), j.SidePaper.Thickness
	m = Mouth{Height: j.Clearance.Height, Thickness: j.Clearance.Thickness}
	switch j.Covering {
	case SidesOnly:
		side = p
	case AllCloth, AllPaper:
		m.Height -= 2 * k
		side = k
	default:
		m.Height -= 2 * k
		side = k + p
		if 2*j.Cloth.Overlap > j.Outside().Height {
			side += k
		}
	}
	side = max(side, 2*j.holeLayer())
	return m, side
}

// MouthThickness returns the clearance in thickness left at the mouth of one
// compartment, from 0 at the left: between the sides, between a side and the
// strip of a divider, or between two strips.
func (j Job) MouthThickness(compartment int) Length {
	_, side := j.turnedIn()
	left, right := side, side
	if compartment > 0 {
		left = j.Cloth.Thickness
	}
	if compartment < j.Dividers() {
		right = j.Cloth.Thickness
	}
	return j.Clearance.Thickness - left - right
}

// cover returns the thickness of what head and tail are covered with.
func (j Job) cover() Length {
	if j.Covering == AllPaper {
		return j.SidePaper.Thickness
	}
	return j.Cloth.Thickness
}
