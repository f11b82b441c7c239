package polygon

import (
	"cmp"
	"slices"

	"forel/geometry"
)

// Hull returns the corners of the smallest convex polygon that holds all of the
// points, counterclockwise, none of them in line with its neighbours; fewer than
// three where the points lie on one line. It is Andrew's monotone chain (A. M.
// Andrew, 1979; from memory); points apart by rounding alone do it no harm.
func Hull(points []geometry.Point) []geometry.Point {
	at := slices.Clone(points)
	slices.SortFunc(at, func(a, b geometry.Point) int { return cmp.Or(cmp.Compare(a.X, b.X), cmp.Compare(a.Y, b.Y)) })
	at = slices.Compact(at)
	if len(at) < 3 {
		return at
	}
	half := func() []geometry.Point {
		var out []geometry.Point
		for _, q := range at {
			for n := len(out); n > 1 && !leftTurn(out[n-2], out[n-1], q); n-- {
				out = out[:n-1]
			}
			out = append(out, q)
		}
		return out[:len(out)-1] // the other half begins with it
	}
	lower := half()
	slices.Reverse(at)
	return append(lower, half()...)
}

// leftTurn tells whether the way from a by b to c turns left.
func leftTurn(a, b, c geometry.Point) bool {
	p, q := b.Sub(a), c.Sub(a)
	return p.X*q.Y-p.Y*q.X > 0
}
