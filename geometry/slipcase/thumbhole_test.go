package slipcase_test

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/geometry/slipcase"
)

func TestThumbHole(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := holes().Draw(t, "case")
		holeInTheSides(t, c)
		smallerByItsTurn(t, c)
		if c.Job.ThumbHole.Shape == slipcase.Semicircle {
			snipsFollowTheRound(t, c)
			if c.Job.Lining.Order == slipcase.LinedAfter && c.Job.Lining.Thickness > 0 {
				holeInALiningPutInAfterwards(t, c)
			}
		}
	})
}

// holes draws cases with a thumb hole that the sides have room for.
func holes() *rapid.Generator[slipcase.Case] {
	return casesWith(func(t *rapid.T, j *slipcase.Job) {
		j.Covering = rapid.SampledFrom([]string{slipcase.ClothAndPaper, slipcase.AllCloth, slipcase.AllPaper, slipcase.SidesOnly}).Draw(t, "covering")
		j.Lining.Order = rapid.SampledFrom([]string{slipcase.LinedBefore, slipcase.LinedAfter}).Draw(t, "order")
		j.ThumbHole.Shape = rapid.SampledFrom([]string{slipcase.Semicircle, slipcase.Triangle}).Draw(t, "shape")
		if rapid.Bool().Draw(t, "not auto") {
			j.ThumbHole.Radius = slipcase.Length(length(6, 60, 14).Draw(t, "radius"))
		}
	}).Filter(func(c slipcase.Case) bool { return c.Job.ThumbHole.Shape != slipcase.NoHole })
}

// cutAway gives the area that a hole takes from a piece's bounding box.
func cutAway(p geometry.Piece) float64 {
	w, h := p.Size()
	return w.MM()*h.MM() - p.Outline.SignedArea()
}

// holeSize gives the radius of the hole in a piece's straight right edge, half
// of what it takes of that edge; the hole is in the middle. A lining put in
// afterwards has steps beyond it.
func holeSize(t require.TestingT, p geometry.Piece) float64 {
	w, h := p.Size()
	var ys []float64
	for _, v := range p.Outline.Vertices {
		if v.X.Near(w) && v.Y.MM() > eps && v.Y.MM() < h.MM()-eps {
			ys = append(ys, v.Y.MM())
		}
	}
	slices.Sort(ys)
	if len(ys) == 4 {
		ys = ys[1:3]
	}
	require.Len(t, ys, 2)
	assert.InDelta(t, h.MM(), ys[0]+ys[1], eps, "the middle of the mouth")
	return math.Abs(ys[1]-ys[0]) / 2
}

// holeInTheSides: the hole in the boards is a half circle of the radius, or a
// triangle as deep as that and twice as wide, in the middle of the mouth.
func holeInTheSides(t *rapid.T, c slipcase.Case) {
	p := piecesOf(c)["side"]
	r := holeSize(t, p)
	if set := c.Job.ThumbHole.Radius.MM(); set > 0 {
		assert.InDelta(t, set, r, eps)
	}
	area := r * r
	if c.Job.ThumbHole.Shape == slipcase.Semicircle {
		area *= math.Pi / 2
	}
	assert.InDelta(t, area, cutAway(p), 1e-4)
}

// What suits, where the sides have room: a fourteenth of their height, from 10
// to 16. A book of 110 has sides of 110 + 2 + 2 x 2.15 = 116.3, of 180 of 186.3
// and of 300 of 306.3.
func TestHoleThatSuits(t *testing.T) {
	for height, want := range map[float64]float64{110: 10, 180: 186.3 / 14, 300: 16} {
		c, err := slipcase.Make(exampleJob(func(j *slipcase.Job) {
			j.Books[0].Height = readings(height)
			j.ThumbHole.Shape = slipcase.Semicircle
		}))
		require.NoError(t, err)
		assert.InDelta(t, want, holeSize(t, piecesOf(c)["side"]), eps, "%v", height)
	}
}

// smallerByItsTurn: the hole in a covering is smaller by what is turned over
// the edge of the board, on the round and on the slanted edges of a triangle
// alike: the edge and 4 mm.
func smallerByItsTurn(t *rapid.T, c slipcase.Case) {
	edge, _ := boards(c.Job)
	turn := edge + 4
	r := holeSize(t, piecesOf(c)["side"])
	p, mouth := withHole(t, c)
	_, h := p.Size()
	middle := h.MM() / 2
	inner := math.Inf(1) // the nearest to the middle of the hole
	for _, q := range p.Outline.Flatten(0.001) {
		inner = math.Min(inner, math.Hypot(q.X.MM()-mouth, q.Y.MM()-middle))
	}
	if c.Job.ThumbHole.Shape == slipcase.Semicircle {
		assert.InDelta(t, r-turn, inner, 0.0011, "chords leave the arc by a micrometre")
		return
	}
	// The edges of both triangles slant at half a right angle; so far apart:
	tip := 0.0
	for _, v := range p.Outline.Vertices {
		if near(v.Y.MM(), middle) && v.X.MM() > mouth-r && v.X.MM() < mouth {
			tip = mouth - v.X.MM()
		}
	}
	require.Positive(t, tip)
	assert.InDelta(t, turn, (r-tip)*math.Sqrt2/2, eps)
}

func near(a, b float64) bool { return math.Abs(a-b) < eps }

// withHole gives the covering with the hole and the mouth line in it, at the
// right.
func withHole(t require.TestingT, c slipcase.Case) (geometry.Piece, float64) {
	for _, name := range []string{"side paper", "wrap"} {
		if p, ok := piecesOf(c)[name]; ok {
			w, _ := p.Size()
			beyond := c.Job.SidePaper.TurnIn
			if name == "wrap" {
				beyond = c.Job.Cloth.MouthTurnIn
			}
			return p, (w - beyond).MM()
		}
	}
	require.Fail(t, "no covering on the sides")
	return geometry.Piece{}, 0
}

// snipsFollowTheRound: on the round the covering is snipped so that the
// straight end of no tab leaves the arc by more than 0.3 mm, and no two tabs part
// by more than 1 mm over the thickness of the board; not into more tabs than that
// takes. A snip runs from the hole toward its fold,
// straight away from the middle, and stops before it.
func snipsFollowTheRound(t *rapid.T, c slipcase.Case) {
	r := holeSize(t, piecesOf(c)["side"])
	edge, _ := boards(c.Job)
	p, mouth := withHole(t, c)
	w, h := p.Size()
	ways := []float64{-math.Pi / 2, math.Pi / 2} // the ends of the arc, seen from its middle
	for _, s := range p.Slits {
		from, to := s.Vertices[0], s.Vertices[1]
		if from.X < w/2 && p.Name == "wrap" {
			continue // the left side's
		}
		way := func(v geometry.Vertex) (float64, float64) {
			dx, dy := mouth-v.X.MM(), v.Y.MM()-h.MM()/2
			return math.Hypot(dx, dy), math.Atan2(dy, dx)
		}
		start, a := way(from)
		end, b := way(to)
		assert.InDelta(t, a, b, eps)
		assert.InDelta(t, r-edge-4, start, eps)
		assert.Less(t, end, r-0.5)
		assert.Greater(t, end, start)
		ways = append(ways, a)
	}
	slices.Sort(ways)
	sagitta := func(angle float64) float64 { return r * (1 - math.Cos(angle/2)) }
	parted := func(angle float64) float64 { return 2 * edge * math.Tan(angle/2) }
	for i := 1; i < len(ways); i++ {
		assert.LessOrEqual(t, sagitta(ways[i]-ways[i-1]), 0.3+eps)
		assert.LessOrEqual(t, parted(ways[i]-ways[i-1]), 1+eps)
	}
	if tabs := len(ways) - 1; tabs > 1 {
		fewer := math.Pi / float64(tabs-1)
		assert.True(t, sagitta(fewer) > 0.3-eps || parted(fewer) > 1-eps, "%d tabs are more than it takes", tabs)
	}
}

// holeInALiningPutInAfterwards: the lining stays 2 mm back from the mouth and
// from the edge of the hole, which has the same middle: a part of a circle 2
// mm larger. So it has no edge that the hole does not.
func holeInALiningPutInAfterwards(t *rapid.T, c slipcase.Case) {
	r := holeSize(t, piecesOf(c)["side"])
	p := piecesOf(c)["side lining"]
	w, h := p.Size()
	half := holeSize(t, p)
	assert.InDelta(t, r+2, math.Hypot(half, 2), eps)
	for _, q := range p.Outline.Flatten(0.001) {
		if d := math.Hypot(w.MM()+2-q.X.MM(), q.Y.MM()-h.MM()/2); d < r+3 {
			assert.InDelta(t, r+2, d, 0.0011)
		}
	}
}
