package offset_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/geometry"
	"forel/geometry/offset"
)

type L = geometry.Length

func pt(x, y L) geometry.Point { return geometry.Pt(x, y) }

func perimeter(p geometry.Path) float64 {
	var sum L
	for _, s := range p.Segments() {
		if s.Bulge == 0 {
			sum += s.From.Distance(s.To)
			continue
		}
		_, r, _, sweep := s.Arc()
		sum += r * L(math.Abs(sweep))
	}
	return sum.MM()
}

// A rectangle grows by the distance on each side and stays a rectangle.
func TestRectangle(t *testing.T) {
	box := geometry.Bx(0, 0, 120, 34.3)
	got, err := offset.Outward(geometry.Rectangle(box), 0.075)
	require.NoError(t, err)
	assert.Len(t, got.Path.Vertices, 4)
	b := got.Path.Bounds()
	assert.InDelta(t, -0.075, b.Min.X.MM(), 1e-9)
	assert.InDelta(t, 120.075, b.Max.X.MM(), 1e-9)
	assert.InDelta(t, 34.375, b.Max.Y.MM(), 1e-9)
	assert.InDelta(t, 120.15*34.45, got.Path.SignedArea(), 1e-9)
	assert.InDelta(t, 0, got.Short.MM(), 1e-9)
	in, err := offset.Inward(got.Path, 0.075)
	require.NoError(t, err)
	assert.InDelta(t, 120*34.3, in.Path.SignedArea(), 1e-9)
}

// A circle stays two arcs about the same centre, whichever way it runs.
func TestCircle(t *testing.T) {
	c := geometry.Circle(pt(50, 40), 12)
	for _, p := range []geometry.Path{c, c.FlipY(80)} {
		out, err := offset.Outward(p, 0.5)
		require.NoError(t, err)
		in, err := offset.Inward(p, 0.5)
		require.NoError(t, err)
		assert.InDelta(t, math.Pi*12.5*12.5, out.Path.SignedArea(), 1e-9)
		assert.InDelta(t, math.Pi*11.5*11.5, in.Path.SignedArea(), 1e-9)
		for _, s := range in.Path.Segments() {
			center, r, _, _ := s.Arc()
			assert.InDelta(t, 11.5, r.MM(), 1e-9)
			assert.InDelta(t, 0, center.Distance(pt(50, 40)).MM(), 1e-9)
		}
	}
	_, err := offset.Inward(c, 12.5)
	var narrow *offset.NarrowError
	assert.ErrorAs(t, err, &narrow, "nothing is left of a hole narrower than the beam")
}

// Steiner's formula for convex shapes, A + P d + d² sum tan(turn/2) with
// mitres and A + P d + π d² where corners are gone round (Steiner 1840; from
// memory). A regular hexagon turns by 60° at each corner and has mitres; a
// sliver with corners under 60° has an arc at each sharp one.
func TestSteiner(t *testing.T) {
	const d = 0.4
	var hexagon []geometry.Point
	for i := range 6 {
		a := float64(i) * math.Pi / 3
		hexagon = append(hexagon, pt(L(30*math.Cos(a)), L(30*math.Sin(a))))
	}
	p := geometry.Polygon(hexagon...)
	got, err := offset.Outward(p, d)
	require.NoError(t, err)
	assert.InDelta(t, p.SignedArea()+perimeter(p)*d+6*math.Tan(math.Pi/6)*d*d, got.Path.SignedArea(), 1e-9)
	assert.Len(t, got.Path.Vertices, 6)

	// An isosceles triangle with a top of 20°: mitres at the foot would be
	// 80° corners, turning by 100°; the top turns by 160° and is round.
	const deg = math.Pi / 180
	h := L(50)
	half := h * L(math.Tan(10*deg))
	p = geometry.Polygon(pt(-half, 0), pt(half, 0), pt(0, h))
	got, err = offset.Outward(p, d)
	require.NoError(t, err)
	want := p.SignedArea() + perimeter(p)*d + d*d*(2*math.Tan(50*deg)+80*deg)
	assert.InDelta(t, want, got.Path.SignedArea(), 1e-9)

	// A half disc has corners beside an arc: both are gone round.
	p = geometry.Path{Closed: true, Vertices: []geometry.Vertex{{Point: pt(0, 0)}, {Point: pt(20, 0), Bulge: 1}}}
	got, err = offset.Outward(p, d)
	require.NoError(t, err)
	assert.InDelta(t, p.SignedArea()+perimeter(p)*d+math.Pi*d*d, got.Path.SignedArea(), 1e-9)
}

// A notch keeps its shape, narrower by the distance on each side; the beam
// can't reach into its two corners, by (√2-1) d.
func TestNotch(t *testing.T) {
	notched := func(w L) geometry.Path {
		return geometry.Polygon(pt(0, 0), pt(100, 0), pt(100, 60), pt(50+w/2, 60), pt(50+w/2, 45), pt(50-w/2, 45), pt(50-w/2, 60), pt(0, 60))
	}
	got, err := offset.Outward(notched(1), 0.1)
	require.NoError(t, err)
	require.Len(t, got.Path.Vertices, 8)
	assert.InDelta(t, 100.2*60.2-0.8*15, got.Path.SignedArea(), 1e-9)
	assert.InDelta(t, 0.1*(math.Sqrt2-1), got.Short.MM(), 1e-9)
	for _, w := range []L{0.199, 0.1, 0.001} {
		_, err = offset.Outward(notched(w), 0.1)
		var narrow *offset.NarrowError
		require.ErrorAs(t, err, &narrow, "%v", w)
		assert.InDelta(t, 45, narrow.At.Y.MM(), 1e-6, "it names the notch")
		assert.InDelta(t, 50, narrow.At.X.MM(), 0.2)
		assert.InDelta(t, 15, narrow.Short.MM(), 0.2, "and how deep it is lost")
	}
}

// A wedge with a point at its bottom is followed as far as the beam goes: it
// stops d/sin(half the angle) from the point. Where that is too far it is
// refused.
func TestWedge(t *testing.T) {
	wedge := func(deg float64) geometry.Path {
		half := L(20 * math.Tan(deg/2*math.Pi/180))
		return geometry.Polygon(pt(0, 0), pt(100, 0), pt(100, 60), pt(50+half, 60), pt(50, 40), pt(50-half, 60), pt(0, 60))
	}
	for _, deg := range []float64{120, 90, 60, 30} {
		got, err := offset.Outward(wedge(deg), 0.25)
		require.NoError(t, err)
		assert.InDelta(t, 0.25/math.Sin(deg*math.Pi/360)-0.25, got.Short.MM(), 1e-9)
	}
	_, err := offset.Outward(wedge(20), 0.25)
	assert.Error(t, err)
}

// A pocket behind a neck narrower than the beam is refused, as is a piece
// whose own neck is too narrow to be hollowed.
func TestNeck(t *testing.T) {
	pocket := geometry.Polygon(pt(0, 0), pt(100, 0), pt(100, 60), pt(50.05, 60), pt(50.05, 59.9), pt(60, 40), pt(40, 40), pt(49.95, 59.9), pt(49.95, 60), pt(0, 60))
	var narrow *offset.NarrowError
	_, err := offset.Outward(pocket, 0.1)
	assert.ErrorAs(t, err, &narrow)
	bone := geometry.Polygon(pt(0, 0), pt(40, 0), pt(40, 9.9), pt(60, 9.9), pt(60, 0), pt(100, 0), pt(100, 20), pt(60, 20), pt(60, 10.1), pt(40, 10.1), pt(40, 20), pt(0, 20))
	_, err = offset.Inward(bone, 0.2)
	assert.ErrorAs(t, err, &narrow)
	_, err = offset.Outward(bone, 0.2)
	assert.NoError(t, err)
}

// Steps smaller than the beam vanish; the result stays simple and no nearer.
func TestTinyEdges(t *testing.T) {
	p := geometry.Polygon(pt(0, 0), pt(100, 0), pt(100, 60), pt(50, 60), pt(50, 59.98), pt(49.99, 59.98), pt(49.99, 60), pt(0, 60))
	got, err := offset.Outward(p, 0.2)
	require.NoError(t, err)
	assert.InDelta(t, 100.4*60.4, got.Path.SignedArea(), 1e-6)
	assert.Less(t, got.Short.MM(), 0.03)
}

func TestRefused(t *testing.T) {
	box := geometry.Rectangle(geometry.Bx(0, 0, 10, 10))
	for _, d := range []L{-1, L(math.NaN())} {
		_, err := offset.Outward(box, d)
		assert.Error(t, err)
	}
	_, err := offset.Outward(geometry.Line(pt(0, 0), pt(1, 0)), 1)
	assert.Error(t, err)
	got, err := offset.Outward(box, 0)
	require.NoError(t, err)
	assert.Equal(t, box, got.Path)
}
