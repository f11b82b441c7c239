// Package fold parts a flat piece at its cuts, folds and creases, hangs the parts
// on each other and turns them about their folds. It knows no kind of case.
package fold

import (
	"math"

	"forel/geometry"
)

// Length is a distance in millimetres.
type Length = geometry.Length

// Vec is a place or a step in space, in millimetres.
type Vec struct{ X, Y, Z Length }

// Add returns the sum of two steps.
func (a Vec) Add(b Vec) Vec { return Vec{a.X + b.X, a.Y + b.Y, a.Z + b.Z} }

// Sub returns the step from b to a.
func (a Vec) Sub(b Vec) Vec { return Vec{a.X - b.X, a.Y - b.Y, a.Z - b.Z} }

// Mul returns a step f times as long.
func (a Vec) Mul(f Length) Vec { return Vec{a.X * f, a.Y * f, a.Z * f} }

// Dot returns the scalar product.
func (a Vec) Dot(b Vec) Length { return a.X*b.X + a.Y*b.Y + a.Z*b.Z }

// Cross returns the vector product, right-handed.
func (a Vec) Cross(b Vec) Vec {
	return Vec{a.Y*b.Z - a.Z*b.Y, a.Z*b.X - a.X*b.Z, a.X*b.Y - a.Y*b.X}
}

// Size returns the length of a step.
func (a Vec) Size() Length { return Length(math.Sqrt(float64(a.Dot(a)))) }

// Unit returns a step of length one in the same direction.
func (a Vec) Unit() Vec { return a.Mul(1 / a.Size()) }

// Frame lays a plane in space: the plane's origin, and the unit steps that its X
// and Y go, square to each other.
type Frame struct{ O, U, V Vec }

// At returns where a point of the plane lies.
func (f Frame) At(p geometry.Point) Vec { return f.O.Add(f.along(p)) }

// along returns where a step in the plane goes.
func (f Frame) along(p geometry.Point) Vec { return f.U.Mul(p.X).Add(f.V.Mul(p.Y)) }

// Normal returns the side of the plane from which X to Y is counterclockwise: the
// side that a fold turns a part toward.
func (f Frame) Normal() Vec { return f.U.Cross(f.V) }

// Flat returns the coordinates in the plane of a place.
func (f Frame) Flat(v Vec) geometry.Point {
	d := v.Sub(f.O)
	return geometry.Pt(d.Dot(f.U), d.Dot(f.V))
}

// Turned returns the frame of a part that is turned about a join, from 0 degrees,
// flat, to 90, folded. A fold turns it toward the normal, round the edge of a
// board; a bend away from it, into an inner corner; a pleat turns twice as far, until
// it lies on itself. The plane's own part lies left of the join.
func (f Frame) Turned(j Join, degrees float64) Frame {
	along := j.At.Sub(j.From).Mul(1 / j.Length().MM())
	out := geometry.Pt(along.Y, -along.X) // away from the plane's own part
	switch j.Kind {
	case Bend:
		degrees = -degrees
	case Pleat:
		degrees *= 2
	}
	sin, cos := sincos(degrees)
	l, o := f.along(along), f.along(out).Mul(cos).Add(f.Normal().Mul(sin))
	// A step e of the part is (e·along) along the join and (e·out) away from it.
	step := func(e geometry.Point) Vec {
		return l.Mul(e.X*along.X + e.Y*along.Y).Add(o.Mul(e.X*out.X + e.Y*out.Y))
	}
	u, v := step(geometry.Pt(1, 0)), step(geometry.Pt(0, 1))
	return Frame{O: f.At(j.From).Sub(u.Mul(j.From.X)).Sub(v.Mul(j.From.Y)), U: u, V: v}
}

// sincos is exact where degrees are right angles.
func sincos(degrees float64) (sin, cos Length) {
	if quarters := degrees / 90; quarters == math.Trunc(quarters) {
		s := []Length{0, 1, 0, -1}
		q := (int(quarters)%4 + 4) % 4
		return s[q], s[(q+1)%4]
	}
	s, c := math.Sincos(degrees * math.Pi / 180)
	return Length(s), Length(c)
}
