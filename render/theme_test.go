package render_test

import (
	"fmt"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"

	"forel/render"
)

// In black alone every kind of line is black, fine enough for no poor print to
// lose it, and told from each other by its dashes or by being twice as heavy, but for cuts inside
// an outline, which are cut as it is.
func TestBlackThemeTellsLinesApart(t *testing.T) {
	theme := render.BlackTheme()
	for i, a := range render.Layers {
		assert.Equal(t, render.Black, theme[a].Color, a)
		assert.GreaterOrEqual(t, theme[a].Width, render.Finest, a)
		for _, b := range render.Layers[:i] {
			heavy, light := max(theme[a].Width, theme[b].Width), min(theme[a].Width, theme[b].Width)
			if a == render.Cutting && b == render.InsideCuts {
				continue // both are cut, and no cut is dashed
			}
			assert.True(t, !slices.Equal(theme[a].Dash, theme[b].Dash) || heavy >= 2*light, "%s and %s", a, b)
		}
	}
}

// The finest line leaves a dot at 150 dots an inch wherever it falls: somewhere
// at least half of a dot is inked.
func TestFinestLineIsKept(t *testing.T) {
	const dot = 25.4 / 150
	for offset := 0.0; offset < 1; offset += 0.01 {
		kept := false
		from := offset * dot
		to := from + render.Finest.MM()
		for k := range 4 {
			a, b := max(from, float64(k)*dot), min(to, float64(k+1)*dot)
			kept = kept || (b-a)/dot >= 0.5
		}
		assert.True(t, kept, "offset %.2f", offset)
	}
}

func ExampleColor_InBlack() {
	fmt.Println(render.Blue.InBlack().Hex(), render.Grey.InBlack().Hex(), render.Color{R: 0xDD, G: 0xDD, B: 0xDD}.InBlack().Hex())
	// Output: #000000 #000000 #ffffff
}
