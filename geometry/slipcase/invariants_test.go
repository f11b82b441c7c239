package slipcase_test

import (
	"errors"
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/slipcase"
)

// checker tells what is wrong with the patterns of a job.
type checker func(slipcase.Job, pieces) error

// invariants hold for every job that is accepted.
var invariants = map[string]checker{
	"sizes":             checkSizes,
	"common strip":      checkCommonStrip,
	"outlines":          checkOutlines,
	"drawn once":        checkDrawnOnce,
	"flaps":             checkFlaps,
	"margins":           checkMargins,
	"wedges":            checkWedges,
	"spine cloth folds": checkSpineFolds,
	"slits":             checkSlits,
	"middle tab":        checkMiddleTab,
	"side tabs":         checkSideTabs,
	"end cloth folds":   checkEndFolds,
	"turn-in":           checkTurnIn,
	"paper laps cloth":  checkPaperLapsCloth,
	"side paper folds":  checkPaperFolds,
	"bare strip":        checkBareStrip,
}

// checkAll tells every invariant that does not hold.
func checkAll(c slipcase.Case) error {
	var wrong []error
	ps := piecesOf(c)
	for name, check := range invariants {
		if err := check(c.Job, ps); err != nil {
			wrong = append(wrong, fmt.Errorf("%s: %w", name, err))
		}
	}
	return errors.Join(wrong...)
}

func TestInvariants(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := goodJobs().Draw(t, "case").Case
		require.NoError(t, checkAll(c), "%+v", c.Job)
	})
}

// The thinnest and the thickest book of common practice, and the extremes of
// what is accepted, with every setting at its default.
func TestInvariantsAtTheExtremes(t *testing.T) {
	for _, thickness := range []float64{1, 3, 150, 300} {
		for _, size := range [][2]float64{{40, 20}, {220, 150}, {700, 700}} {
			t.Run(fmt.Sprint(size, " ", thickness), func(t *testing.T) {
				j := slipcase.DefaultJob(geometry.MM)
				j.Books = []job.Book{{Height: readings(size[0]), Width: readings(size[1]), Thickness: readings(thickness)}}
				c, err := mended(j)
				require.NoError(t, err)
				require.NoError(t, checkAll(c))
			})
		}
	}
}
