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

// Seen flat from outside, every wall is closed but for the reliefs, head and
// tail are two layers, and what lies outermost there is spine flap and outer flap.
func TestCardWalls(t *testing.T) {
	c := cardCase(t, 203, 130, 22, 1.5)
	b := newCardBook(c, Options{Setup: paper.DefaultSetup(), Round: geometry.ToTenthMM})
	require.Len(t, b.faces, 5)
	sizes := map[geometry.Face][2]float64{ // 22 + 2 x 1.5, 208 + 4 x 1.5, 130 + 1.5
		geometry.LeftOutside: {131.5, 214}, geometry.RightOutside: {131.5, 214}, geometry.SpineOutside: {25, 214},
		geometry.HeadOutside: {25, 131.5}, geometry.TailOutside: {25, 131.5},
	}
	for _, f := range b.faces {
		want := sizes[f.Face]
		assert.InDeltaSlice(t, want[:], []float64{f.Extent.Width().MM(), f.Extent.Height().MM()}, 1e-9, f.Face)
		if f.Face != geometry.HeadOutside && f.Face != geometry.TailOutside {
			assert.Equal(t, 1, f.deepest, f.Face)
			assert.Greater(t, f.covered, 90., f.Face)
			continue
		}
		assert.Equal(t, 2, f.deepest, f.Face)
		assert.Equal(t, "inner flap", f.layers[0].Piece)
		assert.ElementsMatch(t, []string{"inner flap", "spine flap", "outer flap"}, f.pieces())
		assert.InDelta(t, 3, f.Stack.MM(), 1e-9)
		assert.Greater(t, f.covered, 90., f.Face)
	}
	// The spine flap lies at the spine, the outer flap reaches the mouth.
	head, _ := faceOf(b.faces, geometry.HeadOutside)
	for _, l := range head.layers {
		y := l.Shape.Bounds()
		switch l.Piece {
		case "spine flap":
			assert.Less(t, y.Center().Y.MM(), 131.5/2)
		case "outer flap":
			assert.InDelta(t, 131.5, y.Max.Y.MM(), 2)
		}
	}
}

// No words of the picture lie on each other or off the page.
func TestCardPicture(t *testing.T) {
	for _, sheet := range []string{"A4", "letter"} {
		for _, size := range [][4]slipcase.Length{{203, 130, 22, 1.5}, {148, 105, 3, 0.4}, {400, 290, 150, 3}, {60, 140, 90, 2}} {
			setup := paper.DefaultSetup()
			var err error
			setup.Sheet, err = paper.ParseSheet(sheet, geometry.MM)
			require.NoError(t, err)
			drawing := CardDrawing{cardCase(t, size[0], size[1], size[2], size[3]), Options{Setup: setup, Round: geometry.ToTenthMM}}.draw()
			require.Equal(t, 2, drawing.Pages())
			for n := range drawing.Pages() {
				var r record.Surface
				drawing.Page(n, &r)
				page := setup.Printable(false)
				require.NotEmpty(t, r.Texts)
				for i, a := range r.Texts {
					assert.True(t, page.Contains(typeset.Box(a.Text)), "%v: %q leaves the page", size, a.String)
					for _, b := range r.Texts[i+1:] {
						assert.False(t, typeset.Box(a.Text).Overlaps(typeset.Box(b.Text)), "%v: %q on %q", size, a.String, b.String)
					}
					for _, s := range r.Strokes {
						if n == 0 || s.Stroke.Width >= 0.4 { // hatching of what lies beneath goes on under a word
							assert.Empty(t, s.Path.Clip(typeset.Box(a.Text), 0.1), "%v: a line through %q", size, a.String)
						}
					}
				}
			}
		}
	}
}
