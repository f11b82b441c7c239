package fit_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry/fit"
	"forel/geometry/job"
	"forel/geometry/plan"
	"forel/geometry/slipcase"
	"forel/geometry/tolerance"
)

// Two covers as high and as deep as the book with its room, boards that lie on
// both sides of it: the simplest case that another can be made round.
const (
	coverThick, coverOff = Length(1.5), Length(0.1) // the board, and plus or minus
	coverCut             = Length(0.4)              // plus or minus of each by itself
	coverRoom            = Length(1)
)

// covers gives their chain for a book.
func covers(b job.Book) plan.Chain {
	high, deep, thick := b.Height.Largest(), b.Width.Largest(), b.Thick()
	smaller := tolerance.Smallest(coverCut, 2)
	larger := tolerance.Smallest(coverCut, 2).Times(-1)
	none := tolerance.Effect{}
	return plan.Chain{
		Dimensions: []plan.Dimension{{Name: plan.Height}},
		Gaps:       []plan.Gap{{Dimension: plan.Height, Place: "between", Loose: 9, Decides: true}},
		Links: []plan.Link{{Name: "cover, head to tail", Length: high + coverRoom}, {Name: "cover, spine to fore-edge", Length: deep + coverRoom},
			{Name: "board", Length: coverThick, Varies: &plan.Variation{Name: "the board's thickness", Low: -coverOff, High: coverOff}},
			{Name: "the book, head to tail", Length: high, Book: true}, {Name: "the book, thickness", Length: thick, Book: true}},
		Left: func(v []Length) []Length { return []Length{v[0] - v[3], v[0], v[1], v[4] + 2*v[2]} },
		Off:  []plan.Deviation{{Name: "cutting", PlusMinus: coverCut, Effects: []tolerance.Effect{smaller, larger, larger, none}}},
	}
}

// A slipcase round covers, both cut from one job and put together piece by
// piece: the larger of the covers takes of the slipcase's room, the smaller
// leaves the book its own. What is left is what the report says (tolerances as
// for one book).
func TestNestedAgainstAssembly(t *testing.T) {
	const n = 100_000
	book := job.Book{Height: job.Readings{221}, Width: job.Readings{148}, Thickness: job.Readings{32}}
	inner := covers(book)
	outside := inner.Left(inner.Drawn())[1:]
	j := of(outside[0], outside[1], outside[2])
	require.Equal(t, []Length{222, 149, 35}, outside)
	j.Board.Thickness, j.Uncertainty.Board = 2.47, 0.15
	j.Uncertainty.Measuring, j.Uncertainty.ReadingStep = 0, 0
	c := made(t, j)
	chain := plan.Nested(inner, c.Plan().Chain, "the covers", "the slipcase", nil)
	chain.With = func([]job.Change) plan.Chain { return chain }
	d := sizesOf(t, c.Pieces)
	b := bench{rand.New(rand.NewPCG(9, 10))}
	samples := map[string]simulated{}
	for range n {
		heights := []float64{222 + b.off(coverCut), 222 + b.off(coverCut)}
		depths := []float64{149 + b.off(coverCut), 149 + b.off(coverCut)}
		thick := 32 + 2*(1.5+b.off(coverOff))
		r := b.assemble(j, d, 2.47+b.off(0.15))
		put := func(name string, v float64) { samples[name] = append(samples[name], v) }
		put("height of the covers, between", slices.Min(heights)-221)
		put("height of the slipcase, body", r.bodyHeight-(slices.Max(heights)-222))
		put("height of the slipcase, mouth", r.mouthHeight-(slices.Max(heights)-222))
		put("depth of the slipcase, body", r.depth-(slices.Max(depths)-149))
		put("thickness of the slipcase, body", r.bodyThick-(thick-35))
		put("thickness of the slipcase, mouth", r.mouthThick-(thick-35))
	}
	seen := 0
	report := fit.Of(plan.Plan{Chain: chain})
	for _, g := range report.Gaps {
		where := g.Dimension + ", " + g.Place
		s := samples[where]
		if s == nil {
			continue // the corners have no simulation
		}
		seen++
		mean, sd := s.moments()
		assert.InDelta(t, mean, g.Distribution.Expected().MM(), 4*sd/math.Sqrt(n)+0.03, where)
		assert.InEpsilon(t, sd, g.Distribution.StandardDeviation().MM(), 4/math.Sqrt(2*n)+0.04, where)
		assert.InDelta(t, s.below(g.Tight), g.Chance.Tight, 0.006, where)
		var sum Length
		for _, l := range g.Chain {
			sum += l.Takes()
		}
		assert.InDelta(t, g.Drawn.MM(), sum.MM(), 1e-6, where)
	}
	assert.Equal(t, len(samples), seen)
	// The covers' board takes of the slipcase's thickness twice, its own not at all.
	g, ok := report.Find("thickness of the slipcase", slipcase.InBody)
	require.True(t, ok)
	counts := map[string]float64{}
	for _, l := range g.Chain {
		counts[l.Name] = l.Counts
	}
	assert.Equal(t, -2.0, counts["board of the covers"])
	assert.Zero(t, counts["board of the slipcase"])
	assert.Equal(t, -1.0, counts["the book, thickness"])
}

// A chain is whole: every effect and length belongs to a gap, every dimension is
// decided somewhere, places go from the widest to the tightest, and whatever has
// a key is a setting of the job.
func TestChainsAreWhole(t *testing.T) {
	whole := func(t require.TestingT, c plan.Chain, settings job.Settings) {
		left := c.Left(c.Drawn())
		require.GreaterOrEqual(t, len(left), len(c.Gaps))
		known := func(key string) {
			_, ok := settings.Find(key)
			assert.True(t, ok, key)
		}
		for _, o := range c.Off {
			assert.Len(t, o.Effects, len(left), o.Name)
			known(o.Key)
		}
		for _, l := range c.Links {
			if l.Varies != nil {
				known(l.Varies.Key)
			}
		}
		for _, m := range c.Mends {
			for _, s := range m.Sets {
				known(s.Key)
			}
		}
		decided := map[string]int{}
		for i, g := range c.Gaps {
			if g.Decides {
				decided[g.Dimension+g.Volume]++
			}
			if i > 0 && c.Gaps[i-1].Dimension == g.Dimension && c.Gaps[i-1].Volume == g.Volume {
				assert.LessOrEqual(t, left[i], left[i-1]+1e-9)
			}
			assert.True(t, slices.ContainsFunc(c.Dimensions, func(d plan.Dimension) bool { return d.Name == g.Dimension }), g.Dimension)
		}
		for _, d := range c.Dimensions {
			known(d.Key)
			assert.Condition(t, func() bool {
				return slices.ContainsFunc(c.Gaps, func(g plan.Gap) bool { return g.Dimension == d.Name && decided[d.Name+g.Volume] == 1 })
			})
		}
		assert.Equal(t, left, c.With(nil).Left(c.Drawn()))
	}
	rapid.Check(t, func(t *rapid.T) {
		b, k := cases().Draw(t, "case"), cards().Draw(t, "card")
		whole(t, b.Plan().Chain, b.Job.Settings())
		whole(t, k.Plan().Chain, k.Job.Settings())
	})
}
