// Package polygon is polygon algebra on pieces, faces and pictures: what shapes
// share, what is left of one beyond others, what of a line lies in one. The work is
// done by the library simplefeatures; this package guards what comes back: a result
// whose area can't be right, or that has or lacks a place which the shapes say it
// should not, is worked out again with the coordinates snapped to ever coarser grids.
package polygon

import (
	"math"
	"slices"

	"forel/geometry"
)

// Length is a distance in millimetres.
type Length = geometry.Length

// Shape is polygons that share no area; the empty shape has none.
type Shape []Area

// Area is one polygon: its outline, counterclockwise, then its holes, clockwise. No
// ring repeats its first point.
type Area struct{ Rings [][]geometry.Point }

// Of returns the polygon through points, to a nanometre; the empty shape where they
// enclose nothing.
func Of(points []geometry.Point) Shape {
	area := signed(points)
	if math.Abs(area) < 1e-9 {
		return nil
	}
	ring := make([]geometry.Point, len(points))
	nanometre := func(l Length) Length { return Length(math.Round(l.MM()*1e6) / 1e6) }
	for i, p := range points {
		ring[i] = geometry.Pt(nanometre(p.X), nanometre(p.Y))
	}
	if area < 0 {
		slices.Reverse(ring)
	}
	return Shape{{[][]geometry.Point{ring}}}
}

// Box returns the shape of a box.
func Box(b geometry.Box) Shape { return Of(geometry.Rectangle(b).Flatten(1)) }

// signed returns the area that a ring encloses in mm², counterclockwise positive.
func signed(ring []geometry.Point) float64 {
	var sum Length
	for i := 1; i < len(ring); i++ {
		sum += ring[i-1].Sub(ring[0]).Cross(ring[i].Sub(ring[0]))
	}
	return sum.MM() / 2
}

// Size returns the area in mm².
func (s Shape) Size() float64 {
	var sum float64
	for _, a := range s {
		sum += a.Size()
	}
	return sum
}

// Size returns the area in mm².
func (a Area) Size() float64 {
	var sum float64
	for _, ring := range a.Rings {
		sum += signed(ring)
	}
	return sum
}

// Bounds returns the box around a shape; of the empty shape an empty one.
func (s Shape) Bounds() geometry.Box {
	if len(s) == 0 {
		return geometry.Box{}
	}
	b := s[0].Bounds()
	for _, a := range s[1:] {
		c := a.Bounds()
		b = geometry.Around(b.Min, b.Max, c.Min, c.Max)
	}
	return b
}

// Bounds returns the box around an area.
func (a Area) Bounds() geometry.Box { return geometry.Around(a.Rings[0]...) }

// Breadth returns the mean breadth of a long area: twice its size by its
// circumference.
func (a Area) Breadth() Length {
	return Length(2*a.Size()) / max(a.around(), 1e-9)
}

func (a Area) around() (sum Length) {
	a.Edges(func(p, q geometry.Point) { sum += p.Distance(q) })
	return sum
}

// Broader returns a shape without the areas that are no broader than given.
func (s Shape) Broader(than Length) Shape {
	return slices.DeleteFunc(slices.Clone(s), func(a Area) bool { return a.Breadth() <= than })
}

// Edges calls f with every edge; the area lies left of each.
func (a Area) Edges(f func(p, q geometry.Point)) {
	for _, ring := range a.Rings {
		p := ring[len(ring)-1]
		for _, q := range ring {
			f(p, q)
			p = q
		}
	}
}

// Holds tells whether a point lies in the shape.
func (s Shape) Holds(p geometry.Point) bool {
	return slices.ContainsFunc(s, func(a Area) bool { return a.Holds(p) })
}

// Holds tells whether a point lies in the area.
func (a Area) Holds(p geometry.Point) bool { return p.In(a.Rings...) }

// Clear returns how far a point is from the nearest edge.
func (a Area) Clear(p geometry.Point) Length {
	best := Length(math.Inf(1))
	a.Edges(func(q, r geometry.Point) {
		d, v := r.Sub(q), p.Sub(q)
		if long := d.X*d.X + d.Y*d.Y; long > 0 {
			t := max(0, min(1, (v.X*d.X+v.Y*d.Y)/long))
			v.X, v.Y = v.X-d.X*t, v.Y-d.Y*t
		}
		best = min(best, v.X*v.X+v.Y*v.Y)
	})
	return Length(math.Sqrt(float64(best)))
}

// Moved returns a shape with every point taken elsewhere.
func (s Shape) Moved(to func(geometry.Point) geometry.Point) Shape {
	out := make(Shape, len(s))
	for i, a := range s {
		for _, ring := range a.Rings {
			pts := make([]geometry.Point, len(ring))
			for k, p := range ring {
				pts[k] = to(p)
			}
			out[i].Rings = append(out[i].Rings, pts)
		}
		if signed(out[i].Rings[0]) < 0 { // mirrored
			for _, ring := range out[i].Rings {
				slices.Reverse(ring)
			}
		}
	}
	return out
}

// Path returns the area as one closed path to fill. Holes are reached over bridges of
// no width; they run the other way round than the outline, so that they stay open by
// either rule of filling.
func (a Area) Path() geometry.Path {
	pts := slices.Clone(a.Rings[0])
	for _, hole := range a.Rings[1:] {
		pts = slices.Concat(pts, a.Rings[0][:1], hole, hole[:1])
	}
	return geometry.Polygon(pts...)
}
