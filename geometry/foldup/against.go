package foldup

import (
	"fmt"
	"slices"

	"forel/geometry"
)

// against finds what is turned in against something that lies on the wall
// beside it: a turn-in must end clear of the layers on the next wall, since
// they are as thick as they are. Parts of one piece that were folded in turn
// lie on each other and are left out.
func (c Covered) against(n Inner) []Fault {
	face, wall := c.Surfaces[c.Find(n.Face)], c.Surfaces[c.Find(n.Wall)]
	there := c.In(face.Plane)
	at := MeetingOf(face, wall)
	corner := Pile(there) // as far from the corner as what lies on the face is thick
	var out []Fault
	for _, p := range there {
		if p.Tucked {
			continue
		}
		gap := at.ToWall(p.Shape.Bounds())
		if need := c.beside(at, n.Over, p, corner); gap < need-1e-4 {
			out = append(out, Fault{Kind: Collision, Piece: p.Piece, Face: n.Face,
				What: fmt.Sprintf("a turn-in ends %.2f mm from a wall that %.2f mm of covering lies on", gap.MM(), need.MM())})
		}
	}
	return out
}

// beside returns how thick the layers are that lie on a wall in the corner where
// it meets a face, no farther from it than given, and where along the corner a
// patch of the face lies.
func (c Covered) beside(at Meeting, over bool, p Patch, corner Length) Length {
	back := MeetingOf(at.wall, at.face)
	from, to := back.Reach(p.Shape.Bounds())
	strip := back.Between(at.Strip(corner), from, to)
	there := slices.DeleteFunc(c.In(at.wall.Plane), func(o Patch) bool {
		return o.Piece == p.Piece && (o.Tucked || over && o.Seat == p.Seat && o.Order <= p.Order)
	})
	return Pile(Within(there, strip))
}

// slitsOutside finds slits that run into what lies on an outside face, where
// they would be seen.
func (c Covered) slitsOutside(pieces []geometry.Piece) []Fault {
	var out []Fault
	for _, p := range pieces {
		for _, slit := range p.Slits {
			for _, s := range c.outside(p.Name) {
				if runsInto(slit, s) {
					out = append(out, Fault{Kind: Bare, Piece: p.Name, What: "a slit runs into what lies on an outside face"})
					break
				}
			}
		}
	}
	return out
}

// outside returns the parts of a piece that lie on an outside face.
func (c Covered) outside(piece string) [][]geometry.Point {
	var out [][]geometry.Point
	for _, s := range c.Surfaces {
		if s.Inside || s.Edge {
			continue
		}
		for _, p := range c.In(s.Plane) {
			if p.Piece == piece {
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
			if q.In(outline) && Distance(q, geometry.Polygon(outline...)) > hair {
				return true
			}
		}
	}
	return false
}
