package onepiece_test

import (
	"math"
	"testing"

	"github.com/peterstace/simplefeatures/geom"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/geometry/onepiece"
)

// The judge of shapes is an independent implementation of the OpenGIS Simple
// Features standard; these functions hand our shapes to it.

func judgedLine(points ...geometry.Point) geom.LineString {
	var flat []float64
	for _, p := range points {
		flat = append(flat, p.X.MM(), p.Y.MM())
	}
	return geom.NewLineString(geom.NewSequence(flat, geom.DimXY))
}

func judgedPolygon(p geometry.Path) geom.Polygon {
	points := p.Flatten(0.001)
	return geom.NewPolygon([]geom.LineString{judgedLine(append(points, points[0])...)})
}

// outside gives how far a line leaves an outline at the worst of its ends and
// the places between.
func outside(t require.TestingT, from, to geometry.Point, outline geom.Polygon) float64 {
	worst := 0.0
	for n := range 21 {
		q := from.Add(to.Sub(from).Mul(float64(n) / 20))
		d, ok := geom.Distance(outline.AsGeometry(), geom.XY{X: q.X.MM(), Y: q.Y.MM()}.AsPoint().AsGeometry())
		require.True(t, ok)
		worst = max(worst, d)
	}
	return worst
}

// Every outline is simple, closed, counterclockwise, of positive area, without
// a repeated point, from the origin; folds, slits, guides, edges and the room
// for names lie in it.
func TestOutline(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c, err := onepiece.Make(goodJobs().Draw(t, "job"))
		require.NoError(t, err)
		p := c.Pieces[0]
		require.True(t, p.Outline.Closed)
		points := p.Outline.Flatten(0.001)
		for n, q := range points {
			require.Greater(t, q.Distance(points[(n+1)%len(points)]).MM(), eps, "point %v is repeated", q)
		}
		judged := judgedPolygon(p.Outline)
		require.NoError(t, judged.Validate())
		assert.True(t, judged.ExteriorRing().IsSimple())
		assert.True(t, judged.IsCCW())
		assert.InEpsilon(t, judged.Area(), p.Outline.SignedArea(), 1e-9)
		low, ok := judged.Envelope().Min().XY()
		require.True(t, ok)
		assert.Zero(t, low.X)
		assert.Zero(t, low.Y)

		lines := append(append([]geometry.Path{}, p.Folds...), p.Slits...)
		for _, g := range p.Guides {
			lines = append(lines, g.Path)
		}
		for _, l := range lines {
			require.Len(t, l.Vertices, 2)
			from, to := l.Vertices[0].Point, l.Vertices[1].Point
			assert.Greater(t, from.Distance(to).MM(), eps)
			assert.LessOrEqual(t, outside(t, from, to, judged), eps, "%v to %v", from, to)
		}
		for _, r := range p.Regions {
			assert.False(t, r.Room.Empty(), r.Name)
			for _, s := range geometry.Rectangle(r.Room.Grow(-eps)).Segments() {
				assert.LessOrEqual(t, outside(t, s.From, s.To, judged), eps, "room of the %s", r.Name)
			}
		}
		for _, e := range p.Edges {
			assert.LessOrEqual(t, outside(t, e.From, e.To, judged), eps, "edge %q", e.Name)
			// Just beyond the edge lies no card, just before it some.
			mid, d := e.From.Add(e.To).Mul(0.5), e.To.Sub(e.From)
			step := geometry.Pt(-d.Y, d.X).Mul(1e-3 / e.From.Distance(e.To).MM())
			in, out := mid.Add(step), mid.Sub(step)
			assert.Zero(t, outside(t, in, in, judged), "edge %q", e.Name)
			if e.Name != "" { // the one beside a slit has card on both sides
				assert.Positive(t, outside(t, out, out, judged), "edge %q", e.Name)
			}
		}
		require.Less(t, p.Spine, len(p.Edges))
	})
}

// No stretch of outline, slits, folds and ruled lines is drawn a second time.
func TestDrawnOnce(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c, err := onepiece.Make(goodJobs().Draw(t, "job"))
		require.NoError(t, err)
		p := c.Pieces[0]
		var drawn []geometry.Segment
		for _, paths := range [][]geometry.Path{p.Cuts(), p.Folds, p.Rulings()} {
			for _, path := range paths {
				drawn = append(drawn, path.Segments()...)
			}
		}
		for n, a := range drawn {
			for _, b := range drawn[n+1:] {
				assert.LessOrEqual(t, shared(a, b), eps, "%v and %v", a, b)
			}
		}
	})
}

// shared gives the length of the stretch that two straight segments share.
func shared(a, b geometry.Segment) float64 {
	long := a.From.Distance(a.To).MM()
	ux, uy := float64(a.To.X-a.From.X)/long, float64(a.To.Y-a.From.Y)/long
	along := func(p geometry.Point) (float64, float64) {
		dx, dy := float64(p.X-a.From.X), float64(p.Y-a.From.Y)
		return dx*ux + dy*uy, math.Abs(dy*ux - dx*uy)
	}
	t0, off0 := along(b.From)
	t1, off1 := along(b.To)
	if off0 > 1e-9 || off1 > 1e-9 {
		return 0
	}
	return min(long, max(t0, t1)) - max(0, min(t0, t1))
}
