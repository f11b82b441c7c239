package fit_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/geometry"
	"forel/geometry/fit"
	"forel/geometry/job"
	"forel/geometry/onepiece"
	"forel/geometry/plan"
	"forel/geometry/plan/plantest"
	"forel/geometry/slipcase"
)

// Three volumes apart, put together piece by piece: dividers stand with their
// middles on ruled lines, each a little off; the last compartment ends where the
// wall does. What is left is what the report says (tolerances as for one book).
func TestCompartmentsAgainstAssembly(t *testing.T) {
	const n = 100_000
	j := of(221, 148.5, 30)
	j.Compartments, j.Board.Thickness, j.Uncertainty.Board = slipcase.EachItsOwn, 2.47, 0.4
	for _, thick := range []Length{22, 12} {
		j.Books = append(j.Books, job.Book{Height: j.Books[0].Height, Width: j.Books[0].Width, Thickness: job.Readings{thick}})
	}
	u := j.Uncertainty
	c := made(t, j)
	b := bench{rand.New(rand.NewPCG(5, 6))}
	// As drawn: the wall is the volumes, their clearance of 2 mm each, and two
	// dividers of one board and two linings.
	divider := 2.47 + 2*0.15
	wall := sizesOf(t, c.Pieces).wallWidth.MM()
	require.InDelta(t, 30+22+12+3*2+2*divider, wall, 1e-9)
	ruled := []float64{0, 32 + divider/2, 32 + divider + 24 + divider/2}
	body, mouth := make([]simulated, 3), make([]simulated, 3)
	for range n {
		thick, lining := 2.47+b.off(u.Board), 0.15+b.off(u.Lining)
		cloth, paper := 0.35+b.off(u.Cloth), 0.15+b.off(u.SidePaper)
		half := thick/2 + lining
		strip := b.cut(3, Length(wall), 1, u)
		end := min(strip[0].near, strip[1].near, (strip[2].near+strip[2].far)/2, strip[0].far, strip[1].far)
		atMouth := min(strip[0].far, strip[1].far)
		middles := []float64{ruled[1] + b.off(u.Placing), ruled[2] + b.off(u.Placing)}
		bow := []float64{max(0, b.off(u.Warp)), max(0, b.off(u.Warp))}
		room := []float64{middles[0] - half - bow[0], middles[1] - middles[0] - 2*half, end - bow[1] - middles[1] - half}
		inside := 221 + 2 - 2*(thick-2.47)
		side := func(n int) float64 { return takes(bow[n], cloth, paper, inside, 28-thick-lining) }
		at := []float64{room[0] + bow[0] - side(0) - cloth, room[1] - 2*cloth, atMouth - side(1) - middles[1] - half - cloth}
		for i := range 3 {
			book := j.Books[i].Thick().MM() + b.off(u.Measuring) + b.between(-0.5, 0.5)*u.ReadingStep.MM()
			body[i], mouth[i] = append(body[i], room[i]-book), append(mouth[i], at[i]-book)
		}
	}
	seen := map[string]int{}
	for _, g := range fit.Of(c.Plan()).Gaps {
		if g.Dimension != plan.Thickness {
			continue
		}
		s := map[string][]simulated{slipcase.InBody: body, slipcase.AtMouth: mouth}[g.Place][seen[g.Place]]
		where := g.Place + ", " + g.Volume
		seen[g.Place]++
		mean, sd := s.moments()
		assert.InDelta(t, mean, g.Distribution.Expected().MM(), 4*sd/math.Sqrt(n)+0.03, where)
		assert.InEpsilon(t, sd, g.Distribution.StandardDeviation().MM(), 4/math.Sqrt(2*n)+0.04, where)
		assert.InDelta(t, s.below(g.Tight), g.Chance.Tight, 0.006, where)
	}
	assert.Equal(t, map[string]int{slipcase.InBody: 3, slipcase.AtMouth: 3}, seen)
}

// A case of card, folded: what is scored less what the folds take. A fold lies a
// little off its score; an inside measure has half of the card's thickness less
// at each of its folds, as card.bend says.
func TestCardAgainstFolding(t *testing.T) {
	const n = 100_000
	k := onepiece.DefaultJob(geometry.MM)
	k.Books = of(203, 130, 22).Books
	k.Card.Thickness = 1.6
	k.Uncertainty.Board, k.Uncertainty.Warp = 0.2, 0
	c, err := plantest.Make[onepiece.Case](k)
	require.NoError(t, err)
	u := k.Uncertainty
	b := bench{rand.New(rand.NewPCG(7, 8))}
	scored := []float64{203 + 2 + 1.6, 130 + 1 + 0.8, 22 + 2 + 1.6} // W + cW and one bend of half the card; the others have two
	samples := make([]simulated, 3)
	for range n {
		thick := 1.6 + b.off(0.2)
		book := []float64{203, 130, 22}
		for i, folds := range []int{2, 1, 2} {
			at := scored[i] + b.off(u.Cutting)
			for range folds {
				at += b.off(u.Placing) - thick/2
			}
			at -= book[i] + b.off(u.Measuring) + b.between(-0.5, 0.5)*u.ReadingStep.MM()
			switch i {
			case 0: // two edges that run together or apart
				at -= math.Abs(b.off(u.Squareness)+b.off(u.Squareness)) / 2
			case 1:
				at -= math.Abs(b.off(u.Squareness))
			case 2:
				at -= math.Abs(b.off(u.Squareness)) / 2
			}
			samples[i] = append(samples[i], at)
		}
	}
	gaps := fit.Of(c.Plan()).Gaps
	require.Len(t, gaps, 3)
	for i, g := range gaps {
		mean, sd := samples[i].moments()
		assert.InDelta(t, mean, g.Distribution.Expected().MM(), 4*sd/math.Sqrt(n)+0.005, g.Dimension)
		assert.InEpsilon(t, sd, g.Distribution.StandardDeviation().MM(), 4/math.Sqrt(2*n)+0.01, g.Dimension)
		for _, x := range []Length{0, 0.5, 1, 1.5, 2} {
			assert.InDelta(t, samples[i].below(x), g.Distribution.Below(x), 0.012, "%s below %v", g.Dimension, x)
		}
	}
}
