package stock_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/geometry"
	"forel/paper/stock"
)

// ISO 216: A0 has an area of one square metre, B0 is 1000 x 1414; each size is
// half the last across its longer side, rounded down; the sides are as 1 to the
// square root of 2.
func TestISO216(t *testing.T) {
	for _, series := range []struct {
		letter string
		sizes  int
	}{{"A", 5}, {"B", 4}} {
		var w, h geometry.Length
		for n := range series.sizes {
			name := fmt.Sprintf("%s%d", series.letter, n)
			got, err := stock.ParseSize(name, geometry.MM)
			require.NoError(t, err)
			assert.InDelta(t, math.Sqrt2, float64(got.Height/got.Width), 0.005, name)
			if n > 0 {
				assert.Equal(t, geometry.Length(math.Floor(float64(h/2))), got.Width, name)
				assert.Equal(t, w, got.Height, name)
			}
			w, h = got.Width, got.Height
		}
	}
	a0, err := stock.ParseSize("a0", geometry.IN)
	require.NoError(t, err)
	assert.InDelta(t, 1e6, float64(a0.Width)*float64(a0.Height), 1000)
}

func TestParseSize(t *testing.T) {
	for text, want := range map[string][2]geometry.Length{
		"26 x 38 in":         {660.4, 965.2}, // 1 in is 25.4 mm
		"26 in x 38 in":      {660.4, 965.2},
		"38×26 in":           {965.2, 660.4}, // the order is kept: it tells the grain
		"700 X 1000":         {700, 1000},
		"70 x 100 cm":        {700, 1000},
		"25 1/2 in x 700 mm": {647.7, 700},
	} {
		s, err := stock.ParseSize(text, geometry.MM)
		require.NoError(t, err, text)
		assert.InDelta(t, want[0].MM(), s.Width.MM(), 1e-9, text)
		assert.InDelta(t, want[1].MM(), s.Height.MM(), 1e-9, text)
	}
	for _, text := range []string{"", "A9", "A1 x A2", "26", "26 x", "1 x 2 x 3 in", "-700 x 1000", "99 x 1000", "700 x 5001", "700 x nan"} {
		_, err := stock.ParseSize(text, geometry.MM)
		assert.Error(t, err, text)
	}
}

// Every usual size says where it comes from, takes pieces, and is the same
// each time.
func TestUsual(t *testing.T) {
	for _, m := range []geometry.Material{geometry.Board, geometry.Card, geometry.Corrugated, geometry.Lining, geometry.Cloth, geometry.Paper} {
		for _, u := range []geometry.Unit{geometry.MM, geometry.IN} {
			sizes := stock.Usual(m, u)
			require.NotEmpty(t, sizes)
			for _, s := range sizes {
				assert.NotEmpty(t, s.Source)
				assert.Equal(t, m, s.Material)
				assert.NoError(t, s.Check())
				assert.Equal(t, m == geometry.Cloth, s.Roll, "cloth is on a roll, all else in sheets")
				assert.True(t, s.Takes(100, 50, geometry.GrainWidth))
			}
		}
	}
}

func TestTakesFollowsTheGrain(t *testing.T) {
	s := stock.Stock{Width: 600, Height: 900, Grain: geometry.GrainHeight, Trim: 10}
	assert.True(t, s.Takes(580, 880, geometry.GrainHeight))
	assert.False(t, s.Takes(580.1, 880, geometry.GrainHeight))
	assert.False(t, s.Takes(880, 580, geometry.GrainHeight), "it would have to be turned")
	assert.True(t, s.Takes(880, 580, geometry.GrainWidth))
	assert.False(t, s.Takes(580, 880, geometry.GrainWidth))
	s.Grain = stock.NoGrain
	assert.True(t, s.Takes(880, 580, geometry.GrainHeight))
	roll := stock.Stock{Roll: true, Width: 600, Grain: geometry.GrainHeight}
	assert.True(t, roll.Takes(600, 9000, geometry.GrainHeight))
	assert.False(t, roll.Takes(601, 10, geometry.GrainHeight))
}

// One square metre of 2 mm at 625 kg/m³ is 1250 g.
func TestGrams(t *testing.T) {
	const squareMetre = 1e6
	got, _ := stock.Stock{Material: geometry.Board, Density: 625}.Grams(squareMetre, 2)
	assert.InDelta(t, 1250, got, 1e-9)
	got, _ = stock.Stock{Material: geometry.Board, Grammage: 1300}.Grams(squareMetre/2, 9)
	assert.InDelta(t, 650, got, 1e-9)
	_, source := stock.Stock{Material: geometry.Board}.Grams(squareMetre, 2)
	assert.Contains(t, source, "weigh a sheet")
}

// Corrugated board is mostly air: its thickness tells nothing of its weight.
func TestGramsOfCorrugatedBoard(t *testing.T) {
	const squareMetre = 1e6
	s := stock.Stock{Material: geometry.Corrugated}
	for _, thickness := range []geometry.Length{1.5, 4} {
		got, source := s.Grams(squareMetre, thickness)
		assert.InDelta(t, 450, got, 1e-9)
		assert.Contains(t, source, "usual grammage")
	}
	got, source := s.OrWeighs(520).Grams(squareMetre, 3)
	assert.InDelta(t, 520, got, 1e-9)
	assert.Equal(t, "the grammage given", source)
	s.Density = 150 // of 3 mm: 450 g/m²
	got, _ = s.OrWeighs(520).Grams(squareMetre, 3)
	assert.InDelta(t, 450, got, 1e-9, "the stock's own goes first")
}

func TestFlutesOfStock(t *testing.T) {
	s := stock.Usual(geometry.Corrugated, geometry.IN)[0]
	assert.Equal(t, "flutes along 38 in", s.Along())
	s.Grain = stock.NoGrain
	assert.Equal(t, "no flutes", s.Along())
}

func ExampleStock_Size() {
	size, _ := stock.ParseSize("26 x 38 in", geometry.MM)
	s := stock.Stock{Width: size.Width, Height: size.Height, Grain: geometry.GrainHeight}
	fmt.Println(s.Size(), "-", s.Along())
	fmt.Println(stock.Usual(geometry.Board, geometry.MM)[0].Size())
	// Output:
	// 26 × 38 in - grain along 38 in
	// A1, 594 × 841 mm
}
