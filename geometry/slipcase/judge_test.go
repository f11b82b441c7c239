package slipcase_test

import (
	"github.com/peterstace/simplefeatures/geom"

	"forel/geometry"
)

// The judge of shapes is an independent implementation of the OpenGIS Simple
// Features standard; these functions hand our shapes to it.

func xys(points []geometry.Point) geom.Sequence {
	var flat []float64
	for _, p := range points {
		flat = append(flat, p.X.MM(), p.Y.MM())
	}
	return geom.NewSequence(flat, geom.DimXY)
}

// judgedLine gives an open path of straight segments.
func judgedLine(points ...geometry.Point) geom.LineString { return geom.NewLineString(xys(points)) }

// judgedPolygon gives a closed path; arcs are flattened to a micrometre.
func judgedPolygon(p geometry.Path) geom.Polygon {
	points := p.Flatten(0.001)
	if len(points) > 0 {
		points = append(points, points[0])
	}
	return geom.NewPolygon([]geom.LineString{judgedLine(points...)})
}

func judgedBox(b geometry.Box) geom.Polygon { return judgedPolygon(geometry.Rectangle(b)) }

// within tells whether a shape lies in an outline, its border included, to a nanometre.
func within(shape interface{ AsGeometry() geom.Geometry }, outline geometry.Path) bool {
	g, area := shape.AsGeometry(), judgedPolygon(outline).AsGeometry()
	if ok, err := geom.CoveredBy(g, area); ok || err != nil {
		return err == nil
	}
	past, err := geom.Difference(g, area)
	if err != nil {
		return false
	}
	seq := past.DumpCoordinates()
	for i := range seq.Length() {
		if d, ok := geom.Distance(seq.GetXY(i).AsPoint().AsGeometry(), area); !ok || d > 1e-6 {
			return false
		}
	}
	return true
}

// touches tells whether a line and the area in an outline share any point.
func touches(line geom.LineString, outline geometry.Path) bool {
	return geom.Intersects(line.AsGeometry(), judgedPolygon(outline).AsGeometry())
}

// crosses tells whether two lines share any point.
func crosses(a, b geom.LineString) bool { return geom.Intersects(a.AsGeometry(), b.AsGeometry()) }

// onBorder tells whether a straight line runs along an outline, to a nanometre.
func onBorder(from, to geometry.Point, outline geometry.Path) bool {
	border := judgedPolygon(outline).Boundary().AsGeometry()
	for n := range 21 {
		p := from.Add(to.Sub(from).Mul(float64(n) / 20))
		off, ok := geom.Distance(border, geom.XY{X: p.X.MM(), Y: p.Y.MM()}.AsPoint().AsGeometry())
		if !ok || off > eps {
			return false
		}
	}
	return true
}

// ends gives the two ends of a path that must be one straight line.
func ends(p geometry.Path) (from, to geometry.Point, ok bool) {
	if p.Closed || len(p.Vertices) != 2 || p.Vertices[0].Bulge != 0 {
		return from, to, false
	}
	return p.Vertices[0].Point, p.Vertices[1].Point, true
}
