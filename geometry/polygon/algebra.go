package polygon

import (
	"errors"
	"math"
	"slices"

	"github.com/peterstace/simplefeatures/geom"

	"forel/geometry"
)

// errUnworked is returned where no grid gave a result that can be right.
var errUnworked = errors.New("polygon: the library can't work out these shapes")

// The finest and the coarsest grid that is tried, in decimals of a millimetre.
const finest, coarsest = 6, 3

// Meet returns what two shapes share.
func Meet(a, b Shape) (Shape, error) {
	if apart(a, b) {
		return nil, nil
	}
	if a, _ = a.touching(b); len(a) == 0 {
		return nil, nil
	}
	if p, q := a.convex(), b.convex(); p != nil && q != nil {
		return meetConvex(p, q), nil
	}
	return worked([]Shape{a, b}, operation{
		do:    func(s []geom.Geometry) (geom.Geometry, error) { return geom.Intersection(s[0], s[1]) },
		keeps: func(in []bool) bool { return in[0] && in[1] },
		most:  min(a.Size(), b.Size()),
	})
}

// Without returns what the first shape has beyond all others.
func Without(a Shape, others ...Shape) (Shape, error) {
	if others = slices.DeleteFunc(slices.Clone(others), func(b Shape) bool { return apart(a, b) }); len(others) == 0 {
		return a, nil
	}
	a, others, err := withoutConvex(a, others)
	for _, b := range others {
		near, rest := a.touching(b)
		if err != nil || len(near) == 0 {
			continue
		}
		near, err = worked([]Shape{near, b}, operation{
			do:    func(s []geom.Geometry) (geom.Geometry, error) { return geom.Difference(s[0], s[1]) },
			keeps: func(in []bool) bool { return in[0] && !in[1] },
			least: near.Size() - b.Size(), most: near.Size(),
		})
		a = append(near, rest...)
	}
	return a, err
}

// Union returns all of several shapes together. Edges that lie on each other but for
// rounding are one.
func Union(shapes ...Shape) (Shape, error) {
	shapes = slices.DeleteFunc(slices.Clone(shapes), func(s Shape) bool { return len(s) == 0 })
	if len(shapes) == 0 {
		return nil, nil
	}
	if len(shapes) == 1 {
		return shapes[0], nil
	}
	o := operation{do: geom.UnionMany, keeps: func(in []bool) bool { return slices.Contains(in, true) }}
	for _, s := range shapes {
		o.least, o.most = max(o.least, s.Size()), o.most+s.Size()
	}
	near := joined(shapes)
	if s, ok := dissolved(near); ok && o.holds(probesOf(near), s, math.Pow10(-finest)) {
		return s, nil
	}
	if s, err := worked(near, o); err == nil {
		return s, nil
	}
	return worked(shapes, o)
}

// Validate tells what makes a shape no polygon, such as an outline that crosses
// itself, by the OpenGIS Simple Features standard.
func (s Shape) Validate() error { return s.library(finest).Validate() }

// apart tells quickly of most shapes that share nothing.
func apart(a, b Shape) bool {
	p, q := a.Bounds(), b.Bounds()
	return len(a) == 0 || len(b) == 0 || p.Max.X < q.Min.X || q.Max.X < p.Min.X || p.Max.Y < q.Min.Y || q.Max.Y < p.Min.Y
}

// touching returns the polygons of a shape that no edge parts from another, and the rest.
func (s Shape) touching(b Shape) (near, rest Shape) {
	for i, a := range s {
		parted := func(c Area) bool { return Apart(a.Rings[0], c.Rings[0], one) }
		if apart(s[i:i+1], b) || !slices.ContainsFunc(b, func(c Area) bool { return !parted(c) }) {
			rest = append(rest, a)
		} else {
			near = append(near, a)
		}
	}
	return near, rest
}

// operation is what is done with shapes, and what must be true of the result.
type operation struct {
	do          func([]geom.Geometry) (geom.Geometry, error)
	keeps       func(in []bool) bool // whether a place is in the result, by the shapes that it is in
	least, most float64              // bounds of the area
}

// worked works shapes out, on ever coarser grids until the result can be right.
func worked(shapes []Shape, o operation) (Shape, error) {
	p, on := probesOf(shapes), make([]geom.Geometry, len(shapes))
	for decimals := math.MaxInt; decimals >= coarsest; decimals = min(decimals-1, finest) {
		for i, s := range shapes {
			on[i] = s.library(decimals)
		}
		g, err := o.do(on)
		if err != nil {
			continue
		}
		// A grid moves each edge by a step of it at most.
		step := math.Pow10(-min(decimals, finest))
		s := fromLibrary(g)
		if apart, ok := dissolved(joined([]Shape{s})); ok {
			s = apart // where a ring touches itself
		}
		if o.holds(p, s, step) {
			return s, nil
		}
	}
	return nil, errUnworked
}

// holds tells whether a result on a grid with a step can be right.
func (o operation) holds(p probes, s Shape, step float64) bool {
	n, slack := s.Size(), p.around*step
	return n >= o.least-slack && n <= o.most+slack && p.agree(s, o.keeps, step)
}

// library returns a shape as the library has it, on a grid of so many decimals where
// they are no more than finest. No zero has a sign: the library takes -0 for another
// place.
func (s Shape) library(decimals int) geom.Geometry {
	parts := make([]geom.Polygon, len(s))
	for i, a := range s {
		rings := make([]geom.LineString, len(a.Rings))
		for k, ring := range a.Rings {
			coords := make([]float64, 0, 2*len(ring)+2)
			for n := range len(ring) + 1 {
				p := ring[n%len(ring)]
				coords = append(coords, p.X.MM()+0, p.Y.MM()+0)
			}
			rings[k] = geom.NewLineString(geom.NewSequence(coords, geom.DimXY))
		}
		parts[i] = geom.NewPolygon(rings)
	}
	g := geom.NewMultiPolygon(parts).AsGeometry()
	if decimals > finest {
		return g
	}
	return g.SnapToGrid(decimals).TransformXY(func(q geom.XY) geom.XY { return geom.XY{X: q.X + 0, Y: q.Y + 0} })
}

// fromLibrary returns the polygons of what the library has, without lines, points and
// needles: by these a polygon would be less broad than it is.
func fromLibrary(g geom.Geometry) Shape {
	var out Shape
	for _, part := range g.Dump() {
		p, ok := part.AsPolygon()
		if !ok || p.IsEmpty() {
			continue
		}
		var a Area
		for i, line := range p.DumpRings() {
			seq := line.Coordinates()
			ring := make([]geometry.Point, seq.Length()-1) // the last repeats the first
			for k := range ring {
				xy := seq.GetXY(k)
				ring[k] = geometry.Pt(Length(xy.X), Length(xy.Y))
			}
			if hole := i > 0; hole == (signed(ring) > 0) {
				slices.Reverse(ring)
			}
			if ring = Tidy(ring, one, false); broad(ring) {
				a.Rings = append(a.Rings, ring)
			} else if i == 0 {
				break
			}
		}
		if len(a.Rings) > 0 {
			out = append(out, a)
		}
	}
	return out
}
