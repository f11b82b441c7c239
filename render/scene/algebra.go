package scene

import (
	"slices"

	"github.com/peterstace/simplefeatures/geom"

	"forel/geometry"
	"forel/geometry/polygon"
	"forel/render/shape"
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
	c := polygon.Bounds(b).Center()
	for _, f := range nudges {
		n := b
		if f != 1 {
			n = b.TransformXY(func(xy geom.XY) geom.XY {
				return geom.XY{X: c.X.MM() + (xy.X-c.X.MM())*f, Y: c.Y.MM() + (xy.Y-c.Y.MM())*f}
			})
		}
		if g, err := do(a, n); err == nil {
			return g, true
		}
	}
	return geom.Geometry{}, false
}

// geometry gives a region as the library has it.
func (r Region) geometry() geom.Geometry {
	var parts []geom.Polygon
	for _, a := range r {
		var rings []geom.LineString
		for _, ring := range a.Rings {
			var coords []float64
			for i := range len(ring) + 1 {
				p := ring[i%len(ring)]
				coords = append(coords, p.X.MM(), p.Y.MM())
			}
			rings = append(rings, geom.NewLineString(geom.NewSequence(coords, geom.DimXY)))
		}
		parts = append(parts, geom.NewPolygon(rings))
	}
	return geom.NewMultiPolygon(parts).AsGeometry()
}

// fromGeometry gives a shape of the library as a region, without what is too
// thin to be drawn.
func fromGeometry(g geom.Geometry) Region {
	var rings [][]geometry.Point
	for _, a := range shape.AreasOf(g) {
		for i, ring := range a.Rings {
			if (signed(ring) > 0) == (i > 0) {
				slices.Reverse(ring)
			}
			rings = append(rings, ring)
		}
	}
	return regionOf(rings)
}

// thin is how far a corner must stand out to be one, in mm.
const thin = 1e-3

// straightened leaves out of a ring the points that are no corners, unless they
// are kept, and spikes, where it goes out and comes back the same way.
func straightened(ring []geometry.Point, kept func(geometry.Point) bool) []geometry.Point {
	for at, still := 0, 0; still < len(ring) && len(ring) > 3; {
		n := len(ring)
		a, q, b := ring[(at+n-1)%n], ring[at%n], ring[(at+1)%n]
		spike := !away(b, a, q) || !away(a, q, b)
		if !spike && (away(q, a, b) || kept(q)) {
			at, still = (at+1)%n, still+1
			continue
		}
		ring = slices.Delete(ring, at%n, at%n+1)
		at, still = (at+n-2)%(n-1), 0
	}
	return ring
}

// away tells whether a point stands out from the line between two others.
func away(p, a, b geometry.Point) bool {
	d, v := b.Sub(a), p.Sub(a)
	if size := d.X*d.X + d.Y*d.Y; size > 0 {
		v = v.Sub(d.Mul(max(0, min(1, ((v.X*d.X+v.Y*d.Y)/size).MM()))))
	}
	return v.X*v.X+v.Y*v.Y >= thin*thin
}
