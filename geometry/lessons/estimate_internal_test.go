package lessons

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// Five values by hand: mean 3, sum of squares 10. With four degrees of freedom Student's t
// is 2.776 at 97.5 %, chi-squared 0.484 at 2.5 % and 11.143 at 97.5 % (printed tables of
// critical values; from memory).
func TestEstimateByTables(t *testing.T) {
	e := estimate([]float64{1, 2, 3, 4, 5})
	assert.Equal(t, 5, e.N)
	assert.InDelta(t, 3, e.Mean, 1e-12)
	assert.InDelta(t, 3-2.776*1.58114/2.23607, e.MeanLow, 1e-3)
	assert.InDelta(t, 3+2.776*1.58114/2.23607, e.MeanHigh, 1e-3)
	assert.InDelta(t, 1.58114, e.SD, 1e-5)
	assert.InDelta(t, 0.9473, e.SDLow, 1e-3)
	assert.InDelta(t, 4.545, e.SDHigh, 5e-3)
	assert.True(t, e.Biased())
	assert.InDelta(t, 0, e.less(100).SD, 1e-12)
	assert.InDelta(t, 1.5, e.less(0.25).SD, 1e-5)
}
