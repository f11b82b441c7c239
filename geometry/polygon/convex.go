package polygon

import (
	"math"

	"forel/geometry"
)

// Surrounds tells whether a polygon, counterclockwise, has no inward corners and holds
// all points, but for how far one may be out.
func Surrounds(ring, points []geometry.Point, out Length) bool {
	for i, p := range ring {
		if q := ring[(i+1)%len(ring)]; !LeftOf(p, q, points, -out) || !LeftOf(p, q, ring, -one) {
			return false
		}
	}
	return true
}

// LeftOf tells whether all points are so far left of the line from p to q.
func LeftOf(p, q geometry.Point, points []geometry.Point, far Length) bool {
	d := q.Sub(p)
	far *= Length(math.Sqrt(float64(d.X*d.X + d.Y*d.Y)))
	for _, r := range points {
		if d.X*(r.Y-p.Y)-d.Y*(r.X-p.X) < far-1e-9 {
			return false
		}
	}
	return true
}

// convex returns the outline of a shape that is one polygon without holes and inward
// corners, else nil.
func (s Shape) convex() []geometry.Point {
	if len(s) != 1 || len(s[0].Rings) != 1 || !Surrounds(s[0].Rings[0], s[0].Rings[0], one) {
		return nil
	}
	return s[0].Rings[0]
}

// meetConvex returns what two polygons without inward corners share.
func meetConvex(a, b []geometry.Point) Shape {
	for i, p := range b {
		if a = Clip(a, left(p, b[(i+1)%len(b)])); len(a) < 3 {
			return nil
		}
	}
	return whole(a)
}

// withoutEnd returns what a polygon has beyond another, neither with inward corners,
// where one edge of the other cuts off all that they share.
func withoutEnd(a, b []geometry.Point) (Shape, bool) {
	for i, p := range b {
		q := b[(i+1)%len(b)]
		if Surrounds(b, Clip(a, left(p, q)), one) {
			return whole(Clip(a, left(q, p))), true
		}
	}
	return nil, false
}

// left returns how far left of the line from p to q a place is.
func left(p, q geometry.Point) func(geometry.Point) Length {
	d, long := q.Sub(p), max(p.Distance(q), 1e-12)
	return func(r geometry.Point) Length { return (d.X*(r.Y-p.Y) - d.Y*(r.X-p.X)) / long }
}

// whole returns the shape of a ring, none where it encloses nothing.
func whole(ring []geometry.Point) Shape {
	if ring = Tidy(ring, one, false); len(ring) < 3 || signed(ring) < 1e-9 {
		return nil
	}
	return Shape{{[][]geometry.Point{ring}}}
}
