// Package polygon is polygon algebra on pieces and faces: what shapes share,
// what is left of one beyond another. The work is done by the library
// simplefeatures; this package guards what comes back: a result whose area can't
// be right, or that has or lacks a place which the shapes say it should not, is
// worked out again with the coordinates snapped to ever coarser grids.
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
	snap := func(l Length) float64 { return plain(math.Round(float64(l)*1e6) / 1e6) }
	for i := range len(points) + 1 {
		p := points[i%len(points)]
		coords = append(coords, snap(p.X), snap(p.Y))
	}
	ring := geom.NewLineString(geom.NewSequence(coords, geom.DimXY))
	return geom.NewPolygon([]geom.LineString{ring}).AsGeometry()
}

// plain gives zero for -0, which the library takes for another place.
func plain(v float64) float64 { return v + 0 }

// Box gives the shape of a box.
func Box(b geometry.Box) Shape { return Of(geometry.Rectangle(b).Flatten(1)) }

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
