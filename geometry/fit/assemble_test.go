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
	"forel/geometry/plan"
	"forel/geometry/slipcase"
)

// The simulation puts cases together from pieces that are each a little off,
// corner by corner, and measures what room a stiff book has in them. It knows
// nothing of sensitivities: only the pieces' drawn sizes and the hand.

// bench draws errors, seeded.
type bench struct{ *rand.Rand }

// off is a normal error of which 19 in 20 keep within plus or minus l.
func (b bench) off(l Length) float64 { return b.NormFloat64() * l.MM() / 2 }

// between is a number with equal chance anywhere in a range.
func (b bench) between(lo, hi float64) float64 { return lo + (hi-lo)*b.Float64() }

// board is a piece of board as it was cut: how wide (across) it is at one end and
// at the other.
type board struct{ near, far float64 }

// cut cuts n boards of one width, its two edges out of parallel by what the
// squareness of edges says, at one setting or each by itself.
func (b bench) cut(n int, width Length, edges int, u job.Uncertainty) []board {
	setting, lean := b.off(u.Cutting), 0.0
	for range edges {
		lean += b.off(u.Squareness)
	}
	out := make([]board, n)
	for i := range out {
		w := width.MM() + setting + b.off(u.Repeat)
		if u.Settings == job.EachBySelf {
			w = width.MM() + b.off(u.Cutting)
		}
		out[i] = board{w - lean/2, w + lean/2} // the setting is true in the middle
	}
	return out
}

// room is what a case leaves its book.
type room struct{ bodyHeight, mouthHeight, depth, bodyThick, mouthThick float64 }

// drawnSizes are read off the pieces.
type drawnSizes struct{ sideWidth, sideHeight, wallWidth Length }

func sizesOf(t testing.TB, pieces []geometry.Piece) drawnSizes {
	var d drawnSizes
	for _, p := range pieces {
		switch w, h := p.Size(); p.Name {
		case "side":
			d.sideWidth, d.sideHeight = w, h
		case "spine wall":
			d.wallWidth = w
		}
	}
	require.NotZero(t, d.sideWidth)
	require.NotZero(t, d.wallWidth)
	return d
}

// assemble makes one case and measures it. thick draws the thickness of the
// board; cloth lies once on head and tail, cloth and paper on each side.
func (b bench) assemble(j slipcase.Job, d drawnSizes, thick float64) room {
	u := j.Uncertainty
	lining := j.Lining.Thickness.MM() + b.off(u.Lining)
	cloth, paper := j.Cloth.Thickness.MM()+b.off(u.Cloth), j.SidePaper.Thickness.MM()+b.off(u.SidePaper)
	wall := thick
	if j.Lining.Order == slipcase.LinedBefore {
		wall += lining
	}
	book := func(r job.Readings) float64 { // the true size behind one reading
		return r[0].MM() + b.off(u.Measuring) + b.between(-0.5, 0.5)*u.ReadingStep.MM()
	}
	bk := j.Books[0]
	high, deep, wide := book(bk.Height), book(bk.Width), book(bk.Thickness)

	// Sides and spine wall of one height: left side, right side, spine wall. The
	// head and tail walls stand on them, each a little in or out.
	tall := b.cut(3, d.sideHeight, 2, u)
	in := b.off(u.Placing) + b.off(u.Placing)
	atSpine := min(tall[0].near, tall[1].near, (tall[2].near+tall[2].far)/2) - in - 2*wall
	atMouth := min(tall[0].far, tall[1].far) - in - 2*wall
	if j.Lining.Order == slipcase.LinedAfter {
		atSpine, atMouth = atSpine-2*lining, atMouth-2*lining
	}
	var r room
	r.bodyHeight = min(atSpine, atMouth) - high
	r.mouthHeight = atMouth - 2*cloth - high

	// The spine wall stands in the sides; the book stands on the tail wall and
	// touches the spine wall where that leans in, its fore-edge looks out where
	// the mouth edge does.
	lean := b.off(u.Squareness) // of the spine edge, over the height; the mouth edge follows
	setBack := b.off(u.Placing)
	r.depth = math.Inf(1)
	setting := b.off(u.Cutting)
	for range 2 {
		w := d.sideWidth.MM() + setting + b.off(u.Repeat)
		if u.Settings == job.EachBySelf {
			w = d.sideWidth.MM() + b.off(u.Cutting)
		}
		for _, end := range []float64{0, lean} {
			for _, touch := range []float64{0, lean} {
				r.depth = min(r.depth, w+end-(wall+setBack+touch)-deep)
			}
		}
	}
	if j.Lining.Order == slipcase.LinedAfter {
		r.depth -= lining
	}

	// The walls' width: head, tail, spine.
	narrow := b.cut(3, d.wallWidth, 1, u)
	bow := max(0, b.off(u.Warp)) + max(0, b.off(u.Warp)) // outward gives nothing: the edges are held
	after := 0.0
	spineEnd := min(narrow[0].near, narrow[1].near, (narrow[2].near+narrow[2].far)/2)
	mouthEnd := min(narrow[0].far, narrow[1].far)
	if j.Lining.Order == slipcase.LinedAfter {
		after = 2 * lining
	}
	r.bodyThick = min(spineEnd, mouthEnd) - bow - after - wide
	r.mouthThick = mouthEnd - after - 2*takes(bow/2, cloth, paper, d.sideHeight.MM()-2*wall, j.Cloth.Overlap.MM()-wall) - wide
	return r
}

// takes finds what a side takes at the mouth where it takes the most: from head to
// tail it bows as a parabola between the walls that hold it, and has a tab of cloth
// under its paper only as far as that reaches.
func takes(bow, cloth, paper, high, reach float64) (most float64) {
	for n := range 21 {
		part := float64(n) / 40
		on := paper + bow*4*part*(1-part)
		if part*high <= reach {
			on += cloth
		}
		most = max(most, on)
	}
	return most
}

// simulated is the sample of one clearance.
type simulated []float64

func (s simulated) moments() (mean, sd float64) {
	for _, v := range s {
		mean += v / float64(len(s))
	}
	for _, v := range s {
		sd += (v - mean) * (v - mean) / float64(len(s)-1)
	}
	return mean, math.Sqrt(sd)
}

// below returns the part of the sample under x.
func (s simulated) below(x Length) float64 {
	n := 0
	for _, v := range s {
		if v < x.MM() {
			n++
		}
	}
	return float64(n) / float64(len(s))
}

// What root-sum-square says of a case is what comes out when cases are put
// together. Beside four standard errors of the sample, the model may be off by
// what it simplifies, that the narrower of two pieces and the narrower end of
// one are reckoned one by one: 0.03 mm in the mean, 4 % in the deviation; and
// errors in one way only make the distribution lean a little, which is not
// followed: in the chance 0.6 in 100 at the ends, 3 in 100 in the middle.
func TestAgainstAssembly(t *testing.T) {
	const n = 200_000
	jobs := map[string]slipcase.Job{"default": of(221, 148.5, 31.75)}
	byHand := of(310, 220, 18)
	byHand.Uncertainty.Settings = job.EachBySelf
	byHand.Uncertainty.Board = 0.15
	jobs["each piece by itself"] = byHand
	after := of(180, 110, 60)
	after.Lining = slipcase.Lining{Thickness: 0.3, Order: slipcase.LinedAfter}
	after.Board.Thickness, after.Board.Known = 2.47, job.KnownMeasured
	after.Uncertainty.Squareness, after.Uncertainty.Warp = 0.6, 0.5
	jobs["lined after, out of square"] = after
	for name, j := range jobs {
		t.Run(name, func(t *testing.T) {
			c := made(t, j)
			report := fit.Of(c.Plan())
			d := sizesOf(t, c.Pieces)
			b := bench{rand.New(rand.NewPCG(1, 2))}
			samples := map[[2]string]simulated{}
			put := func(d string, p string, v float64) {
				k := [2]string{d, p}
				samples[k] = append(samples[k], v)
			}
			for range n {
				thick := j.Board.Thickness.MM() + b.off(0.05) // measured
				switch {
				case j.Uncertainty.Board > 0:
					thick = j.Board.Thickness.MM() + b.off(j.Uncertainty.Board)
				case j.Board.Known == job.KnownAsSold:
					thick = b.between(0.067*25.4, 25.4*3/32) // known by name
				}
				r := b.assemble(j, d, thick)
				put(plan.Height, slipcase.InBody, r.bodyHeight)
				put(plan.Height, slipcase.AtMouth, r.mouthHeight)
				put(plan.Depth, slipcase.InBody, r.depth)
				put(plan.Thickness, slipcase.InBody, r.bodyThick)
				put(plan.Thickness, slipcase.AtMouth, r.mouthThick)
			}
			seen := 0
			for _, g := range report.Gaps {
				s := samples[[2]string{g.Dimension, g.Place}]
				if s == nil {
					continue // the corners have no simulation
				}
				seen++
				mean, sd := s.moments()
				where := g.Dimension + " " + g.Place
				assert.InDelta(t, mean, g.Distribution.Expected().MM(), 4*sd/math.Sqrt(n)+0.03, where)
				assert.InEpsilon(t, sd, g.Distribution.StandardDeviation().MM(), 4/math.Sqrt(2*n)+0.04, where)
				for _, x := range []Length{g.Tight, g.Loose, 0.5, 1, 1.5, 2} {
					p := s.below(x)
					assert.InDelta(t, p, g.Distribution.Below(x), 4*math.Sqrt(p*(1-p)/n)+0.006+0.1*p*(1-p), "%s below %v", where, x)
				}
				if testing.Verbose() {
					t.Logf("%-16s mean %.3f / %.3f  sd %.3f / %.3f  tight %.4f / %.4f", where, mean, g.Distribution.Expected(), sd, g.Distribution.StandardDeviation(), s.below(g.Tight), g.Chance.Tight)
				}
			}
			assert.Equal(t, 5, seen)
		})
	}
}

// The test can fail: with a sensitivity of one board instead of two it does.
func TestAssemblyTellsABoardApart(t *testing.T) {
	j := of(221, 148.5, 31.75)
	c := made(t, j)
	d := sizesOf(t, c.Pieces)
	b := bench{rand.New(rand.NewPCG(3, 4))}
	j.Uncertainty = job.Uncertainty{Settings: job.OneSetting}
	thin, thick := b.assemble(j, d, 1.7), b.assemble(j, d, 2.4)
	assert.InDelta(t, 2*0.7, thin.mouthHeight-thick.mouthHeight, 1e-9)
	assert.InDelta(t, 0.7, thin.depth-thick.depth, 1e-9)
	assert.InDelta(t, 0, thin.mouthThick-thick.mouthThick, 1e-9)
	exact := b.assemble(j, d, 2)
	for _, v := range [][2]float64{{exact.bodyHeight, 2}, {exact.mouthHeight, 1.3}, {exact.depth, 1}, {exact.bodyThick, 2}, {exact.mouthThick, 1}} {
		assert.InDelta(t, v[1], v[0], 1e-9)
	}
}
