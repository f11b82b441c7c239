package geometry_test

import (
	"math"
	"testing"

	"github.com/peterstace/simplefeatures/geom"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
)

// clipBox is what paths are clipped to in these tests.
var clipBox = geometry.Bx(-30, -10, 40, 50)

// clipTolerance is how far the chords of arcs may leave them.
const clipTolerance = 0.001

// straightPaths draws paths of straight lines about the box, many with points
// and lines on its border.
func straightPaths() *rapid.Generator[geometry.Path] {
	coordinate := func(lo, hi float64) *rapid.Generator[float64] {
		return rapid.OneOf(
			rapid.Float64Range(lo-60, hi+60), rapid.Float64Range(lo, hi), rapid.SampledFrom([]float64{lo, hi, lo - 20, hi + 20}),
		)
	}
	x, y := coordinate(clipBox.Min.X.MM(), clipBox.Max.X.MM()), coordinate(clipBox.Min.Y.MM(), clipBox.Max.Y.MM())
	return rapid.Custom(func(t *rapid.T) geometry.Path {
		var p geometry.Path
		for range rapid.IntRange(2, 8).Draw(t, "points") {
			at := geometry.Pt(geometry.Length(x.Draw(t, "x")), geometry.Length(y.Draw(t, "y")))
			if len(p.Vertices) > 0 && rapid.IntRange(0, 9).Draw(t, "repeat") == 0 {
				at = p.Vertices[len(p.Vertices)-1].Point
			}
			p.Vertices = append(p.Vertices, geometry.Vertex{Point: at})
		}
		p.Closed = rapid.Bool().Draw(t, "closed")
		return p
	})
}

// corners gives the points of a path of straight lines, the first once more at
// the end of a closed one.
func corners(p geometry.Path) []geometry.Point {
	var out []geometry.Point
	for _, v := range p.Vertices {
		out = append(out, v.Point)
	}
	if p.Closed {
		out = append(out, out[0])
	}
	return out
}

func lengthOf(points []geometry.Point) float64 {
	var sum float64
	for i := 1; i < len(points); i++ {
		sum += math.Hypot((points[i].X - points[i-1].X).MM(), (points[i].Y - points[i-1].Y).MM())
	}
	return sum
}

// pointAt gives the place so far along a run of points.
func pointAt(points []geometry.Point, along float64) geometry.Point {
	for i := 1; i < len(points); i++ {
		d := lengthOf(points[i-1 : i+1])
		if along <= d && d > 0 {
			return points[i-1].Add(points[i].Sub(points[i-1]).Mul(along / d))
		}
		along -= d
	}
	return points[len(points)-1]
}

// referenceLength gives how much of a run of points lies in the box, line by
// line, as an independent geometry library has it.
func referenceLength(t require.TestingT, points []geometry.Point) float64 {
	box := geom.NewEnvelope(
		geom.XY{X: clipBox.Min.X.MM(), Y: clipBox.Min.Y.MM()}, geom.XY{X: clipBox.Max.X.MM(), Y: clipBox.Max.Y.MM()},
	).AsGeometry()
	var sum float64
	for i := 1; i < len(points); i++ {
		a, b := points[i-1], points[i]
		if a == b {
			continue
		}
		line := geom.NewLineString(geom.NewSequence([]float64{a.X.MM(), a.Y.MM(), b.X.MM(), b.Y.MM()}, geom.DimXY))
		inside, err := geom.Intersection(line.AsGeometry(), box)
		require.NoError(t, err)
		sum += inside.Length()
	}
	return sum
}

func clippedLength(clipped []geometry.Clipped) float64 {
	var sum float64
	for _, c := range clipped {
		sum += lengthOf(corners(c.Path))
	}
	return sum
}

// What is drawn on one sheet is all of a path that lies on it, and no more.
func TestClipKeepsWhatIsInside(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := straightPaths().Draw(t, "path")
		got := p.Clip(clipBox, clipTolerance)
		assert.InDelta(t, referenceLength(t, corners(p)), clippedLength(got), 1e-6)
		for _, c := range got {
			assert.True(t, clipBox.Grow(1e-9).Contains(c.Path.Bounds()), "%v", c)
		}
	})
}

// Start is how far along the whole path a stretch begins, so that dashes of
// two sheets meet; stretches come in the path's order.
func TestClipStart(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := straightPaths().Draw(t, "path")
		whole, last := corners(p), 0.0
		for _, c := range p.Clip(clipBox, clipTolerance) {
			stretch := corners(c.Path)
			start, long := c.Start.MM(), lengthOf(stretch)
			assert.GreaterOrEqual(t, start, last-1e-6)
			last = start + long
			for _, part := range []float64{0, 0.37, 1} {
				want, got := pointAt(whole, start+part*long), pointAt(stretch, part*long)
				assert.InDelta(t, 0, want.Distance(got).MM(), 1e-6, "%v of %v", part, c)
			}
		}
	})
}

// A path wholly in the box is left as it is, arcs and all.
func TestClipLeavesAlone(t *testing.T) {
	for _, p := range []geometry.Path{
		geometry.Circle(geometry.Pt(5, 20), 30),
		geometry.Circle(geometry.Pt(5, 20), 12.3),
		geometry.Rectangle(clipBox),
		geometry.Line(geometry.Pt(0, 0), geometry.Pt(10, 10)),
	} {
		assert.Equal(t, []geometry.Clipped{{Path: p}}, p.Clip(clipBox, clipTolerance))
	}
}

func TestClipOutside(t *testing.T) {
	for _, p := range []geometry.Path{
		geometry.Circle(geometry.Pt(5, 20), 100), // all round the box
		geometry.Circle(geometry.Pt(-50, 20), 10),
		geometry.Rectangle(clipBox.Grow(1)),
		geometry.Line(geometry.Pt(-40, 40), geometry.Pt(-20, 60)), // past a corner
		geometry.Line(geometry.Pt(41, -100), geometry.Pt(41, 100)),
	} {
		assert.Empty(t, p.Clip(clipBox, clipTolerance), "%v", p)
	}
}

// A line on the border belongs to the box, as on a sheet's edge.
func TestClipBorder(t *testing.T) {
	got := geometry.Line(geometry.Pt(-100, 50), geometry.Pt(100, 50)).Clip(clipBox, clipTolerance)
	require.Len(t, got, 1)
	assert.Equal(t, geometry.Length(70), got[0].Start)
	assert.InDelta(t, 70, clippedLength(got), 1e-9)
}

// grazing is how near a border a circle may end, in millimetres, for its
// crossings to be told by its angle.
const grazing = 0.1

// Arcs: as much of a circle is kept as lies in the box by its angle.
func TestClipCircle(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x, y := rapid.Float64Range(-60, 70).Draw(t, "x"), rapid.Float64Range(-40, 80).Draw(t, "y")
		r := rapid.Float64Range(1, 80).Draw(t, "r")
		for _, border := range []float64{x - clipBox.Min.X.MM(), x - clipBox.Max.X.MM(), y - clipBox.Min.Y.MM(), y - clipBox.Max.Y.MM()} {
			if math.Abs(math.Abs(border)-r) < grazing {
				t.Skip("chords of a circle that grazes a border cross it elsewhere")
			}
		}
		const steps = 20000
		inside := 0
		for i := range steps {
			sin, cos := math.Sincos((float64(i) + 0.5) / steps * 2 * math.Pi)
			px, py := geometry.Length(x+r*cos), geometry.Length(y+r*sin)
			if px >= clipBox.Min.X && px <= clipBox.Max.X && py >= clipBox.Min.Y && py <= clipBox.Max.Y {
				inside++
			}
		}
		got := geometry.Circle(geometry.Pt(geometry.Length(x), geometry.Length(y)), geometry.Length(r)).Clip(clipBox, clipTolerance)
		length := 0.0
		for _, c := range got {
			points := c.Path.Flatten(clipTolerance)
			if c.Path.Closed {
				points = append(points, points[0])
			}
			length += lengthOf(points)
			for _, q := range points {
				assert.InDelta(t, r, math.Hypot(q.X.MM()-x, q.Y.MM()-y), 2*clipTolerance)
			}
		}
		// Each of up to eight crossings is off by what a chord leaves of a
		// slanting arc, and by a step.
		slant := clipTolerance / math.Sqrt(2*grazing/r)
		assert.InDelta(t, float64(inside)/steps*2*math.Pi*r, length, 8*(slant+clipTolerance+2*math.Pi*r/steps))
	})
}
