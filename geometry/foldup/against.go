package foldup

import (
	"fmt"

	"forel/geometry"
)

// against finds what is turned in against something that lies on the wall
// beside it: a turn-in must end clear of the layers on the next wall, since
// they are as thick as they are. Parts of one piece that were folded in turn
// lie on each other and are left out.
func (v view) against() []Fault {
	var out []Fault
	for _, pair := range []struct {
		face, wall geometry.Face
		along      int  // 0: the wall stands at an end of the face's X, 1: of its Y
		far        bool // at the far end
	}{
		{geometry.LeftInside, geometry.HeadInside, 1, true},
		{geometry.LeftInside, geometry.TailInside, 1, false},
		{geometry.RightInside, geometry.HeadInside, 1, true},
		{geometry.RightInside, geometry.TailInside, 1, false},
		{geometry.HeadInside, geometry.LeftInside, 0, false},
		{geometry.HeadInside, geometry.RightInside, 0, true},
		{geometry.TailInside, geometry.LeftInside, 0, false},
		{geometry.TailInside, geometry.RightInside, 0, true},
	} {
		there := v.on(index(v.surfaces, pair.face))
		if len(there) == 0 {
			continue
		}
		face := v.surfaces[index(v.surfaces, pair.face)]
		corner := pile(there) // as far from the corner as what lies on the face is thick
		for _, p := range there {
			if p.tucked {
				continue
			}
			gap := toEnd(p.shape.Bounds(), face.extent, pair.along, pair.far)
			if need := v.beside(pair.wall, pair.face, p, corner); gap < need-1e-4 {
				out = append(out, Fault{Kind: Collision, Piece: p.piece, Face: pair.face,
					What: fmt.Sprintf("a turn-in ends %.2f mm from a wall that %.2f mm of covering lies on", gap.MM(), need.MM())})
			}
		}
	}
	return out
}

// toEnd gives how far a box stays from an end of an extent.
func toEnd(b, extent geometry.Box, along int, far bool) Length {
	switch {
	case along == 0 && far:
		return extent.Max.X - b.Max.X
	case along == 0:
		return b.Min.X - extent.Min.X
	case far:
		return extent.Max.Y - b.Max.Y
	}
	return b.Min.Y - extent.Min.Y
}

// beside gives how thick the layers are that lie on a wall in the corner where
// it meets a face, no farther from it than given, and at the depth where a patch
// of the face lies.
func (v view) beside(wall, face geometry.Face, p patch, corner Length) Length {
	s := v.surfaces[index(v.surfaces, wall)]
	strip := s.extent
	deep := p.shape.Bounds()
	switch {
	case face == geometry.LeftInside: // the wall is at head or tail: X along it, Y its depth
		strip.Max.X = strip.Min.X + corner
		strip.Min.Y, strip.Max.Y = deep.Min.X, deep.Max.X
	case face == geometry.RightInside:
		strip.Min.X = strip.Max.X - corner
		strip.Min.Y, strip.Max.Y = deep.Min.X, deep.Max.X
	case face == geometry.HeadInside: // the wall is a side: X its depth, Y along it
		strip.Min.Y = strip.Max.Y - corner
		strip.Min.X, strip.Max.X = deep.Min.Y, deep.Max.Y
	default:
		strip.Max.Y = strip.Min.Y + corner
		strip.Min.X, strip.Max.X = deep.Min.Y, deep.Max.Y
	}
	in := shape(corners(strip))
	var there []patch
	for _, o := range v.on(index(v.surfaces, wall)) {
		if o.piece == p.piece && o.order <= p.order && o.seat == p.seat && face != geometry.HeadInside && face != geometry.TailInside {
			continue
		}
		if slight(o.shape, in) {
			continue
		}
		o.shape = meet(o.shape, in)
		if solid(o.shape, sliver) && !(o.piece == p.piece && o.tucked) {
			there = append(there, o)
		}
	}
	return pile(there)
}

// slitsOutside finds slits that run into what lies on an outside face, where
// they would be seen.
func (v view) slitsOutside(pieces []geometry.Piece) []Fault {
	var out []Fault
	for _, p := range pieces {
		for _, slit := range p.Slits {
			for _, s := range v.outside(p.Name) {
				if runsInto(slit, s) {
					out = append(out, Fault{Kind: Bare, Piece: p.Name, What: "a slit runs into what lies on an outside face"})
					break
				}
			}
		}
	}
	return out
}

// outside gives the parts of a piece that lie on an outside face.
func (v view) outside(piece string) [][]geometry.Point {
	var out [][]geometry.Point
	for i, s := range v.surfaces {
		if s.inside || s.name == geometry.LeftMouth || s.name == geometry.RightMouth || s.name == geometry.HeadMouth || s.name == geometry.TailMouth {
			continue
		}
		for _, p := range v.on(i) {
			if p.piece == piece {
				out = append(out, p.flat)
			}
		}
	}
	return out
}

// runsInto tells whether a path goes more than a hair into a polygon.
func runsInto(path geometry.Path, outline []geometry.Point) bool {
	const steps, hair = 50, 1e-3
	pts := path.Flatten(0.01)
	for i := 1; i < len(pts); i++ {
		for k := 0; k <= steps; k++ {
			q := pts[i-1].Add(pts[i].Sub(pts[i-1]).Mul(float64(k) / steps))
			if q.In(outline) && distance(q, geometry.Polygon(outline...)) > hair {
				return true
			}
		}
	}
	return false
}
