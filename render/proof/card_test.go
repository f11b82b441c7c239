package proof

import (
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/geometry"
	"forel/geometry/onepiece"
	"forel/geometry/slipcase"
	"forel/paper"
	"forel/render/record"
	"forel/render/typeset"
)

// cardCase gives a case of card by the allowances that Cornell University
// Library publishes (Conservation manual guide 11A, 1999), in card that takes
// no room: its cavity is the book, 5 mm higher.
func cardCase(t *testing.T, height, width, thickness, card slipcase.Length) onepiece.Case {
	j := onepiece.DefaultJob()
	j.Title = "Net mending"
	j.Book = slipcase.Book{Height: slipcase.Readings{height}, Width: slipcase.Readings{width}, Thickness: slipcase.Readings{thickness}}
	j.Card.Thickness = card
	j.Clearance = slipcase.Clearance{Height: 5}
	c, err := onepiece.Make(j)
	require.NoError(t, err)
	return c
}

func TestCardReport(t *testing.T) {
	c := cardCase(t, 203, 130, 22, 1.5)
	text := string(CardText(c, geometry.ToTenthMM))
	assert.Contains(t, text, "sound: ")
	assert.Contains(t, text, "room inside, as folded: 208.0 mm high, 130.0 mm deep, 22.0 mm thick")
	assert.Regexp(t, `outside of the head wall +inner flap, (spine flap beside outer flap|outer flap beside spine flap)`, text)

	data, err := CardJSON(c)
	require.NoError(t, err)
	var got struct {
		Sound   bool
		Cavity  map[string]float64 `json:"cavity_mm"`
		Outside map[string]float64 `json:"outside_mm"`
		Walls   []struct{ Layers [][]string }
	}
	require.NoError(t, json.Unmarshal(data, &got))
	assert.True(t, got.Sound)
	assert.Equal(t, map[string]float64{"height": 208, "width": 130, "thickness": 22}, got.Cavity)
	// Two layers at head and tail, one elsewhere, none at the mouth.
	assert.Equal(t, map[string]float64{"height": 208 + 4*1.5, "width": 130 + 1.5, "thickness": 22 + 2*1.5}, got.Outside)
	assert.Len(t, got.Walls, 5)
}

// No words of the picture lie on each other or off the page.
func TestCardPicture(t *testing.T) {
	for _, sheet := range []string{"A4", "letter"} {
		for _, size := range [][4]slipcase.Length{{203, 130, 22, 1.5}, {148, 105, 3, 0.4}, {400, 290, 150, 3}, {60, 140, 90, 2}} {
			setup := paper.DefaultSetup()
			var err error
			setup.Sheet, err = paper.ParseSheet(sheet, geometry.MM)
			require.NoError(t, err)
			var r record.Surface
			drawCard(&r, cardCase(t, size[0], size[1], size[2], size[3]), Options{Setup: setup, Round: geometry.ToTenthMM})
			page := setup.Printable(false)
			require.NotEmpty(t, r.Texts)
			for i, a := range r.Texts {
				assert.True(t, page.Contains(typeset.Box(a.Text)), "%v: %q leaves the page", size, a.String)
				for _, b := range r.Texts[i+1:] {
					assert.False(t, typeset.Box(a.Text).Overlaps(typeset.Box(b.Text)), "%v: %q on %q", size, a.String, b.String)
				}
				for _, s := range r.Strokes {
					assert.Empty(t, s.Path.Clip(typeset.Box(a.Text), 0.1), "%v: a line through %q", size, a.String)
				}
			}
		}
	}
}
