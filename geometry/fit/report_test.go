package fit_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/geometry/fit"
	"forel/geometry/onepiece"
	"forel/geometry/plan"
	"forel/geometry/plan/plantest"
	"forel/geometry/slipcase"
)

// A chain of dimensions closes: what gives room less what takes it is the
// clearance, the same that folding the pieces up finds.
func TestChainsClose(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := cases().Draw(t, "case")
		r := fit.Of(c.Plan())
		k := c.Proof.Clearance
		folded := map[string]map[string]Length{
			plan.Height:    {slipcase.InBody: k.BodyHeight, slipcase.AtMouth: k.MouthHeight},
			plan.Depth:     {slipcase.InBody: k.BodyWidth},
			plan.Thickness: {slipcase.InBody: k.BodyThickness, slipcase.AtMouth: k.MouthThickness},
		}
		least := Length(1000)
		for _, g := range r.Gaps {
			var sum Length
			for _, l := range g.Chain {
				sum += l.Takes()
			}
			assert.InDelta(t, (g.Drawn - g.Swell).MM(), sum.MM(), 1e-4, "%s in the %s: %v", g.Dimension, g.Place, g.Chain)
			if g.Dimension == plan.Thickness && g.Place == slipcase.AtMouth {
				least = min(least, g.Drawn) // the tightest compartment is what the proof tells of
				continue
			}
			assert.InDelta(t, folded[g.Dimension][g.Place].MM(), g.Drawn.MM(), 1e-6, "%s in the %s", g.Dimension, g.Place)
		}
		assert.InDelta(t, k.MouthThickness.MM(), least.MM(), 1e-6)
	})
}

// The same of a case of card.
func TestChainsOfCardClose(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := cards().Draw(t, "case")
		r := fit.Of(c.Plan())
		want := []Length{c.Job.Clearance.Height, c.Job.Clearance.Width, c.Job.Clearance.Thickness}
		require.Len(t, r.Gaps, len(want))
		for i, g := range r.Gaps {
			var sum Length
			for _, l := range g.Chain {
				sum += l.Takes()
			}
			assert.InDelta(t, want[i].MM(), sum.MM(), 1e-4)
			assert.InDelta(t, want[i].MM(), g.Drawn.MM(), 1e-9)
		}
	})
}

// What holds of any report.
func TestReportHolds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := fit.Of(cases().Draw(t, "case").Plan())
		for i, g := range r.Gaps {
			assert.InDelta(t, 1, g.Chance.Tight+g.Chance.Snug+g.Chance.Loose, 1e-9)
			assert.LessOrEqual(t, g.Low, g.Drawn)
			assert.LessOrEqual(t, g.Low, g.High)
			d := g.Distribution
			assert.Greater(t, d.Expected(), g.Low)
			assert.Less(t, d.Expected(), g.High)
			var share float64
			for e, one := range r.Errors {
				f := one.Effects[i]
				share += r.Share(e, i)
				assert.LessOrEqual(t, f.Low, f.Mean+1e-9)
				assert.GreaterOrEqual(t, f.High, f.Mean-1e-9)
			}
			assert.InDelta(t, 1, share, 1e-9)
		}
		for _, m := range r.Mends {
			for _, s := range m.Sets {
				assert.NotEmpty(t, s.Key)
			}
			assert.True(t, m.Chance.Enough() || !m.Advised)
		}
	})
}

// A board that is thicker than assumed narrows the height by twice the
// difference, the depth by once, and the thickness not at all: walls stand on
// the sides (design: sides W + cW + s by H + cH + 2s, walls T + cT wide).
func TestWhatIfOfTwoMillimetres(t *testing.T) {
	r := fit.Of(made(t, of(221, 148, 32)).Plan())
	var names []string
	require.Len(t, r.WhatIf, 1)
	tried := r.WhatIf[0].Tried
	for _, w := range tried {
		names = append(names, w.Name)
	}
	require.Equal(t, []string{"0.067 in", "2 mm", "3/32 in"}, names) // 1.70, 2.00 and 2.38 mm
	thin, thick := tried[0], tried[2]
	for i, g := range r.Gaps {
		times := map[string]Length{plan.Height: 2, plan.Depth: 1, plan.Thickness: 0}[g.Dimension]
		assert.InDelta(t, (times * (thick.Thickness - thin.Thickness)).MM(), (thin.Left[i] - thick.Left[i]).MM(), 1e-9, g.Dimension)
	}
	// 0.68 mm between the two sizes moves the height by 1.4 mm, to the nearest
	// tenth (common practice, no source).
	require.NotEmpty(t, r.Mends)
	assert.InDelta(t, 1.4, r.Mends[0].What.Lengths[0].MM(), 0.05)
	assert.Equal(t, "board.known", r.Mends[0].Sets[0].Key)
}

// A lining takes of the thickness only where it is pasted in afterwards.
func TestLiningInTheChain(t *testing.T) {
	counts := func(order string, d string) float64 {
		j := of(221, 148, 32)
		j.Lining.Order = order
		g, ok := fit.Of(made(t, j).Plan()).Find(d, slipcase.InBody)
		require.True(t, ok)
		for _, l := range g.Chain {
			if l.Name == "lining" {
				return l.Counts
			}
		}
		return 0
	}
	assert.Zero(t, counts(slipcase.LinedBefore, plan.Thickness))
	assert.Equal(t, -2.0, counts(slipcase.LinedAfter, plan.Thickness))
	for _, order := range []string{slipcase.LinedBefore, slipcase.LinedAfter} {
		assert.Equal(t, -2.0, counts(order, plan.Height))
		assert.Equal(t, -1.0, counts(order, plan.Depth))
	}
}

// Damp takes its share of the book's thickness, of nothing else.
func TestSwell(t *testing.T) {
	j := of(221, 148, 40)
	dry := fit.Of(made(t, j).Plan())
	j.Limits.Swell = 2.5
	damp := fit.Of(made(t, j).Plan())
	for i, g := range dry.Gaps {
		want := Length(0)
		if g.Dimension == plan.Thickness {
			want = 1 // 2.5 % of 40 mm
		}
		assert.InDelta(t, want.MM(), damp.Gaps[i].Swell.MM(), 1e-9)
		chain := damp.Gaps[i].Chain
		if want > 0 {
			assert.InDelta(t, -1, chain[len(chain)-1].Takes().MM(), 1e-9, "the last link of %s", g.Place)
		}
		assert.InDelta(t, want.MM(), (g.Distribution.Expected() - damp.Gaps[i].Distribution.Expected()).MM(), 1e-9)
		if want > 0 {
			assert.Greater(t, damp.Gaps[i].Chance.Tight, g.Chance.Tight)
		}
	}
	assert.Greater(t, damp.Settled.Tight, dry.Settled.Tight)
}

// A strip that goes round the book has the cavity's measures, or those of the
// mouth.
func TestGauges(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := cases().Draw(t, "case")
		if c.Job.Dividers() > 0 {
			t.Skip("one compartment here")
		}
		r := fit.Of(c.Plan())
		for _, g := range r.Gauges {
			var want []Length
			switch {
			case !g.Closed:
				want = []Length{c.Stands.Cavity().Width, c.Stands.Cavity().Thickness, c.Stands.Cavity().Width}
			case g.Name == "Sleeve as wide as the body":
				want = []Length{c.Stands.Cavity().Height, c.Stands.Cavity().Thickness, c.Stands.Cavity().Height, c.Stands.Cavity().Thickness}
			default:
				h, th := c.Stands.Contents().Height+c.Stands.Mouth().Height, c.Stands.Contents().Thickness+c.Stands.Mouth().Thickness
				want = []Length{h, th, h, th}
			}
			require.Len(t, g.Panels, len(want), g.Name)
			for i, p := range g.Panels {
				assert.InDelta(t, want[i].MM(), p.Length.MM(), 1e-6, "%s, %s", g.Name, p.Name)
			}
		}
		assert.NotEmpty(t, r.Gauges)
	})
}

// Of is cheap enough for any command to call.
func BenchmarkOf(b *testing.B) {
	c := made(b, of(221, 148, 32))
	p := c.Plan()
	for b.Loop() {
		fit.Of(p)
	}
}

func BenchmarkOfCard(b *testing.B) {
	j := onepiece.DefaultJob(geometry.MM)
	j.Books = of(221, 148, 32).Books
	c, err := plantest.Make[onepiece.Case](j)
	require.NoError(b, err)
	p := c.Plan()
	for b.Loop() {
		fit.Of(p)
	}
}
