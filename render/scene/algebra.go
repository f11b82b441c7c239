package scene

import (
	"github.com/peterstace/simplefeatures/geom"

	"forel/geometry"
	"forel/geometry/polygon"
)

// speck is how broad a part must be on average to be drawn, in mm.
const speck = 0.02

// nudges are how much larger or smaller a shape is taken to be, one after
// another, when two whose edges nearly lie on each other can't be worked out: far
// less than a line is wide.
var nudges = []float64{1, 1 + 1e-4, 1 - 1e-4, 1 + 4e-4, 1 - 4e-4, 1 + 1e-3, 1 - 1e-3}

// worked does something with two shapes, the second nudged until it works; ok is
// false where it never does.
func worked(do func(a, b geom.Geometry) (geom.Geometry, error), a, b geom.Geometry) (geom.Geometry, bool) {
	a = clean(a)
	c := polygon.Bounds(b).Center()
	for _, f := range nudges {
		n := b
		if f != 1 {
			n = b.TransformXY(func(xy geom.XY) geom.XY {
				return geom.XY{X: c.X.MM() + (xy.X-c.X.MM())*f, Y: c.Y.MM() + (xy.Y-c.Y.MM())*f}
			})
		}
		if g, err := do(a, n); err == nil {
			return clean(g), true
		}
	}
	return geom.Geometry{}, false
}

func without(a, b geom.Geometry) (geom.Geometry, bool) { return worked(polygon.Without, a, b) }
func meet(a, b geom.Geometry) (geom.Geometry, bool)    { return worked(polygon.Meet, a, b) }

func union(a, b geom.Geometry) (geom.Geometry, bool) {
	if a.IsEmpty() {
		return b, true
	}
	return worked(func(a, b geom.Geometry) (geom.Geometry, error) { return polygon.Union([]geom.Geometry{a, b}) }, a, b)
}

// clean leaves out of polygons what is too thin to be drawn, and points on a
// straight line between others. Lines stay as they are.
func clean(g geom.Geometry) geom.Geometry {
	parts := polygon.Parts(g)
	if len(parts) == 0 {
		return g
	}
	var kept []geom.Polygon
	for _, p := range parts {
		if polygon.MeanBreadth(p) <= speck {
			continue
		}
		var rings []geom.LineString
		for i, ring := range p.DumpRings() {
			if q := geom.NewPolygon([]geom.LineString{ring}); i > 0 && polygon.MeanBreadth(q) <= speck {
				continue
			}
			rings = append(rings, straightened(ring))
		}
		if q := geom.NewPolygon(rings); q.Validate() == nil {
			kept = append(kept, q)
		} else {
			kept = append(kept, p)
		}
	}
	return geom.NewMultiPolygon(kept).AsGeometry()
}

// thin is how far a corner must stand out to be one, in mm.
const thin = 1e-3

// straightened leaves out of a ring the points that are no corners, and spikes,
// where it goes out and comes back the same way.
func straightened(ring geom.LineString) geom.LineString {
	pts := polygon.Points(ring.Coordinates())
	pts = pts[:len(pts)-1]
	for again := true; again && len(pts) > 3; {
		again = false
		for i, q := range pts {
			a, b := pts[(i+len(pts)-1)%len(pts)], pts[(i+1)%len(pts)]
			if q.ToLine(a, b) < thin || b.ToLine(a, q) < thin || a.ToLine(q, b) < thin {
				pts = append(append([]geometry.Point{}, pts[:i]...), pts[i+1:]...)
				again = true
				break
			}
		}
	}
	coords := make([]float64, 0, 2*len(pts)+2)
	for i := range len(pts) + 1 {
		p := pts[i%len(pts)]
		coords = append(coords, p.X.MM(), p.Y.MM())
	}
	return geom.NewLineString(geom.NewSequence(coords, geom.DimXY))
}
