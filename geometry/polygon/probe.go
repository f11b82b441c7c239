package polygon

import (
	"math"
	"slices"

	"forel/geometry"
)

// mostProbes is how many edges of each shape a result is tried at.
const mostProbes = 12

// probes are shapes and where a result is tried: beside their edges.
type probes struct {
	shapes []Shape
	tried  [][2]geometry.Point
	around float64 // the length of all edges
}

func probesOf(shapes []Shape) probes {
	p := probes{shapes: shapes}
	for _, s := range shapes {
		count := 0
		for _, a := range s {
			p.around += a.around().MM()
			for _, ring := range a.Rings {
				count += len(ring)
			}
		}
		every, n := 1+count/mostProbes, 0
		for _, a := range s {
			a.Edges(func(q, r geometry.Point) {
				if n%every == 0 {
					p.tried = append(p.tried, [2]geometry.Point{q, r})
				}
				n++
			})
		}
	}
	return p
}

// agree tells whether a result holds the places beside the edges that it should,
// each once, and no others. Places nearer to an edge than two steps of the grid are left
// out: there it may be either way.
func (p probes) agree(result Shape, keeps func(in []bool) bool, step float64) bool {
	in := make([]bool, len(p.shapes))
	for _, e := range p.tried {
		way := e[1].Sub(e[0])
		long := math.Hypot(way.X.MM(), way.Y.MM())
		if long == 0 {
			continue
		}
		for _, off := range []float64{4 * step / long, -4 * step / long} {
			// Not the middle, where other edges often end.
			q := e[0].Add(way.Mul(0.4871)).Add(geometry.Pt(-way.Y, way.X).Mul(off))
			if p.beside(q, Length(2*step)) {
				continue
			}
			for i, s := range p.shapes {
				in[i] = s.Holds(q)
			}
			held := 0
			for _, a := range result {
				if a.Holds(q) {
					held++
				}
			}
			if held > 1 || held == 1 != keeps(in) {
				return false
			}
		}
	}
	return true
}

// beside tells whether a place is nearer to an edge of any shape than a distance.
func (p probes) beside(q geometry.Point, d Length) bool {
	return slices.ContainsFunc(p.shapes, func(s Shape) bool {
		return slices.ContainsFunc(s, func(a Area) bool { return a.Clear(q) < d })
	})
}
