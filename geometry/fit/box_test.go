package fit_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/geometry"
	"forel/geometry/box"
	"forel/geometry/fit"
	"forel/geometry/job"
	"forel/geometry/plan/plantest"
)

// trayed is a tray as it comes out: inside from board to board at its tightest, outside
// with its cloth at its widest, the height of its walls at the least and at the most.
type trayed struct{ longIn, wideIn, longOut, wideOut, low, high float64 }

// tray cuts the boards of a tray and puts it together: base and fore-edge wall set how long
// it is, the base how wide, three walls how high. Each wall stands a little in or out, and
// leans.
func (b bench) tray(long, wide, high, board, cloth float64, u job.Uncertainty) trayed {
	setLong, setWide, setHigh := b.off(u.Cutting), b.off(u.Cutting), b.off(u.Cutting)
	l1, l2 := long+setLong+b.off(u.Repeat), long+setLong+b.off(u.Repeat)
	w := wide + setWide + b.off(u.Repeat)
	var hs []float64
	for range 3 {
		hs = append(hs, high+setHigh+b.off(u.Repeat))
	}
	stands, fore := b.off(u.Placing)+b.off(u.Placing), b.off(u.Placing)
	lean := math.Abs(b.off(u.Squareness)+b.off(u.Squareness)) / 2
	leanFore := math.Abs(b.off(u.Squareness))
	return trayed{
		longIn: min(l1, l2) + stands - lean, wideIn: w + fore - leanFore,
		longOut: max(l1, l2) + stands + lean + 2*board + 2*cloth, wideOut: w + fore + leanFore + board + cloth,
		low: slices.Min(hs), high: slices.Max(hs),
	}
}

// Boxes put together from pieces that are each a little off, all cut at once, or the
// large tray cut to the small one as that is measured: means, spreads and chances are
// those of the report.
func TestBoxAgainstPuttingTogether(t *testing.T) {
	const n = 100_000
	for _, order := range []string{box.AsPlanned, box.AsMeasured} {
		j := box.DefaultJob(geometry.MM)
		j.Books = []job.Book{{Height: job.Readings{220}, Width: job.Readings{150}, Thickness: job.Readings{30}}}
		j.Known, j.Order = job.KnownMeasured, order
		u := j.Uncertainty
		u.Board = job.Measured
		b := bench{rand.New(rand.NewPCG(11, 12))}
		read := func(l float64) float64 { return l + b.off(u.Measuring) + b.between(-0.5, 0.5)*u.ReadingStep.MM() }
		samples := make([]simulated, 7)
		for range n {
			board, k, q := 2.5+b.off(u.Board), 0.35+b.off(u.Cloth), 0.35+b.off(u.Cloth)
			f, lid := 0.15+b.off(u.Lining), 0.15+b.off(u.Lining)
			small := b.tray(222.2, 151.35, 33.65, board, k, u) // the worked example of the design
			long, wide, high := 229.8, 155.4, 37.3
			// What is cut for the small tray as it was read, at three places.
			reads := func(l float64) float64 { return max(read(l), read(l), read(l)) }
			if order == box.AsMeasured {
				long, wide = long+reads(small.longOut)-227.9, wide+reads(small.wideOut)-154.2
				high += reads(small.high+2*k) - 34.35
			}
			large := b.tray(long, wide, high, board, k, u)
			bookHigh, bookWide, bookThick := read(220), read(150), read(30)
			for i, v := range []float64{
				small.longIn - 2*k - bookHigh, small.longIn - 4*k - bookHigh, small.wideIn - 2*k - bookWide,
				large.low + 2*k - 2*(board+2*k+q) - f - lid - bookThick,
				large.longIn - 4*k - small.longOut, large.wideIn - 2*k - small.wideOut,
				large.low - board - lid - (small.high + 2*k),
			} {
				samples[i] = append(samples[i], v)
			}
		}
		sound, refused, _ := j.Check()
		require.Empty(t, refused)
		p, err := sound.Make()
		require.NoError(t, err)
		report := fit.Of(p)
		require.Len(t, report.Gaps, len(samples))
		for i, g := range report.Gaps {
			s, where := samples[i], order+": "+g.Dimension+" "+g.Place
			mean, sd := s.moments()
			assert.InDelta(t, mean, g.Distribution.Expected().MM(), 0.06, where)
			assert.InEpsilon(t, sd, g.Distribution.StandardDeviation().MM(), 0.06, where)
			assert.InDelta(t, s.below(g.Tight), g.Chance.Tight, 0.03, where)
		}
	}
}

// By default the large tray follows the small one as measured, which is what the order of
// work has: whether the board is measured or not, the trays then stick less than half as
// often as where all is cut at once. Book of the design's worked example.
func TestMeasuringTheSmallTrayPays(t *testing.T) {
	for _, known := range []string{job.KnownAsSold, job.KnownMeasured} {
		tight := func(order string) float64 {
			j := box.DefaultJob(geometry.MM)
			j.Books = []job.Book{{Height: job.Readings{220}, Width: job.Readings{150}, Thickness: job.Readings{30}}}
			j.Known = known
			if order != "" {
				j.Order = order
			}
			p, err := plantest.Plan(&j)
			require.NoError(t, err)
			return fit.Of(p).Settled.Tight
		}
		assert.Less(t, tight(""), tight(box.AsPlanned)/2, known)
		assert.Equal(t, tight(box.AsMeasured), tight(""), known)
	}
}
