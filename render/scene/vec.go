// Package scene looks at flat faces in space from far away, at an angle, and
// takes out what they hide of each other. Faces need no order and may cut
// through each other; where two lie in one plane, the one on the higher layer
// is seen.
package scene

import (
	"math"

	"forel/geometry"
)

// Length is a distance in millimetres.
type Length = geometry.Length

// Vec is a place or a step in space, in millimetres.
type Vec struct{ X, Y, Z float64 }

// Add gives the sum of two steps.
func (a Vec) Add(b Vec) Vec { return Vec{a.X + b.X, a.Y + b.Y, a.Z + b.Z} }

// Sub gives the step from b to a.
func (a Vec) Sub(b Vec) Vec { return Vec{a.X - b.X, a.Y - b.Y, a.Z - b.Z} }

// Mul gives a step f times as long.
func (a Vec) Mul(f float64) Vec { return Vec{a.X * f, a.Y * f, a.Z * f} }

// Dot gives the scalar product.
func (a Vec) Dot(b Vec) float64 { return a.X*b.X + a.Y*b.Y + a.Z*b.Z }

// Cross gives the vector product, right-handed.
func (a Vec) Cross(b Vec) Vec {
	return Vec{a.Y*b.Z - a.Z*b.Y, a.Z*b.X - a.X*b.Z, a.X*b.Y - a.Y*b.X}
}

// Size gives the length of a step.
func (a Vec) Size() float64 { return math.Sqrt(a.Dot(a)) }

// Unit gives a step of length one in the same direction.
func (a Vec) Unit() Vec { return a.Mul(1 / a.Size()) }

// View is a parallel projection: where the page's right and upward lie in
// space, and the way to the viewer. All three are of length one and square to
// each other.
type View struct{ right, up, toward Vec }

// From gives the view of someone who stands in the direction of toward, up being
// upright on the page. They may not be parallel.
func From(toward, up Vec) View {
	t := toward.Unit()
	r := up.Cross(t).Unit()
	return View{right: r, up: t.Cross(r), toward: t}
}

// Turned gives the view of someone who stands before the face that looks along
// front, up upright, and goes yaw degrees to the right and pitch degrees up.
func Turned(front, up Vec, yaw, pitch float64) View {
	front, up = front.Unit(), up.Unit()
	right := up.Cross(front)
	sy, cy := math.Sincos(yaw * math.Pi / 180)
	sp, cp := math.Sincos(pitch * math.Pi / 180)
	flat := front.Mul(cy).Add(right.Mul(sy))
	return From(flat.Mul(cp).Add(up.Mul(sp)), up)
}

// Flat gives where a place is seen: X to the right, Y upward.
func (v View) Flat(p Vec) geometry.Point {
	return geometry.Pt(Length(p.Dot(v.right)), Length(p.Dot(v.up)))
}
