package foldup_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"forel/geometry/foldup"
	"forel/geometry/plan/plantest"
	"forel/geometry/slipcase"
)

// Linings of 0.8 mm put in afterwards leave a case of which the tucks are as broad
// as its board is thick, but for nanometres: it is as sound as one of 0.79 mm.
func TestTucksAsBroadAsABoardIsThick(t *testing.T) {
	for _, thick := range []foldup.Length{0.79, 0.8 - 3.2e-6, 0.8 - 1e-7, 0.8, 0.8 + 2.1e-6, 0.81} {
		j := jobFor(220, 148, 1.4)
		j.Lining.Thickness, j.Lining.Order = thick, slipcase.LinedAfter
		_, err := plantest.Make[slipcase.Case](j)
		assert.NoError(t, err, "%v", float64(thick))
	}
}
