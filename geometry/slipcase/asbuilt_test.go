package slipcase_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/slipcase"
)

// The covering of a carcass as built is that of a job whose plan comes to the same
// carcass; boards and linings stay those of the plan.
func TestCoveringIsOfTheCarcassThatStands(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		mm := func(lo, hi int, name string) slipcase.Length {
			return slipcase.Length(rapid.IntRange(lo, hi).Draw(t, name)) / 10
		}
		j := slipcase.DefaultJob(geometry.MM)
		j.Covering = rapid.SampledFrom([]string{slipcase.ClothAndPaper, slipcase.AllCloth, slipcase.AllPaper, slipcase.SidesOnly}).Draw(t, "covering")
		j.Books = []job.Book{{Height: job.Readings{mm(1200, 3000, "H")}, Width: job.Readings{mm(900, 2000, "W")}, Thickness: job.Readings{mm(100, 600, "T")}}}
		built := j
		k := j
		k.Clearance.Height += mm(0, 30, "higher")
		k.Clearance.Width += mm(-9, 30, "deeper")
		k.Clearance.Thickness += mm(0, 30, "thicker")
		out := k.Outside()
		built.AsBuilt = job.AsBuilt{Height: job.Readings{out.Height - 1, out.Height}, Width: job.Readings{out.Width}, Thickness: job.Readings{out.Thickness}}
		plan, err := slipcase.Make(j)
		require.NoError(t, err)
		want, err := slipcase.Make(k)
		require.NoError(t, err)
		got, err := slipcase.Make(built)
		require.NoError(t, err)
		assert.True(t, got.Proof.Sound())
		for i, p := range got.Pieces {
			other := want.Pieces[i]
			if p.Material == geometry.Board || p.Material == geometry.Lining {
				other = plan.Pieces[i]
			}
			w, h := p.Size()
			ow, oh := other.Size()
			assert.InDelta(t, ow.MM(), w.MM(), 1e-6, p.Name)
			assert.InDelta(t, oh.MM(), h.MM(), 1e-6, p.Name)
		}
	})
}
