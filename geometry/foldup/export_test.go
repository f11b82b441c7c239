package foldup

import (
	"github.com/peterstace/simplefeatures/geom"

	"forel/geometry"
	"forel/geometry/fold"
)

// Part is a region of a piece for the tests outside the package: flat, and in
// the case where it lies on a face of it.
type Part struct {
	Piece string
	Seat  int
	Flat  []geometry.Point
	Space []Vec // point for point as Flat; nil where it lies on no face
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
// when it is folded up on the boards.
func Folded(pieces []geometry.Piece, p geometry.Piece, edge Length) [][]Part {
	c, _ := Build(pieces, edge)
	surfaces := c.surfaces()
	var out [][]Part
	for i, seat := range p.Seats {
		if p.Material == geometry.Board || index(surfaces, seat.Face) < 0 {
			continue // of a divider
		}
		parts := Regions(p)
		patches, _ := c.seated(p, seat, Conditions{Layer: map[geometry.Material]Length{p.Material: 1}, HoleChord: 1, HoleGap: 10}, surfaces)
		for _, patch := range patches {
			if patch.shape.Type() != geom.TypePolygon || patch.tab != nil {
				continue // of no area, or not a whole part
			}
			s := surfaces[0]
			for _, o := range surfaces {
				if o.plane == patch.plane {
					s = o
				}
			}
			for n := range parts {
				parts[n].Seat = i
				if parts[n].Flat[0] == patch.flat[0] && parts[n].Flat[1] == patch.flat[1] {
					ring := patch.shape.MustAsPolygon().ExteriorRing().Coordinates()
					parts[n].Space = nil
					for k := range patch.flat {
						q := ring.GetXY(k)
						parts[n].Space = append(parts[n].Space, s.frame.At(geometry.Pt(Length(q.X), Length(q.Y))))
					}
				}
			}
		}
		out = append(out, parts)
	}
	return out
}
