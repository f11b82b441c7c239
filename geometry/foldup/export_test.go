package foldup

import (
	"forel/geometry"
	"forel/geometry/fold"
	"forel/geometry/space"
)

// Part is a region of a piece for the tests outside the package: flat, and in
// the case where it lies on a face of it.
type Part struct {
	Piece string
	Seat  int
	Flat  []geometry.Point
	Space []space.Vec // point for point as Flat; nil where it lies on no face
	Joins []Joint
}

// Joint is an edge that a part shares with another, given by its place among
// the parts of the piece. Hinged tells a fold from what gives.
type Joint struct {
	To     int
	Ends   [2]geometry.Point
	Hinged bool
}

// Regions gives the parts of a flat piece.
func Regions(p geometry.Piece) []Part {
	var out []Part
	for _, r := range fold.Split(p) {
		part := Part{Piece: p.Name, Flat: r.Outline}
		for _, j := range r.Joins {
			part.Joins = append(part.Joins, Joint{j.To, [2]geometry.Point{j.From, j.At}, j.Kind == fold.Fold || j.Kind == fold.Bend || j.Kind == fold.Pleat})
		}
		out = append(out, part)
	}
	return out
}

// Folded gives the parts of a piece once for each of its seats, where they are
// when it is folded up on a body.
func Folded(b Body, p geometry.Piece) [][]Part {
	var out [][]Part
	for i, seat := range p.Seats {
		if b.Find(seat.Face) < 0 {
			continue // of another
		}
		parts := Regions(p)
		sheet, _ := b.Hang(p, i)
		for n, q := range sheet.Folded() {
			parts[n].Seat = i
			if q.Face == "" {
				continue
			}
			for _, at := range q.Outline {
				parts[n].Space = append(parts[n].Space, q.At(at))
			}
		}
		out = append(out, parts)
	}
	return out
}
