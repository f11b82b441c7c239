// Package scene looks at flat faces in space from far away, at an angle, and
// takes out what they hide of each other. Faces need no order and may cut
// through each other; where two lie in one plane, the one on the higher layer
// is seen.
package scene

import (
	"math"

	"forel/geometry"
	"forel/geometry/space"
)

// Length is a distance in millimetres.
type Length = geometry.Length

// Vec is a place or a step in space, in millimetres.
type Vec = space.Vec

// View is a parallel projection: where the page's right and upward lie in
// space, and the way to the viewer. All three are of length one and square to
// each other.
type View struct{ right, up, toward Vec }

// From returns the view of someone who stands in the direction of toward, up being
// upright on the page. They may not be parallel.
func From(toward, up Vec) View {
	t := toward.Unit()
	r := up.Cross(t).Unit()
	return View{right: r, up: t.Cross(r), toward: t}
}

// Turned returns the view of someone who stands before the face that looks along
// front, up upright, and goes yaw degrees to the right and pitch degrees up.
func Turned(front, up Vec, yaw, pitch float64) View {
	front, up = front.Unit(), up.Unit()
	right := up.Cross(front)
	turn := func(from, to Vec, degrees float64) Vec {
		sin, cos := math.Sincos(degrees * math.Pi / 180)
		return from.Mul(Length(cos)).Add(to.Mul(Length(sin)))
	}
	return From(turn(turn(front, right, yaw), up, pitch), up)
}

// Flat returns where a place is seen: X to the right, Y upward.
func (v View) Flat(p Vec) geometry.Point {
	return geometry.Pt(p.Dot(v.right), p.Dot(v.up))
}
