package fit_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/geometry/fit"
	"forel/geometry/job"
	"forel/geometry/plan/plantest"
	"forel/geometry/slipcase"
)

// Doing what a mend says gives the chance it promised.
func TestMendsKeepTheirWord(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := cases().Draw(t, "case")
		for _, m := range fit.Of(c.Plan()).Mends {
			if len(m.Sets) == 0 {
				continue
			}
			j := c.Job
			set(t, &j, m.Sets)
			again, err := plantest.Make[slipcase.Case](j)
			if err != nil {
				continue // more clearance can ask for other changes: a larger overlap, say
			}
			r := fit.Of(again.Plan())
			assert.InDelta(t, m.Chance.Tight, r.Settled.Tight, 1e-9, "%v", m.Sets)
			assert.InDelta(t, m.Chance.Loose, r.Settled.Loose, 1e-9, "%v", m.Sets)
		}
	})
}

// set does what a mend says.
func set(t *rapid.T, j *slipcase.Job, sets []job.Change) {
	for _, s := range sets {
		switch at, _ := j.Settings().Find(s.Key); {
		case at.Length != nil:
			*at.Length = s.Value
		case at.Word != nil:
			*at.Word = s.Word
		default:
			t.Fatalf("no key %s", s.Key)
		}
	}
}

// More clearance is advised that does, and the least step less of it does not.
func TestClearanceThatWouldDo(t *testing.T) {
	for unit, step := range map[geometry.Unit]Length{geometry.MM: 0.1, geometry.IN: geometry.Inch / 32} {
		j := of(221, 148, 32)
		j.Unit = unit
		j.Clearance.Height, j.Clearance.Width, j.Clearance.Thickness = 2.4, 2, 1.13 // tight in thickness only
		j.Board.Thickness, j.Board.Known = 1.93, job.KnownMeasured
		r := fit.Of(made(t, j).Plan())
		require.Greater(t, r.Settled.Tight, fit.Once)
		found := false
		for _, m := range r.Mends {
			if len(m.Sets) != 1 || m.Sets[0].Key != "clearance.thickness" {
				continue
			}
			found = true
			require.True(t, m.Chance.Enough())
			steps := float64(m.Sets[0].Value / step)
			assert.InDelta(t, math.Round(steps), steps, 1e-9, "a length a maker can set")
			for by, worse := range map[Length]bool{0: false, -step: true} {
				j.Clearance.Thickness = m.Sets[0].Value + by
				assert.Equal(t, worse, fit.Of(made(t, j).Plan()).Settled.Tight > fit.Once, "%v", j.Clearance.Thickness)
			}
		}
		assert.True(t, found)
	}
}

// Too much clearance is too loose, and less is advised.
func TestTooLoose(t *testing.T) {
	j := of(221, 148, 32)
	j.Clearance.Height, j.Clearance.Thickness, j.Board.Known = 6, 5, job.KnownMeasured
	r := fit.Of(made(t, j).Plan())
	require.Greater(t, r.Settled.Loose, 0.9)
	for _, m := range r.Mends {
		if m.Advised {
			for _, s := range m.Sets {
				assert.Less(t, s.Value, Length(5))
			}
			assert.LessOrEqual(t, m.Chance.Loose, fit.Once)
			return
		}
	}
	t.Fatal("nothing is advised")
}

// Whatever the job, what is listed makes more cases snug, by half a percent at least,
// and a clearance is changed only when the board was measured.
func TestAdviceIsInOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := cases().Draw(t, "case")
		r := fit.Of(c.Plan())
		measured := c.Job.Board.Known == job.KnownMeasured || c.Job.Uncertainty.Board > 0
		advised := 0
		for i, m := range r.Mends {
			assert.GreaterOrEqual(t, m.Chance.Snug, r.Settled.Snug+0.005, "%v", m.What)
			sets := map[string]bool{}
			for _, s := range m.Sets {
				sets[s.Key] = true
			}
			roomier := sets["clearance.height"] || sets["clearance.width"] || sets["clearance.thickness"]
			if roomier {
				assert.True(t, measured || sets["board.known"], "%v", m.What)
				assert.False(t, r.Settled.Enough())
			}
			for _, before := range r.Mends[:i] {
				assert.False(t, before.Chance.Enough() && roomier, "less effort would do: %v", before.What)
			}
			if m.Advised {
				advised++
			}
		}
		assert.LessOrEqual(t, advised, 1)
	})
}
