package polygon

import (
	"math"
	"slices"

	"forel/geometry"
)

// dissolved returns shapes that share no area as one: where two of them meet, the edge
// between them goes. Their corners are joined already. ok is false where edges that cross
// or run the same way tell that they do share area; of shapes within others the result
// has places twice.
func dissolved(shapes []Shape) (out Shape, ok bool) {
	edges, ok := free(shapes)
	if !ok {
		return nil, false
	}
	for i, e := range edges {
		for _, f := range edges[i+1:] {
			if cross(e, f) {
				return nil, false
			}
		}
	}
	rings := ringsOf(edges)
	var holes [][]geometry.Point
	for _, ring := range rings {
		switch size := signed(ring); {
		case size > 1e-9:
			out = append(out, Area{[][]geometry.Point{ring}})
		case size < -1e-9:
			holes = append(holes, ring)
		}
	}
	for _, hole := range holes {
		home := -1
		for i, a := range out {
			if beside := hole[0].Add(hole[1]).Mul(0.5); beside.In(a.Rings[0]) && (home < 0 || a.Size() < out[home].Size()) {
				home = i
			}
		}
		if home < 0 {
			return nil, false
		}
		out[home].Rings = append(out[home].Rings, hole)
	}
	return out, true
}

// edge is one of a polygon that lies left of it.
type edge struct{ from, to geometry.Point }

// free returns the edges of shapes without those that run to and fro; ok is false where
// two run the same way.
func free(shapes []Shape) (out []edge, ok bool) {
	at := map[edge]bool{}
	ok = true
	for _, s := range shapes {
		for _, a := range s {
			a.Edges(func(p, q geometry.Point) {
				switch {
				case p == q:
				case at[edge{q, p}]:
					delete(at, edge{q, p})
				case at[edge{p, q}]:
					ok = false
				default:
					at[edge{p, q}] = true
					out = append(out, edge{p, q})
				}
			})
		}
	}
	// One may have come, gone, and come again: it is there once.
	return slices.DeleteFunc(out, func(e edge) bool {
		is := at[e]
		delete(at, e)
		return !is
	}), ok
}

// cross tells whether two edges pass through each other, but for rounding.
func cross(e, f edge) bool {
	if max(e.from.X, e.to.X) < min(f.from.X, f.to.X) || max(f.from.X, f.to.X) < min(e.from.X, e.to.X) ||
		max(e.from.Y, e.to.Y) < min(f.from.Y, f.to.Y) || max(f.from.Y, f.to.Y) < min(e.from.Y, e.to.Y) {
		return false
	}
	parts := func(e, f edge) bool {
		far := Left(e.from, e.to)
		a, b := far(f.from), far(f.to)
		return a > one && b < -one || a < -one && b > one
	}
	return parts(e, f) && parts(f, e)
}

// ringsOf strings edges together. Where several go on from a corner it takes the one
// that turns most to the left, so that polygons that touch there stay apart; a ring that
// comes back to a corner is closed there.
func ringsOf(edges []edge) [][]geometry.Point {
	from := map[geometry.Point][]int{}
	for i, e := range edges {
		from[e.from] = append(from[e.from], i)
	}
	var out [][]geometry.Point
	used := make([]bool, len(edges))
	for i := range edges {
		var way []geometry.Point
		for at := i; at >= 0 && !used[at]; {
			used[at] = true
			e := edges[at]
			way = append(way, e.from)
			if back := slices.Index(way, e.to); back >= 0 {
				if ring := slices.Clone(way[back:]); len(ring) > 2 {
					out = append(out, ring)
				}
				way = way[:back]
			}
			at = -1
			most := math.Inf(-1)
			for _, k := range from[e.to] {
				if turn := turned(e, edges[k]); !used[k] && turn > most {
					at, most = k, turn
				}
			}
		}
	}
	return out
}

// turned returns how far to the left one edge turns after another, from -π to π.
func turned(e, f edge) float64 {
	d, g := e.to.Sub(e.from), f.to.Sub(f.from)
	return math.Atan2(float64(d.Cross(g)), float64(d.Dot(g)))
}
