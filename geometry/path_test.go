package geometry_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
)

func pt(x, y float64) geometry.Point { return geometry.Pt(geometry.Length(x), geometry.Length(y)) }

func bx(x0, y0, x1, y1 float64) geometry.Box { return geometry.Box{Min: pt(x0, y0), Max: pt(x1, y1)} }

func vertex(x, y, bulge float64) geometry.Vertex {
	return geometry.Vertex{Point: pt(x, y), Bulge: bulge}
}

// closed gives a closed path.
func closed(vs ...geometry.Vertex) geometry.Path { return geometry.Path{Vertices: vs, Closed: true} }

func assertBox(t assert.TestingT, want, got geometry.Box) {
	for _, c := range [][2]geometry.Length{
		{want.Min.X, got.Min.X}, {want.Min.Y, got.Min.Y}, {want.Max.X, got.Max.X}, {want.Max.Y, got.Max.Y},
	} {
		assert.InDelta(t, c[0].MM(), c[1].MM(), 1e-9, "box %v, not %v", got, want)
	}
}

// quarter is the bulge of a quarter circle: the tangent of a quarter of 90
// degrees.
var quarter = math.Tan(math.Pi / 8)

// The boxes are worked out by hand: half and quarter circles of radius 10
// about the origin.
func TestArcBounds(t *testing.T) {
	for _, c := range []struct {
		name string
		path geometry.Path
		want geometry.Box
	}{
		{"below, counterclockwise", closed(vertex(-10, 0, 1), vertex(10, 0, 0)), bx(-10, -10, 10, 0)},
		{"above, clockwise", closed(vertex(-10, 0, -1), vertex(10, 0, 0)), bx(-10, 0, 10, 10)},
		{"above, counterclockwise", closed(vertex(10, 0, 1), vertex(-10, 0, 0)), bx(-10, 0, 10, 10)},
		{"right, counterclockwise", closed(vertex(0, -10, 1), vertex(0, 10, 0)), bx(0, -10, 10, 10)},
		{"left, clockwise", closed(vertex(0, -10, -1), vertex(0, 10, 0)), bx(-10, -10, 0, 10)},
		{"whole", closed(vertex(10, 0, 1), vertex(-10, 0, 1)), bx(-10, -10, 10, 10)},
		{"first quarter", closed(vertex(10, 0, quarter), vertex(0, 10, 0)), bx(0, 0, 10, 10)},
		{"third quarter, clockwise", closed(vertex(0, -10, -quarter), vertex(-10, 0, 0)), bx(-10, -10, 0, 0)},
		{"three quarters", closed(vertex(10, 0, math.Tan(3*math.Pi/8)), vertex(0, -10, 0)), bx(-10, -10, 10, 10)},
		{
			"top of the circle, ends at 45 degrees",
			closed(vertex(10/math.Sqrt2, 10/math.Sqrt2, quarter), vertex(-10/math.Sqrt2, 10/math.Sqrt2, 0)),
			bx(-10/math.Sqrt2, 10/math.Sqrt2, 10/math.Sqrt2, 10),
		},
	} {
		t.Run(c.name, func(t *testing.T) { assertBox(t, c.want, c.path.Bounds()) })
	}
}

func TestBoundsOfFew(t *testing.T) {
	assert.Equal(t, geometry.Box{}, geometry.Path{}.Bounds())
	assert.Equal(t, bx(3, -4, 3, -4), geometry.Line(pt(3, -4)).Bounds())
	assert.Equal(t, bx(-1, -4, 3, 5), geometry.Line(pt(3, -4), pt(-1, 5)).Bounds())
}

func TestSignedArea(t *testing.T) {
	square := geometry.Rectangle(bx(5, 7, 15, 27))
	assert.InDelta(t, 200, square.SignedArea(), 1e-9)
	assert.InDelta(t, -200, square.FlipY(100).SignedArea(), 1e-9)
	// Half a circle of radius 10 and the whole of it.
	assert.InDelta(t, 50*math.Pi, closed(vertex(10, 0, 1), vertex(-10, 0, 0)).SignedArea(), 1e-9)
	assert.InDelta(t, 100*math.Pi, closed(vertex(10, 0, 1), vertex(-10, 0, 1)).SignedArea(), 1e-9)
	assert.InDelta(t, -100*math.Pi, closed(vertex(10, 0, -1), vertex(-10, 0, -1)).SignedArea(), 1e-9)
	// A thumb hole: a half circle of radius 10 out of the edge of a side.
	side := closed(vertex(0, 0, 0), vertex(100, 0, 0), vertex(100, 40, -1), vertex(100, 60, 0), vertex(100, 100, 0), vertex(0, 100, 0))
	assert.InDelta(t, 10000-50*math.Pi, side.SignedArea(), 1e-9)
	// A quarter of it, by its chord: the sector less the triangle.
	assert.InDelta(t, 25*math.Pi-50, closed(vertex(10, 0, quarter), vertex(0, 10, 0)).SignedArea(), 1e-9)
}

// arc is a circular arc by centre, radius and angles, the way a path
// does not keep it.
type arc struct {
	center               geometry.Point
	radius, start, sweep float64
}

func (a arc) at(part float64) geometry.Point {
	angle := a.start + part*a.sweep
	return a.center.Add(pt(a.radius*math.Cos(angle), a.radius*math.Sin(angle)))
}

func (a arc) path() geometry.Path {
	from, to := a.at(0), a.at(1)
	return geometry.Path{Vertices: []geometry.Vertex{{Point: from, Bulge: math.Tan(a.sweep / 4)}, {Point: to}}}
}

func arcs() *rapid.Generator[arc] {
	return rapid.Custom(func(t *rapid.T) arc {
		coordinate := rapid.Float64Range(-500, 500)
		sweep := rapid.Float64Range(0.01, 2*math.Pi-0.01).Draw(t, "sweep")
		if rapid.Bool().Draw(t, "clockwise") {
			sweep = -sweep
		}
		return arc{
			pt(coordinate.Draw(t, "x"), coordinate.Draw(t, "y")),
			rapid.Float64Range(0.1, 500).Draw(t, "radius"), rapid.Float64Range(-math.Pi, math.Pi).Draw(t, "start"), sweep,
		}
	})
}

func TestArcOfSegment(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		want := arcs().Draw(t, "arc")
		segments := want.path().Segments()
		require.Len(t, segments, 1)
		center, radius, start, sweep := segments[0].Arc()
		assert.InDelta(t, 0, want.center.Distance(center).MM(), 1e-5*want.radius)
		assert.InDelta(t, want.radius, radius.MM(), 1e-5*want.radius)
		assert.InDelta(t, want.sweep, sweep, 1e-9)
		assert.InDelta(t, 0, math.Remainder(want.start-start, 2*math.Pi), 1e-5)
	})
}

// Every point of an arc is within the tolerance of the chords that stand for
// it, in the arc's order; the chords are not many more than needed.
func TestFlattenKeepsTolerance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := arcs().Draw(t, "arc")
		tolerance := rapid.Float64Range(0.001, 100).Draw(t, "tolerance")
		points := a.path().Flatten(geometry.Length(tolerance))
		require.GreaterOrEqual(t, len(points), 2)
		assert.Equal(t, a.at(0), points[0])
		assert.Equal(t, a.at(1), points[len(points)-1])
		for n := range 200 {
			p := a.at((float64(n) + 0.5) / 200)
			nearest := math.Inf(1)
			for i := 1; i < len(points); i++ {
				nearest = min(nearest, offLine(p, points[i-1], points[i]))
			}
			require.LessOrEqual(t, nearest, tolerance+1e-6*a.radius, "%d chords", len(points)-1)
		}
		for _, p := range points {
			assert.InDelta(t, a.radius, a.center.Distance(p).MM(), 1e-6*a.radius)
		}
		if tolerance < a.radius {
			// A chord's height over its arc is r(1 - cos(angle/2)).
			most := 2 * math.Acos(1-tolerance/a.radius)
			assert.LessOrEqual(t, float64(len(points)-1), math.Abs(a.sweep)/min(most, math.Pi/2)+1.001)
		}
	})
}

// offLine gives a point's distance from a straight stretch.
func offLine(p, from, to geometry.Point) float64 {
	d, v := to.Sub(from), p.Sub(from)
	along := float64(v.X*d.X+v.Y*d.Y) / float64(d.X*d.X+d.Y*d.Y)
	return p.Distance(from.Add(d.Mul(min(1, max(0, along))))).MM()
}

func TestFlattenClosed(t *testing.T) {
	circle := closed(vertex(10, 0, 1), vertex(-10, 0, 1))
	points := circle.Flatten(0.01)
	assert.Equal(t, pt(10, 0), points[0])
	assert.NotEqual(t, points[0], points[len(points)-1], "the first point is not repeated")
	assert.Contains(t, points, pt(-10, 0))
	// The polygon's area falls short by less than its length times the tolerance.
	assert.InDelta(t, 100*math.Pi, geometry.Polygon(points...).SignedArea(), 20*math.Pi*0.01)
	assert.Less(t, geometry.Polygon(points...).SignedArea(), 100*math.Pi)

	square := geometry.Rectangle(bx(0, 0, 1, 1))
	assert.Equal(t, []geometry.Point{pt(0, 0), pt(1, 0), pt(1, 1), pt(0, 1)}, square.Flatten(0.01))
	assert.Empty(t, geometry.Path{}.Flatten(0.01))
}

// Bounds hold the whole arc and touch it on all four sides.
func TestBoundsFitTheArc(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := arcs().Draw(t, "arc")
		b := a.path().Bounds()
		sampled := geometry.Line(a.at(0)).Bounds()
		for n := range 2001 {
			p := a.at(float64(n) / 2000)
			sampled.Min = geometry.Pt(min(sampled.Min.X, p.X), min(sampled.Min.Y, p.Y))
			sampled.Max = geometry.Pt(max(sampled.Max.X, p.X), max(sampled.Max.Y, p.Y))
		}
		near := geometry.Length(1e-5 * a.radius) // samples 1/2000 of a turn apart miss the top by less
		require.True(t, b.Grow(near).Contains(sampled), "%v does not hold %v", b, sampled)
		require.True(t, sampled.Grow(near).Contains(b), "%v is more than %v", b, sampled)
	})
}

// Turning top to bottom twice is nothing; once, each point of an arc lands
// where it should and the path runs the other way round.
func TestFlipY(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := arcs().Draw(t, "arc")
		h := rapid.Float64Range(-500, 500).Draw(t, "h")
		p := a.path()
		flipped := p.FlipY(geometry.Length(h))
		mirror := arc{pt(a.center.X.MM(), h-a.center.Y.MM()), a.radius, -a.start, -a.sweep}
		center, radius, _, sweep := flipped.Segments()[0].Arc()
		assert.InDelta(t, 0, mirror.center.Distance(center).MM(), 1e-5*a.radius)
		assert.InDelta(t, a.radius, radius.MM(), 1e-5*a.radius)
		assert.InDelta(t, -a.sweep, sweep, 1e-9)
		assert.InDelta(t, 0, mirror.at(0).Distance(flipped.Vertices[0].Point).MM(), 1e-9*500)
		assert.InDelta(t, 0, mirror.at(1).Distance(flipped.Vertices[1].Point).MM(), 1e-9*500)

		back := flipped.FlipY(geometry.Length(h))
		for n, v := range back.Vertices {
			assert.InDelta(t, 0, v.Distance(p.Vertices[n].Point).MM(), 1e-9)
			assert.Equal(t, p.Vertices[n].Bulge, v.Bulge)
		}
	})
}

// Moving shifts the bounds and leaves area and the original alone.
func TestMove(t *testing.T) {
	p := closed(vertex(10, 0, 1), vertex(-10, 0, 0))
	moved := p.Move(pt(100, -7))
	assertBox(t, bx(90, -7, 110, 3), moved.Bounds())
	assertBox(t, bx(-10, 0, 10, 10), p.Bounds())
	assert.InDelta(t, p.SignedArea(), moved.SignedArea(), 1e-9)
	assert.True(t, moved.Closed)
}

func TestSegments(t *testing.T) {
	p := closed(vertex(0, 0, 0), vertex(4, 0, 0.5), vertex(4, 3, 0))
	assert.Equal(t, []geometry.Segment{
		{From: pt(0, 0), To: pt(4, 0)},
		{From: pt(4, 0), To: pt(4, 3), Bulge: 0.5},
		{From: pt(4, 3), To: pt(0, 0)},
	}, p.Segments())
	assert.Len(t, geometry.Line(pt(0, 0), pt(4, 0), pt(4, 3)).Segments(), 2)
	assert.Empty(t, geometry.Line(pt(0, 0)).Segments())
	assert.Empty(t, geometry.Path{}.Segments())
}

func TestBox(t *testing.T) {
	b := bx(10, 20, 40, 30)
	assert.Equal(t, [2]float64{30, 10}, [2]float64{b.Width().MM(), b.Height().MM()})
	assert.Equal(t, pt(25, 25), b.Center())
	assert.Equal(t, bx(8, 18, 42, 32), b.Grow(2))
	assert.Equal(t, bx(11, 18, 41, 28), b.Move(pt(1, -2)))
	assert.False(t, b.Empty())
	assert.True(t, b.Grow(-5).Empty(), "no height left")
	assert.True(t, geometry.Box{}.Empty())

	assert.Equal(t, bx(30, 20, 40, 25), b.Intersect(bx(30, 0, 90, 25)))
	assert.True(t, b.Overlaps(bx(39, 29, 90, 90)))
	assert.False(t, b.Overlaps(bx(40, 20, 90, 90)), "a shared border is no area")
	assert.False(t, b.Overlaps(bx(50, 20, 90, 90)))
	assert.True(t, b.Contains(b))
	assert.True(t, b.Contains(bx(10, 20, 11, 21)))
	for _, out := range []geometry.Box{bx(9, 20, 40, 30), bx(10, 19, 40, 30), bx(10, 20, 41, 30), bx(10, 20, 40, 31)} {
		assert.False(t, b.Contains(out), out)
	}
}

// A rectangle's outline runs counterclockwise from its lower left.
func TestRectangle(t *testing.T) {
	r := geometry.Rectangle(bx(1, 2, 5, 4))
	assert.Equal(t, geometry.Polygon(pt(1, 2), pt(5, 2), pt(5, 4), pt(1, 4)), r)
	assert.InDelta(t, 8, r.SignedArea(), 1e-12)
	assert.Equal(t, bx(1, 2, 5, 4), r.Bounds())
}

// Points are the same to a nanometre, no further.
func TestNear(t *testing.T) {
	assert.True(t, pt(1, 2).Near(pt(1+9e-7, 2-9e-7)))
	assert.False(t, pt(1, 2).Near(pt(1+2e-6, 2)))
	assert.False(t, pt(1, 2).Near(pt(1, 2-2e-6)))
}
