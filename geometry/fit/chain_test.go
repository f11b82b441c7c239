package fit_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/geometry/fit"
	"forel/geometry/job"
	"forel/geometry/plan"
)

// A tolerance stack as textbooks of dimensional analysis have it (from memory;
// the arithmetic can be done by hand): nine plates of 0.100 +/- 0.003 make
// 0.900, at worst +/- 0.027, by root-sum-square +/- 0.009. In 0.930 they leave
// 0.030, which is 6.67 deviations from nothing at all.
func TestNinePlates(t *testing.T) {
	c := plan.Chain{
		Dimensions: []plan.Dimension{{Name: "height"}},
		Gaps:       []plan.Gap{{Dimension: "height", Decides: true, Loose: 1}},
		Links:      []plan.Link{{Name: "frame", Length: 0.930}},
		Left: func(v []Length) []Length {
			gap := v[0]
			for _, l := range v[1:] {
				gap -= l
			}
			return []Length{gap}
		},
	}
	for range 9 {
		c.Links = append(c.Links, plan.Link{Name: "plate", Length: 0.100, Varies: &plan.Variation{Name: "a plate", Low: -0.003, High: 0.003}})
	}
	c.With = func([]job.Change) plan.Chain { return c }
	r := fit.Of(plan.Plan{Chain: c})
	require.Len(t, r.Gaps, 1)
	g := r.Gaps[0]
	for _, l := range g.Chain[1:] {
		assert.InDelta(t, -1, l.Counts, 1e-9)
	}
	assert.InDelta(t, 0.030, g.Drawn.MM(), 1e-12)
	assert.InDelta(t, 0.003, g.Low.MM(), 1e-9)
	assert.InDelta(t, 0.057, g.High.MM(), 1e-9)
	assert.InDelta(t, 0.009, 2*g.Distribution.StandardDeviation().MM(), 1e-9) // plus or minus is two deviations
	assert.InDelta(t, 6.67, float64(g.Drawn/g.Distribution.StandardDeviation()), 0.01)
}
