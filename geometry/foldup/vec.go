// Package foldup folds the flat pieces of a case up, in numbers, and looks at
// what comes of it: board left bare, flaps that reach too far or run into
// something, and how many layers lie where. It knows the pieces only by their
// outlines, cuts, folds and seats, not by the formulas that made them.
package foldup

import (
	"math"

	"forel/geometry"
)

// Length is a distance in millimetres.
type Length = geometry.Length

// Vec is a place or a step in the case: X from left to right, Y from tail to
// head, Z from spine to mouth, from the outer corner at left, tail and spine.
type Vec struct{ X, Y, Z Length }

func (a Vec) add(b Vec) Vec { return Vec{a.X + b.X, a.Y + b.Y, a.Z + b.Z} }
func (a Vec) sub(b Vec) Vec { return Vec{a.X - b.X, a.Y - b.Y, a.Z - b.Z} }
func (a Vec) mul(f Length) Vec {
	return Vec{a.X * f, a.Y * f, a.Z * f}
}
func (a Vec) dot(b Vec) Length { return a.X*b.X + a.Y*b.Y + a.Z*b.Z }
func (a Vec) cross(b Vec) Vec {
	return Vec{a.Y*b.Z - a.Z*b.Y, a.Z*b.X - a.X*b.Z, a.X*b.Y - a.Y*b.X}
}
func (a Vec) unit() Vec { return a.mul(1 / Length(math.Sqrt(float64(a.dot(a))))) }

// Frame lays a plane in the case: the plane's origin, and the unit steps that its
// X and Y go.
type Frame struct{ O, U, V Vec }

// At gives where a point of the plane lies.
func (f Frame) At(p geometry.Point) Vec { return f.O.add(f.U.mul(p.X)).add(f.V.mul(p.Y)) }

// along gives where a step in the plane goes.
func (f Frame) along(p geometry.Point) Vec { return f.U.mul(p.X).add(f.V.mul(p.Y)) }

// normal gives the side of the plane from which X to Y is counterclockwise: for
// a covering drawn back up, the side of the carcass.
func (f Frame) normal() Vec { return f.U.cross(f.V) }

// flat gives the coordinates in the plane of a place.
func (f Frame) flat(v Vec) geometry.Point {
	d := v.sub(f.O)
	return geometry.Pt(d.dot(f.U), d.dot(f.V))
}

// hinged gives the frame of a part that is turned about a line of this plane.
// out points from this plane's side of the line to the part's. A fold turns it
// toward the normal, round the edge of a board; a bend away from it, into an
// inner corner; a pleat lays it back on itself.
func (f Frame) hinged(on, along, out geometry.Point, kind line) Frame {
	a, l, o := f.At(on), f.along(along), f.along(out)
	turned := f.normal()
	switch kind {
	case bend:
		turned = turned.mul(-1)
	case pleat:
		turned = o.mul(-1)
	}
	// A step e of the part is (e·along) along the line and (e·out) away from it.
	step := func(e geometry.Point) Vec {
		return l.mul(e.X*along.X + e.Y*along.Y).add(turned.mul(e.X*out.X + e.Y*out.Y))
	}
	u, v := step(geometry.Pt(1, 0)), step(geometry.Pt(0, 1))
	return Frame{O: a.sub(u.mul(on.X)).sub(v.mul(on.Y)), U: u, V: v}
}
