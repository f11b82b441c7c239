package shape

import (
	"slices"

	"github.com/peterstace/simplefeatures/geom"

	"forel/geometry"
	"forel/geometry/polygon"
)

// Length is a distance in millimetres.
type Length = geometry.Length

// Sliver is how broad a part must be, in mm, to count as more than rounding.
const Sliver Length = 1e-3

// Flatness is how far the chords that stand for the same arc in two shapes may
// be apart, in mm.
const Flatness Length = 0.02

// Meet and Without give what two shapes share, and what the first has beyond
// the second; Union gives all of several together. Shapes are snapped first:
// many here are lines, whose areas tell nothing of whether a result is right.
// What can't be worked out so is tried as it is; what can't be even then is not
// drawn.
func Meet(a, b geom.Geometry) geom.Geometry { return either(polygon.Meet, a, b) }

func Without(a, b geom.Geometry) geom.Geometry { return either(polygon.Without, a, b) }

func either(do func(a, b geom.Geometry) (geom.Geometry, error), a, b geom.Geometry) geom.Geometry {
	g, err := do(snapped(a), snapped(b))
	if err != nil {
		g, _ = do(a, b)
	}
	return g
}

func Union(gs []geom.Geometry) geom.Geometry {
	on := make([]geom.Geometry, len(gs))
	for i, g := range gs {
		on[i] = snapped(g)
	}
	g, _ := polygon.Union(on)
	return g
}

func snapped(g geom.Geometry) geom.Geometry { return g.SnapToGrid(polygon.Finest) }

// Solid leaves out of a shape what is no broader than rounding.
func Solid(g geom.Geometry) geom.Geometry {
	var kept []geom.Polygon
	for _, p := range polygon.Parts(g) {
		if polygon.MeanBreadth(p) > Sliver {
			kept = append(kept, p)
		}
	}
	return geom.NewMultiPolygon(kept).AsGeometry()
}

// Runs gives the lines a shape is made of.
func Runs(g geom.Geometry) [][]geometry.Point {
	var out [][]geometry.Point
	for _, part := range g.Dump() {
		if l, ok := part.AsLineString(); ok && !l.IsEmpty() {
			out = append(out, polygon.Points(l.Coordinates()))
		}
	}
	return out
}

// Moved gives a shape with every point taken elsewhere.
func Moved(g geom.Geometry, to func(geometry.Point) geometry.Point) geom.Geometry {
	return g.TransformXY(func(xy geom.XY) geom.XY {
		p := to(geometry.Pt(Length(xy.X), Length(xy.Y)))
		return geom.XY{X: float64(p.X), Y: float64(p.Y)}
	})
}

// Outline gives the rings of a shape as lines, those of specks left out.
func Outline(g geom.Geometry) geom.Geometry {
	var rings []geom.LineString
	for _, p := range polygon.Parts(Solid(g)) {
		for _, ring := range p.DumpRings() {
			if geom.NewPolygon([]geom.LineString{ring}).Area() > 1e-3 {
				rings = append(rings, ring)
			}
		}
	}
	return geom.NewMultiLineString(rings).AsGeometry()
}

// FreeEdges gives the outline of a shape without what lies on the border of
// another, where another line is drawn.
func FreeEdges(g, border geom.Geometry) geom.Geometry {
	borders := AreasOf(border)
	on := func(a, b geometry.Point) bool {
		for _, p := range []geometry.Point{a, a.Add(b).Mul(0.5), b} {
			if !slices.ContainsFunc(borders, func(a Area) bool { return a.Clear(p) < Flatness }) {
				return false
			}
		}
		return true
	}
	var lines []geom.LineString
	for _, p := range polygon.Parts(g) {
		for _, ring := range p.DumpRings() {
			pts := polygon.Points(ring.Coordinates())
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
