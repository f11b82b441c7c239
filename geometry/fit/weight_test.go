package fit_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/geometry"
	"forel/geometry/fit"
)

// A case of board alone that weighs a milligram a square millimetre and
// millimetre: its boards by the design's table, sides W + cW + s by H + cH + 2s,
// spine wall H + cH + 2s by T + cT, head and tail wall W + cW by T + cT.
func TestWeightOfTheBoards(t *testing.T) {
	j := of(220, 150, 30) // clearances 2, 1, 2; board 2; lining 0.15
	j.Books[0].Weight = 1400
	c := made(t, j)
	w := fit.Of(c.Plan()).Weighed(func(m geometry.Material, area float64, thickness Length) (float64, string) {
		if m != geometry.Board {
			return 0, ""
		}
		return area * thickness.MM() / 1000, "a scale"
	}).Weight
	require.NotNil(t, w)
	s := 2.15
	high, deep, thick := 222+2*s, 151+s, 32.
	area := 2*deep*high + high*thick + 2*151*thick
	assert.InDelta(t, area*2/1000, w.Case, 1e-6)
	assert.InDelta(t, 1.4*9.80665, w.Newtons, 1e-9)
	assert.InDelta(t, 2*151+32, w.Seam.MM(), 1e-9)
	// The lining ends flush with the boards: as much of it as of them.
	for _, p := range w.Parts {
		if p.Material == geometry.Lining {
			assert.InDelta(t, area, p.Area, 1e-6)
		}
	}
}

// The rule: 2 mm of board carries up to 1.5 kg (common practice, no source).
func TestHeavyBookInThinBoard(t *testing.T) {
	for _, c := range []struct {
		board Length
		grams float64
		thin  bool
	}{{2, 0, false}, {2, 1500, false}, {2, 1600, true}, {1.5, 450, false}, {1.5, 550, true}, {3, 5000, false}, {3, 7000, true}} {
		j := of(220, 150, 30)
		j.Board.Thickness, j.Books[0].Weight = c.board, c.grams
		k := made(t, j)
		w := fit.Of(k.Plan()).Weighed(func(geometry.Material, float64, Length) (float64, string) { return 1, "" }).Weight
		_, thin := w.Thin()
		assert.Equal(t, c.thin, thin, "%v", c)
	}
}
