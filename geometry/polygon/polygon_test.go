package polygon_test

import (
	"testing"

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
			return s.Size()
		}
		whole := func(b geometry.Box) float64 { return b.Width().MM() * b.Height().MM() }
		assert.InDelta(t, want, area(polygon.Meet(polygon.Box(a), polygon.Box(b))), 1e-6)
		assert.InDelta(t, whole(a)-want, area(polygon.Without(polygon.Box(a), polygon.Box(b))), 1e-6)
		assert.InDelta(t, whole(a)+whole(b)-want, area(polygon.Union(polygon.Box(a), polygon.Box(b))), 1e-6)
	})
}

// What of a line lies in a box and what outside, by arithmetic; along an edge it is in.
func TestLineAndBox(t *testing.T) {
	box := polygon.Box(geometry.Bx(0, 0, 4, 10))
	pt := geometry.Pt
	for _, c := range []struct {
		line, in, past []geometry.Point
	}{
		{[]geometry.Point{pt(2, -5), pt(2, 4)}, []geometry.Point{pt(2, 0), pt(2, 4)}, []geometry.Point{pt(2, -5), pt(2, 0)}},
		{[]geometry.Point{pt(4, 3), pt(4, 15)}, []geometry.Point{pt(4, 3), pt(4, 10)}, []geometry.Point{pt(4, 10), pt(4, 15)}},
		{[]geometry.Point{pt(1, 1), pt(3, 1), pt(3, 2)}, []geometry.Point{pt(1, 1), pt(3, 1), pt(3, 2)}, nil},
		{[]geometry.Point{pt(5, 1), pt(5, 9)}, nil, []geometry.Point{pt(5, 1), pt(5, 9)}},
	} {
		for _, d := range []struct {
			want []geometry.Point
			got  [][]geometry.Point
		}{{c.in, box.Along(c.line)}, {c.past, box.Past(c.line)}} {
			if d.want == nil {
				assert.Empty(t, d.got, "%v", c.line)
				continue
			}
			assert.Equal(t, [][]geometry.Point{d.want}, d.got, "%v", c.line)
		}
	}
}

// A polygon clipped by a line is what it shares with the half plane.
func TestClip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, _ := boxes(t)
		across, height := polygon.Length(rapid.IntRange(-5, 20).Draw(t, "across")), rapid.Float64Range(-1, 1).Draw(t, "lean")
		above := func(p geometry.Point) polygon.Length { return p.X + p.Y*polygon.Length(height) - across }
		at := func(y polygon.Length) geometry.Point { return geometry.Pt(across-y*polygon.Length(height), y) }
		half := polygon.Of([]geometry.Point{at(-99), geometry.Pt(300, -99), geometry.Pt(300, 99), at(99)})
		want, err := polygon.Meet(polygon.Box(a), half)
		require.NoError(t, err)
		var got float64
		if clipped := polygon.Clip(geometry.Rectangle(a).Flatten(1), above); len(clipped) > 2 {
			got = geometry.Polygon(clipped...).SignedArea()
		}
		assert.InDelta(t, want.Size(), got, 1e-4)
	})
}

func TestBreadth(t *testing.T) {
	strip := polygon.Box(geometry.Bx(0, 0, 1000, 2))
	assert.InDelta(t, 2, strip[0].Breadth().MM(), 0.01)
	assert.Empty(t, strip.Broader(2))
	assert.Len(t, strip.Broader(1.9), 1)
	assert.Empty(t, polygon.Of([]geometry.Point{{X: 0, Y: 0}, {X: 5, Y: 0}, {X: 9, Y: 0}}))
}

// A mirrored shape keeps its size, its hole and the way its rings run.
func TestMoved(t *testing.T) {
	holed, err := polygon.Without(polygon.Box(geometry.Bx(0, 0, 9, 9)), polygon.Box(geometry.Bx(1, 1, 3, 3)))
	require.NoError(t, err)
	over := holed.Moved(func(p geometry.Point) geometry.Point { return geometry.Pt(-p.X, p.Y) })
	assert.InDelta(t, 77, over.Size(), 1e-9)
	assert.False(t, over.Holds(geometry.Pt(-2, 2)))
	assert.True(t, over.Holds(geometry.Pt(-5, 2)))
	// Filled as one path it has its size.
	assert.InDelta(t, 77, holed[0].Path().SignedArea(), 1e-9)
}

// A corner of a strip is left as broad as it is where the edge beside it runs along a
// line that is not quite the strip's: no needle makes it thinner.
func TestNoNeedles(t *testing.T) {
	strip := polygon.Of([]geometry.Point{{X: -31.641098, Y: 38.990275}, {X: 97.262212, Y: 8.816565}, {X: 97.262212, Y: 10.81001}, {X: -31.641098, Y: 40.98372}})
	cloth := polygon.Of([]geometry.Point{{X: -31.344281, Y: 38.920796}, {X: 96.965396, Y: 8.886044}, {X: 97.262212, Y: 10.145528}, {X: 97.262212, Y: 10.81001}, {X: -31.641098, Y: 40.98372}, {X: -31.641098, Y: 40.319238}})
	left, err := polygon.Without(strip, cloth)
	require.NoError(t, err)
	require.Len(t, left, 2)
	// Both triangles are 0.2968 broad and about 1.33 high, 3.07 round.
	for _, a := range left {
		assert.InDelta(t, 0.2968*1.33/3.07, a.Breadth().MM(), 0.01)
	}
}

// Of a strip as narrow as rounding may part two corners no gap is left: what lies on
// either side of it is one polygon.
func TestNarrowStripIsNoGap(t *testing.T) {
	a := polygon.Box(geometry.Bx(0, 0, 20, 2.15))
	rest, err := polygon.Without(a, polygon.Box(geometry.Bx(0, 2, 2, 2.15)), polygon.Box(geometry.Bx(7, 2.00001, 7.35, 7)))
	require.NoError(t, err)
	require.Len(t, rest, 1)
	assert.True(t, rest.Holds(geometry.Pt(4.0875, 2.000005)))
	assert.InDelta(t, 20*2.15-2*0.15-0.35*0.14999, rest.Size(), 1e-6)
}
