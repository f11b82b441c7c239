package proof

import (
	"math"
	"slices"

	"github.com/peterstace/simplefeatures/geom"

	"forel/geometry"
)

// sliver is how broad a part must be, in mm, to count as more than rounding.
const sliver Length = 1e-3

// flatness is how far the chords that stand for the same arc in two shapes may
// be apart, in mm.
const flatness Length = 0.02

// boxShape gives a box as a shape.
func boxShape(b geometry.Box) geom.Geometry {
	return polygonShape(geometry.Rectangle(b).Flatten(1))
}

// polygonShape gives the polygon through points.
func polygonShape(points []geometry.Point) geom.Geometry {
	coords := make([]float64, 0, 2*len(points)+2)
	for i := range len(points) + 1 {
		p := points[i%len(points)]
		coords = append(coords, float64(p.X), float64(p.Y))
	}
	ring := geom.NewLineString(geom.NewSequence(coords, geom.DimXY))
	return geom.NewPolygon([]geom.LineString{ring}).AsGeometry()
}

// meet and without give what two shapes share, and what the first has beyond
// the second. The library takes edges that nearly
// lie on each other wrongly, and may do so without an error: so coordinates
// are first snapped to a grid, and a result that is larger than it can be is
// worked out again on coarser ones. What can't be done at all gives nothing.
func meet(a, b geom.Geometry) geom.Geometry {
	return worked(geom.Intersection, a, b, func(got, slack float64) bool {
		return got <= min(a.Area(), b.Area())+slack
	})
}

func without(a, b geom.Geometry) geom.Geometry {
	return worked(geom.Difference, a, b, func(got, slack float64) bool {
		return got <= a.Area()+slack && got >= a.Area()-b.Area()-slack
	})
}

func worked(do func(a, b geom.Geometry) (geom.Geometry, error), a, b geom.Geometry, right func(area, slack float64) bool) geom.Geometry {
	around := a.Boundary().Length() + b.Boundary().Length()
	for decimals := 6; decimals > 2; decimals-- {
		g, err := do(a.SnapToGrid(decimals), b.SnapToGrid(decimals))
		// Snapping moves each edge by a step of the grid at most.
		if err == nil && right(g.Area(), around*math.Pow10(-decimals)) {
			return g
		}
	}
	return geom.Geometry{}
}

// union gives all of several shapes together.
func union(gs []geom.Geometry) geom.Geometry {
	if len(gs) == 1 {
		return gs[0]
	}
	var largest, sum, around float64
	for _, g := range gs {
		largest, sum = max(largest, g.Area()), sum+g.Area()
		around += g.Boundary().Length()
	}
	for decimals := 6; decimals > 2; decimals-- {
		snapped := make([]geom.Geometry, len(gs))
		for i, g := range gs {
			snapped[i] = g.SnapToGrid(decimals)
		}
		g, err := geom.UnionMany(snapped)
		slack := around * math.Pow10(-decimals)
		if err == nil && g.Area() >= largest-slack && g.Area() <= sum+slack {
			return g
		}
	}
	return geom.Geometry{}
}

// solid leaves out of a shape what is no broader than rounding.
func solid(g geom.Geometry) geom.Geometry {
	var kept []geom.Polygon
	for _, p := range polygons(g) {
		if around := p.Boundary().Length(); around > 0 && Length(2*p.Area()/around) > sliver {
			kept = append(kept, p)
		}
	}
	return geom.NewMultiPolygon(kept).AsGeometry()
}

// polygons gives the polygons a shape is made of.
func polygons(g geom.Geometry) []geom.Polygon {
	var out []geom.Polygon
	for _, part := range g.Dump() {
		if p, ok := part.AsPolygon(); ok && !p.IsEmpty() {
			out = append(out, p)
		}
	}
	return out
}

// runs gives the lines a shape is made of.
func runs(g geom.Geometry) [][]geometry.Point {
	var out [][]geometry.Point
	for _, part := range g.Dump() {
		if l, ok := part.AsLineString(); ok && !l.IsEmpty() {
			out = append(out, points(l.Coordinates()))
		}
	}
	return out
}

func points(s geom.Sequence) []geometry.Point {
	out := make([]geometry.Point, s.Length())
	for i := range out {
		xy := s.GetXY(i)
		out[i] = geometry.Pt(Length(xy.X), Length(xy.Y))
	}
	return out
}

// bounds gives the box around a shape.
func bounds(g geom.Geometry) geometry.Box {
	lo, hi, ok := g.Envelope().MinMaxXYs()
	if !ok {
		return geometry.Box{}
	}
	return geometry.Bx(Length(lo.X), Length(lo.Y), Length(hi.X), Length(hi.Y))
}

// moved gives a shape with every point taken elsewhere.
func moved(g geom.Geometry, to func(geometry.Point) geometry.Point) geom.Geometry {
	return g.TransformXY(func(xy geom.XY) geom.XY {
		p := to(geometry.Pt(Length(xy.X), Length(xy.Y)))
		return geom.XY{X: float64(p.X), Y: float64(p.Y)}
	})
}

// outline gives the rings of a shape as lines, those of specks left out.
func outline(g geom.Geometry) geom.Geometry {
	var rings []geom.LineString
	for _, p := range polygons(solid(g)) {
		for _, ring := range p.DumpRings() {
			if geom.NewPolygon([]geom.LineString{ring}).Area() > 1e-3 {
				rings = append(rings, ring)
			}
		}
	}
	return geom.NewMultiLineString(rings).AsGeometry()
}

// freeEdges gives the outline of a shape without what lies on the border of
// another, where another line is drawn.
func freeEdges(g, border geom.Geometry) geom.Geometry {
	borders := areasOf(border)
	on := func(a, b geometry.Point) bool {
		for _, p := range []geometry.Point{a, a.Add(b).Mul(0.5), b} {
			if !slices.ContainsFunc(borders, func(a area) bool { return a.clear(p) < flatness }) {
				return false
			}
		}
		return true
	}
	var lines []geom.LineString
	for _, p := range polygons(g) {
		for _, ring := range p.DumpRings() {
			pts := points(ring.Coordinates())
			// Start where a free run starts, so that no run is broken in two.
			n := len(pts) - 1
			first := 0
			for i := range n {
				if on(pts[i], pts[i+1]) {
					first = i + 1
					break
				}
			}
			var run []float64
			end := func() {
				if len(run) > 2 {
					lines = append(lines, geom.NewLineString(geom.NewSequence(run, geom.DimXY)))
				}
				run = nil
			}
			for k := range n {
				a, b := pts[(first+k)%n], pts[(first+k+1)%n]
				if on(a, b) {
					end()
					continue
				}
				if run == nil {
					run = []float64{float64(a.X), float64(a.Y)}
				}
				run = append(run, float64(b.X), float64(b.Y))
			}
			end()
		}
	}
	return geom.NewMultiLineString(lines).AsGeometry()
}
