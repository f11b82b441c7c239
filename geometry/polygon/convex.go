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
	far *= Length(math.Sqrt(float64(d.Dot(d))))
	for _, r := range points {
		if d.Cross(r.Sub(p)) < far-1e-9 {
			return false
		}
	}
	return true
}

// Apart tells whether an edge of either of two polygons parts them, but for how far one
// may reach beyond it.
func Apart(a, b []geometry.Point, beyond Length) bool {
	return parts(a, b, beyond) || parts(b, a, beyond)
}

func parts(a, b []geometry.Point, beyond Length) bool {
	for i, p := range a {
		q := a[(i+1)%len(a)]
		if !p.Near(q) && LeftOf(q, p, b, -beyond) && LeftOf(p, q, a, -beyond) {
			return true
		}
	}
	return false
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
		if a = Clip(a, Left(p, b[(i+1)%len(b)])); len(a) < 3 {
			return nil
		}
	}
	return whole(a)
}

// withoutConvex returns what a shape has beyond those of others that it can do without
// the library, since no corner is inward, and the others that are left.
func withoutConvex(a Shape, others []Shape) (Shape, []Shape, error) {
	var parts [][]geometry.Point
	for i := range a {
		ring := a[i : i+1].convex()
		if ring == nil {
			return a, others, nil
		}
		parts = append(parts, ring)
	}
	var left []Shape
	cut := false
	for _, b := range others {
		ring := b.convex()
		if ring == nil {
			left = append(left, b)
			continue
		}
		var next [][]geometry.Point
		for _, part := range parts {
			rest, all := beyond(part, ring)
			next, cut = append(next, rest...), cut || !all
		}
		parts = next
	}
	if !cut {
		return a, left, nil
	}
	shapes := make([]Shape, len(parts))
	for i, part := range parts {
		shapes[i] = whole(part)
	}
	a, err := Union(shapes...)
	return a, left, err
}

// beyond returns what a polygon has beyond another, both without inward corners, in
// such parts; all tells that this is the whole of it.
func beyond(a, b []geometry.Point) (parts [][]geometry.Point, all bool) {
	rest := a
	for i, p := range b {
		q := b[(i+1)%len(b)]
		if LeftOf(p, q, rest, 0) {
			continue
		}
		if part := Clip(rest, Left(q, p)); broad(part) {
			parts = append(parts, part)
		}
		if rest = Clip(rest, Left(p, q)); !broad(rest) {
			return [][]geometry.Point{a}, true
		}
	}
	return parts, false
}

// broad tells whether a ring encloses more than rounding: of one that does not, no two
// sides are so far apart that joined would leave a gap of it.
func broad(ring []geometry.Point) bool {
	return len(ring) > 2 && Area{[][]geometry.Point{ring}}.Breadth().Abs() > one/2
}

// Left returns how far left of the line from p to q a place is.
func Left(p, q geometry.Point) func(geometry.Point) Length {
	d, long := q.Sub(p), max(p.Distance(q), 1e-12)
	return func(r geometry.Point) Length { return d.Cross(r.Sub(p)) / long }
}

// whole returns the shape of a ring, none where it encloses nothing.
func whole(ring []geometry.Point) Shape {
	if ring = Tidy(ring, one, false); len(ring) < 3 || signed(ring) < 1e-9 {
		return nil
	}
	return Shape{{[][]geometry.Point{ring}}}
}
