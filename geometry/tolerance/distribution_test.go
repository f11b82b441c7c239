package tolerance

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

// Worked examples of JCGM 100:2008 (GUM), all from memory.
func TestExamplesOfTheGUM(t *testing.T) {
	// H.1.4, calibration of an end gauge: 25, 9.7, 2.9 and 16.6 nm together are
	// 32 nm.
	assert.InDelta(t, 32, rss(25, 9.7, 2.9, 16.6).MM(), 0.5)
	// 4.3.7, a coefficient of expansion known to lie within 0.40 of 16.52, with
	// equal chance: 0.23 (all in 1e-6 per degree).
	flat := Distribution{Mean: 16.52, Low: -0.40, High: 0.40}
	assert.InDelta(t, 0.23, flat.StandardDeviation().MM(), 0.005)
	// 4.3.8, the same between 16.40 and 16.92: 0.15, about their middle.
	uneven := Distribution{Mean: 16.52, Low: -0.12, High: 0.40}
	assert.InDelta(t, 0.15, uneven.StandardDeviation().MM(), 0.005)
	assert.InDelta(t, 16.66, uneven.Expected().MM(), 1e-9)
	// F.2.2.1: a reading rounded to a step has 0.29 of it.
	assert.InDelta(t, 0.29, Distribution{Low: -0.5, High: 0.5}.StandardDeviation().MM(), 0.002)
	// G.6.1, table G.1: a normal error keeps within one, two and three deviations
	// with 68.27, 95.45 and 99.73 %.
	one := Distribution{SD: 1}
	for k, percent := range []float64{68.27, 95.45, 99.73} {
		z := Length(k + 1)
		assert.InDelta(t, percent/100, one.Below(z)-one.Below(-z), 5e-5)
	}
}

// The mean of the largest of n standard normal values is half the mean range,
// d2 in tables for control charts: 1.128, 1.693, 2.059, 2.326 (ISO 7870-2, from
// memory). For two and three it is 1/sqrt(pi) and 1.5/sqrt(pi), the variance of
// two 1 - 1/pi.
func TestLargest(t *testing.T) {
	for n, d2 := range map[int]float64{2: 1.128, 3: 1.693, 4: 2.059, 5: 2.326} {
		all := make([]Distribution, n)
		for i := range all {
			all[i].SD = 1
		}
		assert.InDelta(t, d2/2, largest(all).Mean.MM(), 5e-4, "%d", n)
		assert.InDelta(t, -d2/2*3, smallest(n, 3).Mean.MM(), 2e-3)
		assert.InDelta(t, 3*largest(all).SD.MM(), smallest(n, 3).SD.MM(), 1e-3)
	}
	assert.InDelta(t, 1/math.Sqrt(math.Pi), largest([]Distribution{{SD: 1}, {SD: 1}}).Mean.MM(), 1e-5)
	assert.InDelta(t, math.Sqrt(1-1/math.Pi), largest([]Distribution{{SD: 1}, {SD: 1}}).SD.MM(), 5e-4)
	assert.InDelta(t, 1.5/math.Sqrt(math.Pi), largest([]Distribution{{SD: 1}, {SD: 1}, {SD: 1}}).Mean.MM(), 1e-5)
	// One that stands out is the largest by itself.
	far := largest([]Distribution{{Mean: 10, SD: 0.3}, {SD: 0.3}})
	assert.InDelta(t, 10, far.Mean.MM(), 1e-3)
	assert.InDelta(t, 0.3, far.SD.MM(), 1e-3)
	assert.Equal(t, Distribution{Mean: 3}, largest([]Distribution{{Mean: 3}, {Mean: 3}}))
}

// The distribution is that of a normal and a flat error added: held against
// adding them up piece by piece.
func TestDistributionIsASum(t *testing.T) {
	for _, d := range []Distribution{{Mean: 1, SD: 0.3, Low: -0.7, High: 0.6}, {SD: 1, Low: -0.01, High: 0.01}, {Mean: 2, SD: 0.05, High: 3}} {
		for _, x := range []Length{-1, 0, 0.25, 0.9, 1.4, 2.5, 4} {
			const parts = 20000
			var below, density float64
			for i := range parts {
				at := d.Mean + d.Low + (d.High-d.Low)*(Length(i)+0.5)/parts
				z := float64((x - at) / d.SD)
				below += 0.5 * math.Erfc(-z/math.Sqrt2) / parts
				density += math.Exp(-z*z/2) / math.Sqrt(2*math.Pi) / d.SD.MM() / parts
			}
			assert.InDelta(t, below, d.Below(x), 1e-6, "%v at %v", d, x)
			assert.InDelta(t, density, d.Density(x), 1e-5, "%v at %v", d, x)
		}
		for _, part := range []float64{0.02, 0.5, 0.98} {
			assert.InDelta(t, part, d.Below(d.Under(part)), 1e-6)
		}
	}
	certain := Distribution{Mean: 1}
	assert.Equal(t, 0.0, certain.Below(1))
	assert.Equal(t, 1.0, certain.Below(1.001))
	assert.InDelta(t, 0.25, Distribution{Low: 0, High: 4}.Below(1), 1e-12)
}
