package foldup

import (
	"math"

	"forel/geometry"
	"forel/geometry/space"
)

// hinged returns the frame of a part that is turned about a line of a plane.
// out points from this plane's side of the line to the part's. A fold turns it
// toward the normal, round the edge of a board; a bend away from it, into an
// inner corner; a pleat lays it back on itself.
func hinged(f space.Frame, on, along, out geometry.Point, kind line) space.Frame {
	o := f.Along(out)
	turned := f.Normal()
	switch kind {
	case bend:
		turned = turned.Mul(-1)
	case pleat:
		turned = o.Mul(-1)
	}
	return about(f, on, along, out, turned)
}

// turned returns the frame of a part turned about a hinge by an angle in radians;
// see hinged.
func turned(f space.Frame, j join, angle float64) space.Frame {
	along, out := j.ways()
	up := f.Normal()
	switch j.kind {
	case bend:
		up = up.Mul(-1)
	case pleat:
		angle *= 2
	}
	sin, cos := math.Sincos(angle)
	return about(f, j.from, along, out, f.Along(out).Mul(Length(cos)).Add(up.Mul(Length(sin))))
}

// about returns the frame of a part that hangs on a line of a plane and goes the
// way to from there, where it would go out if it were flat.
func about(f space.Frame, on, along, out geometry.Point, to space.Vec) space.Frame {
	l := f.Along(along)
	// A step e of the part is (e·along) along the line and (e·out) away from it.
	step := func(e geometry.Point) space.Vec {
		return l.Mul(e.X*along.X + e.Y*along.Y).Add(to.Mul(e.X*out.X + e.Y*out.Y))
	}
	u, v := step(geometry.Pt(1, 0)), step(geometry.Pt(0, 1))
	return space.Frame{O: f.At(on).Sub(u.Mul(on.X)).Sub(v.Mul(on.Y)), U: u, V: v}
}
