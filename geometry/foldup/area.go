package foldup

import (
	"math"

	"github.com/peterstace/simplefeatures/geom"

	"forel/geometry"
)

// Polygon algebra is the library's. Coordinates are snapped to a grid first,
// so that edges meant to be one are one.
const snapDecimals = 6

// shape gives the polygon through points; an empty one where they enclose
// nothing.
func shape(points []geometry.Point) geom.Geometry {
	if math.Abs(geometry.Polygon(points...).SignedArea()) < 1e-9 {
		return geom.Geometry{}
	}
	coords := make([]float64, 0, 2*len(points)+2)
	snap := func(l geometry.Length) float64 {
		return math.Round(float64(l)*1e6) / 1e6
	}
	for i := range len(points) + 1 {
		p := points[i%len(points)]
		coords = append(coords, snap(p.X), snap(p.Y))
	}
	ring := geom.NewLineString(geom.NewSequence(coords, geom.DimXY))
	return geom.NewPolygon([]geom.LineString{ring}).AsGeometry()
}

// meet, without and join give what two shapes share, what the first has
// beyond the second, and both together.
func meet(a, b geom.Geometry) geom.Geometry {
	if apart(a, b) {
		return geom.Geometry{}
	}
	return or(a)(geom.Intersection(a, b))
}

func without(a, b geom.Geometry) geom.Geometry {
	if apart(a, b) {
		return a
	}
	return or(a)(geom.Difference(a, b))
}

func united(gs []geom.Geometry) geom.Geometry {
	if len(gs) == 1 {
		return gs[0]
	}
	return or(geom.Geometry{})(geom.UnionMany(gs))
}

// apart tells quickly of most shapes that share no area that they do not.
func apart(a, b geom.Geometry) bool {
	return !box(a).Overlaps(box(b))
}

// or gives what stands for a result that the library can't give: such that a
// fault is found rather than missed.
func or(instead geom.Geometry) func(geom.Geometry, error) geom.Geometry {
	return func(g geom.Geometry, err error) geom.Geometry {
		if err != nil {
			return instead
		}
		return g
	}
}

func area(g geom.Geometry) float64 { return g.Area() }

// parts gives the polygons that a shape is made of.
func parts(g geom.Geometry) []geom.Polygon {
	switch g.Type() {
	case geom.TypePolygon:
		if p := g.MustAsPolygon(); !p.IsEmpty() {
			return []geom.Polygon{p}
		}
	case geom.TypeMultiPolygon:
		m := g.MustAsMultiPolygon()
		var out []geom.Polygon
		for i := range m.NumPolygons() {
			out = append(out, m.PolygonN(i))
		}
		return out
	case geom.TypeGeometryCollection:
		c := g.MustAsGeometryCollection()
		var out []geom.Polygon
		for i := range c.NumGeometries() {
			out = append(out, parts(c.GeometryN(i))...)
		}
		return out
	}
	return nil
}

// breadth gives the mean breadth of a long part: twice its area by its
// circumference.
func breadth(p geom.Polygon) Length {
	around := p.Boundary().Length()
	if around == 0 {
		return 0
	}
	return Length(2 * p.Area() / around)
}

// box gives the box around a shape.
func box(g geom.Geometry) geometry.Box {
	lo, hi, ok := g.Envelope().MinMaxXYs()
	if !ok {
		return geometry.Box{}
	}
	return geometry.Bx(Length(lo.X), Length(lo.Y), Length(hi.X), Length(hi.Y))
}
