package scene

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/render/shape"
)

// crooked draws a polygon of three to nine corners on a coarse grid round a
// middle, so that two of them often share corners, edges and parts of edges.
func crooked(t *rapid.T, name string) []geometry.Point {
	ways := []geometry.Point{{X: 1}, {X: 2, Y: 1}, {X: 1, Y: 1}, {X: 1, Y: 2}, {Y: 1}, {X: -1, Y: 1}, {X: -1}, {X: -1, Y: -1}, {Y: -1}, {X: 1, Y: -1}}
	middle := geometry.Pt(Length(5*rapid.IntRange(0, 3).Draw(t, name)), Length(5*rapid.IntRange(0, 3).Draw(t, name)))
	var out []geometry.Point
	for _, w := range ways {
		if far := rapid.IntRange(0, 3).Draw(t, name); far > 0 {
			out = append(out, middle.Add(w.Mul(5*float64(far))))
		}
	}
	return out
}

// A place lies in the result of two operations in a row where it should by the
// polygons it lies in, and the result is made of polygons that the library takes
// for such. (The library's own results are no measure: of shapes like these it
// gives some with a hole that the second shape fills.)
func TestOverlayPlaceByPlace(t *testing.T) {
	keeps := []func(a, b bool) bool{
		func(a, b bool) bool { return a && b }, func(a, b bool) bool { return a && !b }, func(a, b bool) bool { return a || b },
	}
	rapid.Check(t, func(t *rapid.T) {
		var regions [3]Region
		for i, name := range []string{"a", "b", "c"} {
			regions[i] = polygonOf(crooked(t, name))
			if len(regions[i]) == 0 || regions[i].geometry().Validate() != nil {
				t.Skip("crosses itself")
			}
		}
		first, second := rapid.SampledFrom(keeps).Draw(t, "first"), rapid.SampledFrom(keeps).Draw(t, "second")
		ab, ok := overlay(regions[0], regions[1], first)
		require.True(t, ok)
		require.NoError(t, ab.geometry().Validate())
		abc, ok := overlay(ab, regions[2], second)
		require.True(t, ok)
		require.NoError(t, abc.geometry().Validate())
		for x := Length(-19.7); x < 40; x += 1.3 {
			for y := Length(-19.6); y < 40; y += 1.3 {
				p := geometry.Pt(x, y)
				if slices.ContainsFunc(slices.Concat(regions[:]...), func(a shape.Area) bool { return a.Clear(p) < 0.05 }) {
					continue // on an edge
				}
				in := second(first(regions[0].holds(p), regions[1].holds(p)), regions[2].holds(p))
				require.Equal(t, in, abc.holds(p), "%v", p)
			}
		}
	})
}
