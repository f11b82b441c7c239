package shape

import (
	"slices"

	"forel/geometry"
	"forel/geometry/polygon"
)

// Flatness is how far the chords that stand for the same arc in two shapes may
// be apart, in mm.
const Flatness Length = 0.02

// FreeEdges returns the outline of a shape without what lies on the border of
// another, where another line is drawn.
func FreeEdges(s, border polygon.Shape) [][]geometry.Point {
	on := func(a, b geometry.Point) bool {
		for _, p := range []geometry.Point{a, a.Add(b).Mul(0.5), b} {
			if !slices.ContainsFunc(border, func(a Area) bool { return a.Clear(p) < Flatness }) {
				return false
			}
		}
		return true
	}
	var out [][]geometry.Point
	for _, a := range s {
		for _, ring := range a.Rings {
			// Start where a free run starts, so that no run is broken in two.
			n := len(ring)
			first := 0
			for i := range n {
				if on(ring[i], ring[(i+1)%n]) {
					first = i + 1
					break
				}
			}
			var run []geometry.Point
			for k := range n {
				a, b := ring[(first+k)%n], ring[(first+k+1)%n]
				if on(a, b) {
					if run != nil {
						out, run = append(out, run), nil
					}
					continue
				}
				if run == nil {
					run = append(run, a)
				}
				run = append(run, b)
			}
			if run != nil {
				out = append(out, run)
			}
		}
	}
	return out
}
