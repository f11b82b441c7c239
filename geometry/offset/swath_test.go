package offset_test

import (
	"errors"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/offset"
	"forel/geometry/plan/plantest"
	"forel/geometry/polygon"
	"forel/geometry/slipcase"
)

// The cut is played here: what a beam of a kerf's breadth takes away along the
// path is all that is within half the kerf of it, and what is left inside is
// held against the piece. Nothing here knows how the path was found: outlines
// and paths are taken as chords within a ten-thousandth of a millimetre.

// fine is how far chords leave an arc.
const fine L = 1e-4

// off gives how far a point is from a closed run of points.
func off(p geometry.Point, around []geometry.Point) float64 {
	least := math.Inf(1)
	for i, a := range around {
		least = min(least, p.ToLine(a, around[(i+1)%len(around)]).MM())
	}
	return least
}

// within tells whether a point lies in a closed run, by the turns it sees
// (the winding number).
func within(p geometry.Point, around []geometry.Point) bool {
	var turned float64
	for i, a := range around {
		u, v := a.Sub(p), around[(i+1)%len(around)].Sub(p)
		turned += math.Atan2((u.X*v.Y - u.Y*v.X).MM(), (u.X*v.X + u.Y*v.Y).MM())
	}
	return math.Abs(turned) > math.Pi
}

// inwardCorners gives the points of a counterclockwise run of points at which it turns to the right
// by more than chords of an arc do.
func inwardCorners(around []geometry.Point) []geometry.Point {
	var out []geometry.Point
	n := len(around)
	for i, p := range around {
		u, v := p.Sub(around[(i+n-1)%n]), around[(i+1)%n].Sub(p)
		if math.Atan2((u.X*v.Y-u.Y*v.X).MM(), (u.X*v.X+u.Y*v.Y).MM()) < -0.2 {
			out = append(out, p)
		}
	}
	return out
}

// checkCut plays the cut on points beside the outline, a thousandth and more inside it
// and outside it.
func checkCut(t require.TestingT, piece geometry.Path, r offset.Result, kerf float64) {
	edge, path := piece.Flatten(fine), r.Path.Flatten(fine)
	corners := inwardCorners(edge)
	// Where two sides meet at a right angle or more, the beam leaves a round.
	reach := 2 * (r.Short.MM() + kerf/2)
	for _, s := range piece.Segments() {
		for i := range 12 {
			a, b := at(s, (float64(i)+0.13)/12), at(s, (float64(i)+0.14)/12)
			u := b.Sub(a).Mul(1 / a.Distance(b).MM())
			for _, d := range []float64{-3 * kerf, -kerf, -kerf / 2, -kerf / 10, -1e-3, 1e-3, kerf / 10, kerf / 2, kerf * 0.9} {
				if math.Abs(d) < 1e-3 {
					continue
				}
				q := a.Add(geometry.Pt(u.Y, -u.X).Mul(d)) // outside where d is positive
				in, far := within(q, edge), off(q, edge)
				if far < 0.9e-3 {
					continue // another edge is near
				}
				taken := off(q, path) <= kerf/2
				if in {
					assert.False(t, taken, "%v, %.4f mm inside the piece, is cut off", q, far)
					continue
				}
				nearCorner := false
				for _, c := range corners {
					nearCorner = nearCorner || q.Distance(c).MM() < reach
				}
				if far < kerf && !nearCorner {
					assert.True(t, taken || !within(q, path), "%v, %.4f mm outside the piece, is left on it", q, far)
				}
			}
		}
	}
}

// at gives the point of a segment at t.
func at(s geometry.Segment, t float64) geometry.Point {
	if s.Bulge == 0 {
		return s.From.Add(s.To.Sub(s.From).Mul(t))
	}
	c, r, start, sweep := s.Arc()
	a := start + sweep*t
	return c.Add(geometry.Pt(L(math.Cos(a)), L(math.Sin(a))).Mul(r.MM()))
}

// outlines draws a star-shaped outline with arcs either way.
func outlines(t *rapid.T) geometry.Path {
	n := rapid.IntRange(3, 14).Draw(t, "corners")
	p := geometry.Path{Closed: true}
	for i := range n {
		a := 2 * math.Pi * (float64(i) + rapid.Float64Range(0, 0.5).Draw(t, "lean")) / float64(n)
		r := rapid.Float64Range(20, 60).Draw(t, "radius")
		v := geometry.Vertex{Point: pt(L(r*math.Cos(a)), L(r*math.Sin(a)))}
		if rapid.Bool().Draw(t, "arc") {
			v.Bulge = rapid.Float64Range(-0.12, 0.12).Draw(t, "bulge")
		}
		p.Vertices = append(p.Vertices, v)
	}
	return p
}

// simple tells whether an outline keeps off itself.
func simple(p geometry.Path) bool {
	shape := polygon.Of(p.Flatten(0.01))
	return shape.Validate() == nil && p.SignedArea() > 100
}

func TestCutLeavesThePiece(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := outlines(t)
		if !simple(p) {
			t.Skip("crosses itself")
		}
		kerf := rapid.Float64Range(0.02, 2).Draw(t, "kerf")
		got, err := offset.Outward(p, L(kerf/2))
		var narrow *offset.NarrowError
		if errors.As(err, &narrow) {
			t.Skip("has a narrow notch")
		}
		require.NoError(t, err)
		require.Greater(t, got.Path.SignedArea(), p.SignedArea())
		assert.True(t, simple(got.Path))
		checkCut(t, p, got, kerf)
	})
}

// Moved out and back, an outline is where it was, but for what the beam can't
// reach.
func TestThereAndBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := outlines(t)
		if !simple(p) {
			t.Skip("crosses itself")
		}
		d := L(rapid.Float64Range(0.01, 1).Draw(t, "distance"))
		out, err := offset.Outward(p, d)
		if err != nil {
			t.Skip("has a narrow notch")
		}
		back, err := offset.Inward(out.Path, d)
		require.NoError(t, err)
		edge, again := p.Flatten(fine), back.Path.Flatten(fine)
		for _, q := range again {
			assert.LessOrEqual(t, off(q, edge), out.Short.MM()+2e-4)
		}
		for _, q := range edge {
			assert.LessOrEqual(t, off(q, again), out.Short.MM()+2e-4)
		}
		// What fills inward corners is added, nothing is lost.
		assert.GreaterOrEqual(t, back.Path.SignedArea(), p.SignedArea()-1e-5*perimeter(p)) // an arc of a very large radius is taken for its chord
	})
}

// The pieces of a case, wedges, notches and thumb hole among them, are left
// as they are drawn by every kerf a laser has.
func TestPiecesOfACase(t *testing.T) {
	j := slipcase.DefaultJob(geometry.MM)
	j.Books = []job.Book{{Height: job.Readings{221}, Width: job.Readings{148.5}, Thickness: job.Readings{32}}}
	j.ThumbHole.Shape = slipcase.Semicircle
	thin := j
	thin.Books = []job.Book{{Height: job.Readings{180}, Width: job.Readings{120}, Thickness: job.Readings{5}}}
	wrap := j
	wrap.Covering = slipcase.AllPaper
	for _, j := range []slipcase.Job{j, thin, wrap} {
		c, err := plantest.Make[slipcase.Case](j)
		require.NoError(t, err)
		for n, p := range c.Pieces {
			for i, kerf := range []float64{0.05, 0.2, 0.5} {
				if testing.Short() && n%3 != i {
					continue // each with one of them
				}
				r, err := offset.Outward(p.Outline, L(kerf/2))
				require.NoError(t, err, p.Name)
				checkCut(t, p.Outline, r, kerf)
			}
		}
	}
}

// The beam's way drawn as polygons and taken from a sheet by a library's
// polygon algebra leaves the piece.
func TestAlgebraOfTheCut(t *testing.T) {
	const kerf = 0.6
	notched := geometry.Path{Closed: true, Vertices: []geometry.Vertex{
		{Point: pt(0, 0)}, {Point: pt(90, 0)}, {Point: pt(90, 18), Bulge: -1}, {Point: pt(90, 42)}, {Point: pt(90, 60)}, {Point: pt(40, 60)}, {Point: pt(30, 45)}, {Point: pt(20, 60)}, {Point: pt(0, 60)},
	}}
	require.NoError(t, polygon.Of(notched.Flatten(fine)).Validate())
	r, err := offset.Outward(notched, kerf/2)
	require.NoError(t, err)
	const arc L = 1e-3
	var swath []polygon.Shape
	path := r.Path.Flatten(arc)
	for i, a := range path {
		b := path[(i+1)%len(path)]
		u := b.Sub(a).Mul(kerf / 2 / a.Distance(b).MM())
		n := geometry.Pt(-u.Y, u.X)
		// A capsule: a rectangle with a half circle at each end.
		capsule := geometry.Path{Closed: true, Vertices: []geometry.Vertex{{Point: a.Sub(n)}, {Point: b.Sub(n), Bulge: 1}, {Point: b.Add(n)}, {Point: a.Add(n), Bulge: 1}}}
		swath = append(swath, polygon.Of(capsule.Flatten(arc)))
	}
	taken, err := polygon.Union(swath...)
	require.NoError(t, err)
	within, err := polygon.Without(polygon.Of(path), taken)
	require.NoError(t, err)
	piece := polygon.Of(notched.Flatten(arc))
	lost, err := polygon.Without(piece, within)
	require.NoError(t, err)
	left, err := polygon.Without(within, piece)
	require.NoError(t, err)
	around := 0.0
	piece[0].Edges(func(p, q geometry.Point) { around += p.Distance(q).MM() })
	assert.Less(t, lost.Size(), 1e-3*around, "cut off the piece")
	// At the wedge's point (angle 2 atan(10/15)) the beam leaves, between the
	// two sides and a circle of half the kerf, d² (1/tan(h) - (π/2 - h)).
	h := math.Atan2(10, 15)
	assert.InDelta(t, kerf*kerf/4*(1/math.Tan(h)-(math.Pi/2-h)), left.Size(), 1e-3*around)
}
