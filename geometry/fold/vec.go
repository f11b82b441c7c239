// Package fold parts a flat piece at its cuts, folds and creases, hangs the parts
// on each other and turns them about their folds. It knows no kind of case.
package fold

import (
	"math"

	"forel/geometry"
	"forel/geometry/space"
)

// Length is a distance in millimetres.
type Length = geometry.Length

// Turned returns the frame of a part that is turned about a join, from 0 degrees,
// flat, to 90, folded. A fold turns it toward the normal, round the edge of a
// board; a bend away from it, into an inner corner, and so does Away; a pleat turns twice as far, until
// it lies on itself. The plane's own part lies left of the join.
func Turned(f space.Frame, j Join, degrees float64) space.Frame {
	along := j.At.Sub(j.From).Mul(1 / j.Length().MM())
	out := geometry.Pt(along.Y, -along.X) // away from the plane's own part
	switch j.Kind {
	case Bend, Away:
		degrees = -degrees
	case Pleat:
		degrees *= 2
	}
	sin, cos := sincos(degrees)
	l, o := f.Along(along), f.Along(out).Mul(cos).Add(f.Normal().Mul(sin))
	// A step e of the part is (e·along) along the join and (e·out) away from it.
	step := func(e geometry.Point) space.Vec {
		return l.Mul(e.X*along.X + e.Y*along.Y).Add(o.Mul(e.X*out.X + e.Y*out.Y))
	}
	u, v := step(geometry.Pt(1, 0)), step(geometry.Pt(0, 1))
	return space.Frame{O: f.At(j.From).Sub(u.Mul(j.From.X)).Sub(v.Mul(j.From.Y)), U: u, V: v}
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
