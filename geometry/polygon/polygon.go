// Package polygon is polygon algebra on pieces and faces: what shapes share,
// what is left of one beyond another. The work is done by the library
// simplefeatures; this package guards what comes back. The library takes edges
// that nearly lie on each other wrongly, at times without an error: so a result
// whose area can't be right is worked out again with the coordinates snapped to
// ever coarser grids.
package polygon

import (
	"errors"
	"math"

	"github.com/peterstace/simplefeatures/geom"

	"forel/geometry"
)

// Length is a distance in millimetres.
type Length = geometry.Length

// Shape is one polygon, several, or none; in what is drawn, lines too.
type Shape = geom.Geometry

// errUnworked is given where no grid gave a result that can be right.
var errUnworked = errors.New("polygon: the library can't work out these shapes")

// Finest is the finest grid, in decimals of a millimetre.
const Finest = 6

// coarsest is the coarsest grid that is tried.
const coarsest = 3

// Of gives the polygon through points, snapped to the finest grid; none where
// they enclose nothing.
func Of(points []geometry.Point) Shape {
	if math.Abs(geometry.Polygon(points...).SignedArea()) < 1e-9 {
		return Shape{}
	}
	coords := make([]float64, 0, 2*len(points)+2)
	snap := func(l Length) float64 { return math.Round(float64(l)*1e6) / 1e6 }
	for i := range len(points) + 1 {
		p := points[i%len(points)]
		coords = append(coords, snap(p.X), snap(p.Y))
	}
	ring := geom.NewLineString(geom.NewSequence(coords, geom.DimXY))
	return geom.NewPolygon([]geom.LineString{ring}).AsGeometry()
}

// Box gives the shape of a box.
func Box(b geometry.Box) Shape { return Of(geometry.Rectangle(b).Flatten(1)) }

// Meet gives what two shapes share.
func Meet(a, b Shape) (Shape, error) {
	if apart(a, b) {
		return Shape{}, nil
	}
	if g, ok := quickMeet(a, b); ok {
		return g, nil
	}
	return worked(geom.Intersection, a, b, func(got, slack float64) bool {
		return got <= min(a.Area(), b.Area())+slack
	})
}

// Without gives what the first shape has beyond the second.
func Without(a, b Shape) (Shape, error) {
	if apart(a, b) {
		return a, nil
	}
	if isBox(b) && Bounds(b).Contains(Bounds(a)) {
		return Shape{}, nil
	}
	return worked(geom.Difference, a, b, func(got, slack float64) bool {
		return got <= a.Area()+slack && got >= a.Area()-b.Area()-slack
	})
}

// quickMeet gives what two shapes share where that needs no library: one is a box
// and the other lies in it, or both are boxes.
func quickMeet(a, b Shape) (g Shape, ok bool) {
	p, q := Bounds(a), Bounds(b)
	isP, isQ := isBox(a), isBox(b)
	switch {
	case isP && p.Contains(q):
		return b, true
	case isQ && q.Contains(p):
		return a, true
	case isP && isQ:
		return Box(p.Intersect(q)), true
	}
	return Shape{}, false
}

// isBox tells whether a shape is a rectangle that is level.
func isBox(s Shape) bool {
	p, ok := s.AsPolygon()
	if !ok || p.NumInteriorRings() > 0 {
		return false
	}
	ring := p.ExteriorRing().Coordinates()
	if ring.Length() != 5 {
		return false
	}
	level := ring.GetXY(0).Y == ring.GetXY(1).Y
	for i := range 4 {
		a, b := ring.GetXY(i), ring.GetXY(i+1)
		if level && a.Y != b.Y || !level && a.X != b.X {
			return false
		}
		level = !level
	}
	return true
}

// apart tells quickly of most shapes that share nothing, lines among them.
func apart(a, b Shape) bool {
	p, q := Bounds(a), Bounds(b)
	return p.Max.X < q.Min.X || q.Max.X < p.Min.X || p.Max.Y < q.Min.Y || q.Max.Y < p.Min.Y
}

// worked works two shapes out on ever coarser grids until the area of the
// result can be right.
func worked(do func(a, b Shape) (Shape, error), a, b Shape, right func(area, slack float64) bool) (Shape, error) {
	around := a.Boundary().Length() + b.Boundary().Length()
	if g, err := do(a, b); err == nil && right(g.Area(), around*math.Pow10(-Finest)) {
		return g, nil
	}
	for decimals := Finest; decimals >= coarsest; decimals-- {
		g, err := do(a.SnapToGrid(decimals), b.SnapToGrid(decimals))
		// Snapping moves each edge by a step of the grid at most.
		if err == nil && right(g.Area(), around*math.Pow10(-decimals)) {
			return g, nil
		}
	}
	return Shape{}, errUnworked
}

// Union gives all of several shapes together.
func Union(shapes []Shape) (Shape, error) {
	if len(shapes) == 1 {
		return shapes[0], nil
	}
	var largest, sum, around float64
	for _, s := range shapes {
		largest, sum, around = max(largest, s.Area()), sum+s.Area(), around+s.Boundary().Length()
	}
	if g, err := geom.UnionMany(shapes); err == nil && g.Area() >= largest-around*1e-6 && g.Area() <= sum+around*1e-6 {
		return g, nil
	}
	for decimals := Finest; decimals >= coarsest; decimals-- {
		snapped := make([]Shape, len(shapes))
		for i, s := range shapes {
			snapped[i] = s.SnapToGrid(decimals)
		}
		g, err := geom.UnionMany(snapped)
		slack := around * math.Pow10(-decimals)
		if err == nil && g.Area() >= largest-slack && g.Area() <= sum+slack {
			return g, nil
		}
	}
	return Shape{}, errUnworked
}

// Parts gives the polygons that a shape is made of.
func Parts(s Shape) []geom.Polygon {
	var out []geom.Polygon
	for _, part := range s.Dump() {
		if p, ok := part.AsPolygon(); ok && !p.IsEmpty() {
			out = append(out, p)
		}
	}
	return out
}

// Bounds gives the box around a shape.
func Bounds(s Shape) geometry.Box {
	lo, hi, ok := s.Envelope().MinMaxXYs()
	if !ok {
		return geometry.Box{}
	}
	return geometry.Bx(Length(lo.X), Length(lo.Y), Length(hi.X), Length(hi.Y))
}

// MeanBreadth gives the mean breadth of a long polygon: twice its area by its
// circumference.
func MeanBreadth(p geom.Polygon) Length {
	around := p.Boundary().Length()
	if around == 0 {
		return 0
	}
	return Length(2 * p.Area() / around)
}

// Points gives the places of a sequence.
func Points(s geom.Sequence) []geometry.Point {
	out := make([]geometry.Point, s.Length())
	for i := range out {
		xy := s.GetXY(i)
		out[i] = geometry.Pt(Length(xy.X), Length(xy.Y))
	}
	return out
}
