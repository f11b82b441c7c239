package scene

import (
	"math"
	"slices"

	"github.com/peterstace/simplefeatures/geom"

	"forel/geometry"
	"forel/geometry/polygon"
	"forel/render/shape"
)

// Region is polygons with holes that share no area: outlines counterclockwise,
// holes clockwise.
type Region []shape.Area

// Size gives the area of a region in mm².
func (r Region) Size() float64 {
	var sum float64
	for _, a := range r {
		for _, ring := range a.Rings {
			sum += signed(ring)
		}
	}
	return sum
}

// Bounds gives the box around a region.
func (r Region) Bounds() geometry.Box {
	if len(r) == 0 {
		return geometry.Box{}
	}
	b := boxOf(r[0].Rings[0])
	for _, a := range r[1:] {
		o := boxOf(a.Rings[0])
		b = geometry.Bx(min(b.Min.X, o.Min.X), min(b.Min.Y, o.Min.Y), max(b.Max.X, o.Max.X), max(b.Max.Y, o.Max.Y))
	}
	return b
}

func boxOf(points []geometry.Point) geometry.Box {
	b := geometry.Box{Min: points[0], Max: points[0]}
	for _, p := range points[1:] {
		b.Min = geometry.Pt(min(b.Min.X, p.X), min(b.Min.Y, p.Y))
		b.Max = geometry.Pt(max(b.Max.X, p.X), max(b.Max.Y, p.Y))
	}
	return b
}

// moved gives a region with every point taken elsewhere.
func (r Region) moved(to func(geometry.Point) geometry.Point) Region {
	out := make(Region, len(r))
	for i, a := range r {
		for _, ring := range a.Rings {
			pts := make([]geometry.Point, len(ring))
			for k, p := range ring {
				pts[k] = to(p)
			}
			out[i].Rings = append(out[i].Rings, pts)
		}
	}
	return out
}

// round gives the length of all edges.
func (r Region) round() float64 {
	var sum float64
	for _, a := range r {
		for _, ring := range a.Rings {
			sum += around(ring)
		}
	}
	return sum
}

// polygonOf gives the region a polygon goes round; none where it encloses
// nothing.
func polygonOf(points []geometry.Point) Region {
	if len(points) < 3 {
		return nil
	}
	size := signed(points)
	if math.Abs(size) < 1e-9 {
		return nil
	}
	pts := append([]geometry.Point(nil), points...)
	if size < 0 {
		for i := range len(pts) / 2 {
			pts[i], pts[len(pts)-1-i] = pts[len(pts)-1-i], pts[i]
		}
	}
	return Region{{Rings: [][]geometry.Point{pts}}}
}

// disjoint tells quickly of most regions that share nothing.
func disjoint(a, b Region) bool {
	p, q := a.Bounds(), b.Bounds()
	return p.Max.X < q.Min.X || q.Max.X < p.Min.X || p.Max.Y < q.Min.Y || q.Max.Y < p.Min.Y
}

// without gives what the first region has beyond the second, meet what they
// share, union both together. ok is false where that can't be worked out.
func without(a, b Region) (Region, bool) {
	if len(a) == 0 || len(b) == 0 || disjoint(a, b) {
		return a, true
	}
	return sure(a, b, func(inA, inB bool) bool { return inA && !inB }, polygon.Without, func(p, q float64) (least, most float64) { return p - q, p })
}

func meet(a, b Region) (Region, bool) {
	if len(a) == 0 || len(b) == 0 || disjoint(a, b) {
		return nil, true
	}
	return sure(a, b, func(inA, inB bool) bool { return inA && inB }, polygon.Meet, func(p, q float64) (least, most float64) { return 0, min(p, q) })
}

func union(a, b Region) (Region, bool) {
	if len(a) == 0 {
		return b, true
	}
	return sure(a, b, func(inA, inB bool) bool { return inA || inB },
		func(a, b geom.Geometry) (geom.Geometry, error) { return polygon.Union([]geom.Geometry{a, b}) },
		func(p, q float64) (least, most float64) { return max(p, q), p + q })
}

// sure lays two regions on each other; where the result can't be right, by its
// area and theirs, the library does it.
func sure(a, b Region, keep func(inA, inB bool) bool, library func(a, b geom.Geometry) (geom.Geometry, error), can func(sizeA, sizeB float64) (least, most float64)) (Region, bool) {
	if r, ok := overlay(a, b, keep); ok {
		slack := (a.round() + b.round()) * (hair + speck).MM()
		least, most := can(a.Size(), b.Size())
		if n := r.Size(); n >= least-slack && n <= most+slack {
			return r, true
		}
	}
	g, ok := worked(library, a.geometry(), b.geometry())
	return fromGeometry(g), ok
}

// along gives the runs of a line that lie in a region.
func (r Region) along(line []geometry.Point) [][]geometry.Point {
	var out [][]geometry.Point
	var run []geometry.Point
	for i := 1; i < len(line); i++ {
		p, q := line[i-1], line[i]
		stops := []float64{0}
		for _, a := range r {
			a.Edges(func(a, b geometry.Point) {
				d, g, v := q.Sub(p), b.Sub(a), a.Sub(p)
				det := float64(d.X*g.Y - d.Y*g.X)
				if det == 0 {
					return
				}
				t, u := float64(v.X*g.Y-v.Y*g.X)/det, float64(v.X*d.Y-v.Y*d.X)/det
				if t > 0 && t < 1 && u >= 0 && u <= 1 {
					stops = append(stops, t)
				}
			})
		}
		slices.Sort(stops)
		stops = append(stops, 1)
		at := func(t float64) geometry.Point { return p.Add(q.Sub(p).Mul(t)) }
		for k := 1; k < len(stops); k++ {
			from, to := stops[k-1], stops[k]
			if to-from < 1e-9 {
				continue
			}
			if !r.holds(at((from + to) / 2)) {
				if len(run) > 0 {
					out, run = append(out, run), nil
				}
				continue
			}
			if len(run) == 0 {
				run = []geometry.Point{at(from)}
			}
			if k > 1 && len(run) > 1 && from > 0 { // goes on the same way
				run = run[:len(run)-1]
			}
			run = append(run, at(to))
		}
	}
	if len(run) > 0 {
		out = append(out, run)
	}
	return out
}

func (r Region) holds(p geometry.Point) bool {
	return slices.ContainsFunc(r, func(a shape.Area) bool { return a.Holds(p) })
}
