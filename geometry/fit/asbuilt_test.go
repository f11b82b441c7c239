package fit_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/geometry/fit"
	"forel/geometry/job"
	"forel/geometry/plan"
	"forel/geometry/slipcase"
)

// A carcass that stands, measured outside at one place each way: inside it has that less
// its boards, however it was cut. Its true size is off the reading as a book's is; its
// edges lean and its sides bow as before (tolerances as for a case put together).
func TestCarcassAsBuiltAgainstMeasuring(t *testing.T) {
	const n = 200_000
	j := of(221, 148.5, 31.75)
	j.Board.Known, j.Uncertainty.Board = job.KnownMeasured, 0.1
	j.Uncertainty.Cutting, j.Uncertainty.Repeat, j.Uncertainty.Placing = 5, 5, 5 // no more of it
	high, deep, thick := 227.9, 151.2, 38.4
	j.AsBuilt = job.AsBuilt{Height: job.Readings{Length(high)}, Width: job.Readings{Length(deep)}, Thickness: job.Readings{Length(thick)}}
	u := j.Uncertainty
	b := bench{rand.New(rand.NewPCG(9, 10))}
	measured := func(l float64) float64 { return l + b.off(u.Measuring) + b.between(-0.5, 0.5)*u.ReadingStep.MM() }
	samples := map[[2]string]simulated{}
	put := func(d, p string, v float64) { samples[[2]string{d, p}] = append(samples[[2]string{d, p}], v) }
	for range n {
		board, lining := 2+b.off(u.Board), 0.15+b.off(u.Lining)
		cloth, paper := 0.35+b.off(u.Cloth), 0.15+b.off(u.SidePaper)
		wall := board + lining
		lean := (b.off(u.Squareness) + b.off(u.Squareness)) / 2 // of its upper and its lower edge, from the middle to an end
		room := measured(high) - 2*wall - measured(221)
		put(plan.Height, slipcase.InBody, room-math.Abs(lean))
		put(plan.Height, slipcase.AtMouth, room+lean-2*cloth)
		put(plan.Depth, slipcase.InBody, measured(deep)-wall-measured(148.5)-math.Abs(b.off(u.Squareness)))
		lean = b.off(u.Squareness) / 2
		bow := max(0, b.off(u.Warp)) + max(0, b.off(u.Warp))
		room = measured(thick) - 2*wall - measured(31.75)
		put(plan.Thickness, slipcase.InBody, room-math.Abs(lean)-bow)
		put(plan.Thickness, slipcase.AtMouth, room+lean-2*takes(bow/2, cloth, paper, 223, 28-wall))
	}
	report := fit.Of(made(t, j).Plan())
	require.Len(t, report.Gaps, 5)
	for _, g := range report.Gaps {
		s, where := samples[[2]string{g.Dimension, g.Place}], g.Dimension+" "+g.Place
		mean, sd := s.moments()
		assert.InDelta(t, mean, g.Distribution.Expected().MM(), 4*sd/math.Sqrt(n)+0.03, where)
		assert.InEpsilon(t, sd, g.Distribution.StandardDeviation().MM(), 4/math.Sqrt(2*n)+0.04, where)
		assert.InDelta(t, s.below(g.Tight), g.Chance.Tight, 0.006, where)
	}
	for _, m := range report.Mends { // it stands: nothing is cut or set any more
		assert.NotContains(t, m.What.Text, "clearance")
		assert.NotContains(t, m.What.Text, "cut")
	}
}

// Of several readings the smallest is the room that a book has to pass, the largest what
// the covering goes over. By hand: 228 and 226 outside leave a book of 221, in lined
// boards of 2.15, 2.7 and 0.7; readings so far apart are not the rule's fault, so the
// least counts as it was read.
func TestRoomOfACarcassIsAtItsSmallestPlace(t *testing.T) {
	j := of(221, 148.5, 31.75)
	j.Board.Known = job.KnownMeasured
	j.Uncertainty.Measuring, j.Uncertainty.ReadingStep = 0.02, 0.01
	j.AsBuilt.Height = job.Readings{228, 226}
	g := fit.Of(made(t, j).Plan()).Gaps[0]
	assert.Equal(t, plan.Height, g.Dimension)
	assert.InDelta(t, 228-2*2.15-221, g.Drawn.MM(), 1e-9)
	assert.InDelta(t, 226-2*2.15-221, g.Distribution.Expected().MM(), 0.01)
}

// With dividers each compartment has its share of what the carcass measures otherwise
// than planned, and of the error of measuring it; what is as planned comes out the same.
func TestCompartmentsOfACarcassAsBuilt(t *testing.T) {
	j := of(221, 148.5, 30)
	j.Compartments = slipcase.EachItsOwn
	j.Books = append(j.Books, j.Books[0], j.Books[0])
	drawn := func(more Length) (out []float64) {
		k := j
		k.AsBuilt.Thickness = job.Readings{j.Outside().Thickness + more}
		for _, g := range fit.Of(made(t, k).Plan()).Gaps {
			if g.Dimension == plan.Thickness {
				out = append(out, g.Drawn.MM())
				sum := g.Sums()
				assert.InDelta(t, g.Left().MM(), sum[len(sum)-1].MM(), 1e-5, "the chain adds up")
			}
		}
		return out
	}
	var planned []float64
	for _, g := range fit.Of(made(t, j).Plan()).Gaps {
		if g.Dimension == plan.Thickness {
			planned = append(planned, g.Drawn.MM())
		}
	}
	assert.InDeltaSlice(t, planned, drawn(0), 1e-9)
	for i, l := range drawn(-0.9) {
		assert.InDelta(t, planned[i]-0.3, l, 1e-9, fmt.Sprint(i))
	}
	k := j
	k.AsBuilt.Thickness = job.Readings{j.Outside().Thickness}
	for _, e := range fit.Of(made(t, k).Plan()).Errors {
		for i, g := range fit.Of(made(t, k).Plan()).Gaps {
			if g.Dimension == plan.Thickness && (e.Name == "cutting" || strings.HasPrefix(e.Name, "from piece")) {
				assert.Zero(t, e.Effects[i], "%s: %s", e.Name, g.Volume)
			}
		}
	}
}
