package slipcase

// Size is the extent of a space: head to tail, spine to mouth, side to side.
type Size struct{ Height, Width, Thickness Length }

// Fit is what a stacked dry fit shows: how far a side reaches beyond the book
// at the fore-edge when laid flush with its spine, and at the head or the tail
// when laid flush with the other.
type Fit struct{ ForeEdge, HeadOrTail Length }

// Mouth is the clearance left where the case is tightest.
type Mouth struct {
	Height        Length // head to tail, between the middle tabs
	HeightCorners Length // head to tail in the corners, where a middle tab lies over a side tab
	Thickness     Length // side to side, between side tabs and side papers
}

// Lined gives the thickness of a board with its lining.
func (j Job) Lined() Length { return j.Board.Thickness + j.Lining.Thickness }

// Cavity gives the space between the lined faces: the book with its clearance.
func (j Job) Cavity() Size {
	b := j.Book()
	return Size{
		Height:    b.Height.Largest() + j.Clearance.Height,
		Width:     b.Width.Largest() + j.Clearance.Width,
		Thickness: b.Thickness.Largest() + j.Clearance.Thickness,
	}
}

// Outside gives the carcass from outside, bare of covering. The depth has one
// board, the spine wall; height and thickness have two.
func (j Job) Outside() Size {
	c, s := j.Cavity(), j.Lined()
	return Size{Height: c.Height + 2*s, Width: c.Width + s, Thickness: c.Thickness + 2*s}
}

// Fit gives what shows of a side beyond the book.
func (j Job) Fit() Fit {
	s := j.Lined()
	return Fit{ForeEdge: j.Clearance.Width + s, HeadOrTail: j.Clearance.Height + 2*s}
}

// Mouth gives the clearance left at the mouth: at head and tail one thickness
// of cloth is turned in each, two in the corners; on each side cloth and side
// paper, and the cloth twice where head and tail cloth meet on a low case.
func (j Job) Mouth() Mouth {
	k, p := j.Cloth.Thickness, j.SidePaper.Thickness
	layers := Length(1)
	if 2*j.Cloth.Overlap > j.Outside().Height {
		layers = 2
	}
	return Mouth{
		Height:        j.Clearance.Height - 2*k,
		HeightCorners: j.Clearance.Height - 4*k,
		Thickness:     j.Clearance.Thickness - 2*(layers*k+p),
	}
}
