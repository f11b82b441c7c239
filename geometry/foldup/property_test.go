package foldup_test

import (
	"errors"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry/job"
	"forel/geometry/plan/plantest"
	"forel/geometry/slipcase"
)

// Invariants 2, 7 and 8: a job is either refused by its own check, by settings
// that a maker can change, until it is accepted; or it folds up without a
// fault. The proof never has to refuse what the check let pass, and the
// clearance it measures is the one that the formulas of the job give.
func TestEveryJobIsProvedOrRefusedWithAMend(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := everyJob().Draw(t, "job")
		if _, err := plantest.Make[slipcase.Case](j); err != nil {
			var refused job.Problems
			require.True(t, errors.As(err, &refused), "%T", err)
			for _, p := range refused {
				require.NotEqual(t, "proof", p.Key, "%+v", j)
			}
		}
		c, err := mended(j)
		require.NoError(t, err, "%+v", j)
		requireSound(t, c)
	})
}

func requireSound(t *rapid.T, c slipcase.Case) {
	got, want := c.Proof.Clearance, c.Stands.Mouth()
	require.Empty(t, c.Proof.Faults)
	hair := 1e-6
	if c.Job.Cloth.Stretch+c.Job.SidePaper.Stretch > 0 {
		hair = 0.006 // arcs are chords, up to 0.005 off the arc
	}
	for _, p := range c.Pieces {
		require.NoError(t, checkOutline(p, hair), "%+v", c.Job)
	}
	assert.InDelta(t, want.Height.MM(), got.MouthHeight.MM(), 1e-6, "height at the mouth, %+v", c.Job)
	assert.InDelta(t, want.Height.MM(), got.MouthCorners.MM(), 1e-6, "height in the corners, %+v", c.Job)
	assert.InDelta(t, want.Thickness.MM(), got.MouthThickness.MM(), 1e-6, "thickness at the mouth, %+v", c.Job)
	assert.InDelta(t, c.Job.Clearance.Height.MM(), got.BodyHeight.MM(), 1e-6, "height")
	assert.InDelta(t, c.Job.Clearance.Width.MM(), got.BodyWidth.MM(), 1e-6, "width")
	assert.InDelta(t, c.Job.Clearance.Thickness.MM(), got.BodyThickness.MM(), 1e-6, "thickness")
	assert.Positive(t, got.MouthThickness.MM())
	if c.Job.Covering != slipcase.SidesOnly {
		assert.Positive(t, got.MouthHeight.MM())
		assert.Positive(t, got.MouthCorners.MM(), "%+v", c.Job)
	}
}
