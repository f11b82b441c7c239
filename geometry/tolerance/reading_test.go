package tolerance

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
)

// The true largest dimension, estimated from several readings, is neither too
// large nor too small on average, and is as sure as it says: books are made
// whose places differ, or not, and read with errors (seeded). The largest
// reading, taken as it is, is too large by d2/2 of a deviation where the places
// are alike.
func TestTrueLargestIsFair(t *testing.T) {
	u := Reading{PlusMinus: 0.4} // a deviation of 0.2
	for _, c := range []struct {
		differ float64 // deviation from place to place
		n      int
	}{{0, 2}, {0, 3}, {0, 5}, {0.2, 3}, {0.6, 3}, {1.5, 5}} {
		r := rand.New(rand.NewPCG(uint64(c.n), uint64(c.differ*100)))
		const books = 2500
		var bias, naive, within, variance float64
		for range books {
			var readings []Length
			largest := math.Inf(-1)
			for range c.n {
				place := 200 + c.differ*r.NormFloat64()
				largest = max(largest, place)
				readings = append(readings, Length(place+0.2*r.NormFloat64()))
			}
			e := u.largest(readings)
			bias += (e.Mean.MM() - largest) / books
			naive += (largestOf(readings).MM() - largest) / books
			variance += float64(e.SD*e.SD) / books
			if math.Abs(e.Mean.MM()-largest) < 2*e.SD.MM() {
				within += 1.0 / books
			}
			if e.Low > e.Mean || e.High < e.Mean {
				t.Fatalf("%v is not between its bounds", e)
			}
		}
		t.Logf("places differ by %.1f, %d readings: bias %.3f (the largest reading's %.3f), within two deviations %.3f", c.differ, c.n, bias, naive, within)
		assert.Less(t, math.Abs(bias), 0.08, "%v", c)
		assert.LessOrEqual(t, math.Abs(bias), math.Abs(naive)+0.02, "%v", c)
		assert.Greater(t, within, 0.84, "%v", c) // 0.95 but for what a few readings can't tell
	}
}

// One reading is taken as it is, with the uncertainty of a reading; GUM
// F.2.2.1 adds 0.29 of the step (from memory).
func TestOneReading(t *testing.T) {
	e := Reading{0.3, 0.5}.largest([]Length{200})
	assert.Equal(t, Length(200), e.Mean)
	assert.InDelta(t, math.Hypot(0.15, 0.29*0.5), e.SD.MM(), 1e-3)
	assert.InDelta(t, 200.55, e.High.MM(), 1e-12)
	assert.InDelta(t, 199.45, e.Low.MM(), 1e-12)
}

// Of two dimensions the larger counts, whichever it truly is: of a tapered book
// the thicker edge.
func TestLargestOfTwoDimensions(t *testing.T) {
	r := Reading{PlusMinus: 0.2}
	off := r.Off([]Length{30}, []Length{26})
	assert.InDelta(t, 0, off.Mean.MM(), 1e-6)
	assert.InDelta(t, 0.1, off.SD.MM(), 1e-3)
	off = r.Off([]Length{30}, []Length{30}) // two edges alike: the larger of two
	assert.InDelta(t, 0.1/math.Sqrt(math.Pi), off.Mean.MM(), 1e-5)
}

// The true smallest of several places is as sure as the true largest: the same readings
// turned round, 200 less each, have the same spread and the opposite error. One reading is
// taken as it is.
func TestTrueSmallestMirrorsTheLargest(t *testing.T) {
	r := Reading{PlusMinus: 0.3, Step: 0.5}
	for _, read := range [][]Length{{100}, {100, 100.4}, {101, 100, 100.5, 99.8}, {90, 110}} {
		turned := make([]Length, len(read))
		for i, l := range read {
			turned[i] = 200 - l
		}
		least, most := r.OffLeast(read...), r.Off(turned)
		apart := largestOf(read) + largestOf(turned) - 200 // from the smallest reading to the largest
		assert.InDelta(t, (-most.Mean - apart).MM(), least.Mean.MM(), 1e-9, "%v", read)
		assert.InDelta(t, most.SD.MM(), least.SD.MM(), 1e-9, "%v", read)
		assert.InDelta(t, (-most.High - apart).MM(), least.Low.MM(), 1e-9, "%v", read)
		assert.InDelta(t, (-most.Low - apart).MM(), least.High.MM(), 1e-9, "%v", read)
	}
}
