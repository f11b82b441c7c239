package polygon_test

import (
	"testing"

	"github.com/peterstace/simplefeatures/geom"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/geometry/polygon"
)

// boxes draws two boxes whose sides lie on a coarse grid, so that they often
// share an edge or a corner.
func boxes(t *rapid.T) (a, b geometry.Box) {
	side := func(name string) (lo, hi polygon.Length) {
		lo = polygon.Length(rapid.IntRange(0, 6).Draw(t, name))
		return lo, lo + polygon.Length(rapid.IntRange(1, 6).Draw(t, name+" long"))
	}
	x0, x1 := side("x")
	y0, y1 := side("y")
	u0, u1 := side("u")
	v0, v1 := side("v")
	return geometry.Bx(x0, y0, x1, y1), geometry.Bx(u0, v0, u1, v1)
}

// What two boxes share, and what is left of one, by arithmetic on their sides.
func TestBoxes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := boxes(t)
		want := 0.0
		if s := a.Intersect(b); !s.Empty() {
			want = s.Width().MM() * s.Height().MM()
		}
		area := func(s polygon.Shape, err error) float64 {
			require.NoError(t, err)
			return s.Area()
		}
		whole := func(b geometry.Box) float64 { return b.Width().MM() * b.Height().MM() }
		assert.InDelta(t, want, area(polygon.Meet(polygon.Box(a), polygon.Box(b))), 1e-6)
		assert.InDelta(t, whole(a)-want, area(polygon.Without(polygon.Box(a), polygon.Box(b))), 1e-6)
		assert.InDelta(t, whole(a)+whole(b)-want, area(polygon.Union([]polygon.Shape{polygon.Box(a), polygon.Box(b)})), 1e-6)
	})
}

// An upright line has no area, and meets a box all the same.
func TestLineMeetsBox(t *testing.T) {
	line := geom.NewLineString(geom.NewSequence([]float64{2, -5, 2, 20}, geom.DimXY)).AsGeometry()
	got, err := polygon.Meet(line, polygon.Box(geometry.Bx(0, 0, 4, 10)))
	require.NoError(t, err)
	assert.InDelta(t, 10, got.Length(), 1e-9)
}

func TestMeanBreadth(t *testing.T) {
	strip := polygon.Parts(polygon.Box(geometry.Bx(0, 0, 1000, 2)))
	require.Len(t, strip, 1)
	assert.InDelta(t, 2, polygon.MeanBreadth(strip[0]).MM(), 0.01)
	assert.Empty(t, polygon.Parts(polygon.Of([]geometry.Point{{X: 0, Y: 0}, {X: 5, Y: 0}, {X: 9, Y: 0}})))
}
