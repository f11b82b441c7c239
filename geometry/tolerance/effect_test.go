package tolerance

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
)

// What each effect says of mean and deviation comes out when errors are drawn
// one by one and the lengths are looked at (seeded; five standard errors).
func TestEffectsAgainstDrawnErrors(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 12))
	off := func(l Length) float64 { return r.NormFloat64() * l.MM() / 2 } // 19 of 20 within l
	least := func(n int, l Length) float64 {
		m := math.Inf(1)
		for range n {
			m = min(m, off(l))
		}
		return m
	}
	for name, c := range map[string]struct {
		effect Effect
		draw   func() float64
	}{
		"two edges, each its own way":                 {Symmetric(0.3, 2), func() float64 { return off(0.3) + off(0.3) }},
		"the smaller of two":                          {Smallest(0.4, 2), func() float64 { return least(2, 0.4) }},
		"the smallest of three":                       {Smallest(0.4, 3), func() float64 { return least(3, 0.4) }},
		"the smallest of six":                         {Smallest(0.4, 6), func() float64 { return least(6, 0.4) }},
		"the largest of three, that takes room twice": {Smallest(0.4, 3).Times(-1).Times(-2), func() float64 { return 2 * least(3, 0.4) }},
		"an edge that leans either way":               {Symmetric(0.3, 2).TakesRoom(), func() float64 { return -math.Abs(off(0.3) + off(0.3)) }},
		"two sides that bow":                          {Bows(0.5, 2), func() float64 { return -max(0, off(0.5)) - max(0, off(0.5)) }},
		"a board known by name, that counts twice": {Uniform(-0.3, 0.4).Times(-2),
			func() float64 { return -2 * (-0.3 + 0.7*r.Float64()) }},
		"a board that was measured":     {Normal(-0.1, 0.1).Times(-2), func() float64 { return -2 * off(0.1) }},
		"two errors after each other":   {Bows(0.5, 1).Plus(Smallest(0.4, 2)), func() float64 { return -max(0, off(0.5)) + least(2, 0.4) }},
		"what is reckoned with in full": {Takes(0.7), func() float64 { return -0.7 }},
		"a length that does not count":  {Smallest(0.4, 2).Times(0), func() float64 { return 0 }},
	} {
		const n = 100_000
		var mean, square float64
		for range n {
			v := c.draw()
			mean, square = mean+v/n, square+v*v/n
		}
		sd := math.Sqrt(max(0, square-mean*mean))
		assert.InDelta(t, mean, c.effect.Mean.MM(), 5*sd/math.Sqrt(n)+1e-6, name)
		assert.InDelta(t, sd, c.effect.SD.MM(), 5*sd/math.Sqrt(2*n)+1e-3, name)
		assert.LessOrEqual(t, c.effect.Low, c.effect.Mean, name)
		assert.GreaterOrEqual(t, c.effect.High, c.effect.Mean, name)
	}
}

// The worst case has every error at its end at once; a flat range is kept apart
// from what is normal.
func TestSum(t *testing.T) {
	d, low, high := Sum(2, []Effect{Symmetric(0.3, 1), Symmetric(0.4, 1), Takes(0.5), Uniform(-0.6, 0.2)})
	assert.InDelta(t, 2-0.3-0.4-0.5-0.6, low.MM(), 1e-12)
	assert.InDelta(t, 2+0.3+0.4+0.2, high.MM(), 1e-12)
	assert.InDelta(t, 1.5-0.2, d.Expected().MM(), 1e-12)
	assert.InDelta(t, 0.25, d.SD.MM(), 1e-12) // two deviations are 0.3 and 0.4: 0.5 together
	assert.InDelta(t, math.Hypot(0.25, 0.8/math.Sqrt(12)), d.StandardDeviation().MM(), 1e-12)
}

// The widest flat effect stays flat, and of two the sum has the mean and the
// deviation that adding them up has: the root of 3² and 1² twelfths.
func TestSumOfTwoFlat(t *testing.T) {
	d, low, high := Sum(5, []Effect{Uniform(-0.5, 0.5), Uniform(0, 3)})
	assert.Equal(t, []Length{0, 3}, []Length{d.Low, d.High})
	assert.InDelta(t, 6.5, d.Expected().MM(), 1e-9)
	assert.InDelta(t, math.Sqrt(10./12), d.StandardDeviation().MM(), 1e-9)
	assert.Equal(t, []Length{4.5, 8.5}, []Length{low, high})
}
