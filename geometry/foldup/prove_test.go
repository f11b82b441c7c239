package foldup_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/plan/plantest"
	"forel/geometry/slipcase"
)

// jobFor gives a default job for a book.
func jobFor(height, width, thickness slipcase.Length) slipcase.Job {
	j := slipcase.DefaultJob(geometry.MM)
	j.Books = []job.Book{{Height: job.Readings{height}, Width: job.Readings{width}, Thickness: job.Readings{thickness}}}
	return j
}

// Invariant 7, by hand for the defaults: one cloth is turned in at head and
// tail each, in the corners too, where side tabs end; cloth and paper on each side:
// 2 - 2*0.35, 2 - 2*(0.35+0.15).
func TestClearanceOfOrdinaryBooks(t *testing.T) {
	for _, size := range [][3]slipcase.Length{{221.5, 148.5, 32}, {400, 290, 150}} {
		t.Run(fmt.Sprint(size), func(t *testing.T) {
			j := jobFor(size[0], size[1], size[2])
			c, err := plantest.Make[slipcase.Case](j)
			require.NoError(t, err)
			r := slipcase.Prove(c.Pieces, j)
			assert.Empty(t, r.Faults)
			assert.InDelta(t, 2, r.Clearance.BodyHeight.MM(), 1e-9)
			assert.InDelta(t, 1, r.Clearance.BodyWidth.MM(), 1e-9)
			assert.InDelta(t, 2, r.Clearance.BodyThickness.MM(), 1e-9)
			assert.InDelta(t, 1.3, r.Clearance.MouthHeight.MM(), 1e-9)
			assert.InDelta(t, 1.3, r.Clearance.MouthCorners.MM(), 1e-9)
			assert.InDelta(t, 1, r.Clearance.MouthThickness.MM(), 1e-9)
		})
	}
}

func BenchmarkProve(b *testing.B) {
	j := jobFor(221.5, 148.5, 32)
	c, err := plantest.Make[slipcase.Case](j)
	require.NoError(b, err)
	b.ReportAllocs()
	for b.Loop() {
		slipcase.Prove(c.Pieces, j)
	}
}
