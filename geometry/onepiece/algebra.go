package onepiece

import (
	"math"

	"github.com/peterstace/simplefeatures/geom"

	"forel/geometry"
)

// sliver is what still counts as rounding, in mm: how broad a strip, how far
// apart two planes.
const sliver Length = 1e-3

// algebra is the library's polygon algebra. It keeps the first operation that
// failed: a proof that met one proves nothing.
type algebra struct{ err error }

func (a *algebra) keep(g geom.Geometry, err error) geom.Geometry {
	if err != nil && a.err == nil {
		a.err = err
	}
	return g
}

// meet and without give what two shapes share, and what the first has beyond
// the second.
func (a *algebra) meet(p, q geom.Geometry) geom.Geometry {
	if !extent(p).Overlaps(extent(q)) {
		return geom.Geometry{}
	}
	return a.keep(geom.Intersection(p, q))
}

func (a *algebra) without(p, q geom.Geometry) geom.Geometry {
	if !extent(p).Overlaps(extent(q)) {
		return p
	}
	return a.keep(geom.Difference(p, q))
}

// polygon gives the shape of a closed path, its coordinates rounded to a
// nanometre so that edges meant to be one are one.
func polygon(points []geometry.Point) geom.Geometry {
	return ring(len(points), func(i int) (x, y Length) { return points[i].X, points[i].Y }).AsGeometry()
}

func ring(n int, at func(int) (x, y Length)) geom.Polygon {
	coords := make([]float64, 0, 2*n+2)
	for i := range n + 1 {
		x, y := at(i % n)
		coords = append(coords, math.Round(float64(x)*1e6)/1e6, math.Round(float64(y)*1e6)/1e6)
	}
	return geom.NewPolygon([]geom.LineString{geom.NewLineString(geom.NewSequence(coords, geom.DimXY))})
}

// parts gives the polygons that a shape is made of.
func parts(g geom.Geometry) []geom.Polygon {
	var out []geom.Polygon
	for _, d := range g.Dump() {
		if d.IsPolygon() && !d.IsEmpty() {
			out = append(out, d.MustAsPolygon())
		}
	}
	return out
}

// breadth gives how wide the narrowest straight passage is that a shape fits
// through: the least distance of two parallels that hold it between them, one of
// which lies along an edge of its hull.
func breadth(p geom.Polygon) Length {
	hull, ok := p.ConvexHull().AsPolygon()
	if !ok {
		return 0
	}
	seq := hull.ExteriorRing().Coordinates()
	at := func(i int) geometry.Point {
		xy := seq.GetXY(i)
		return geometry.Pt(Length(xy.X), Length(xy.Y))
	}
	least := Length(math.Inf(1))
	for i := 1; i < seq.Length(); i++ {
		from, edge := at(i-1), at(i).Sub(at(i-1))
		long := at(i).Distance(from)
		if long == 0 {
			continue
		}
		var most Length
		for k := range seq.Length() {
			d := at(k).Sub(from)
			most = max(most, ((edge.X*d.Y - edge.Y*d.X) / long).Abs())
		}
		least = min(least, most)
	}
	return least
}

// solid tells whether a shape is more than slivers.
func solid(g geom.Geometry) bool {
	for _, p := range parts(g) {
		if breadth(p) > sliver {
			return true
		}
	}
	return false
}

// extent gives the box around a shape.
func extent(g geom.Geometry) geometry.Box {
	lo, hi, ok := g.Envelope().MinMaxXYs()
	if !ok {
		return geometry.Box{}
	}
	return geometry.Bx(Length(lo.X), Length(lo.Y), Length(hi.X), Length(hi.Y))
}
