package typeset_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/opentype"
	"golang.org/x/image/math/fixed"

	"forel/geometry"
	"forel/render"
	"forel/render/typeset"
)

// letters are those that names, sizes and sentences are set in.
const letters = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789 .,:;-–→×½¼¾⅛⅜⅝⅞%()\"'…"

// The box of a text, by which words are kept apart, holds its ink: the font's
// own outlines, read by the font library at a hundred times the size.
func TestBoxHoldsTheInk(t *testing.T) {
	const zoom = 100
	for _, weight := range []struct {
		bold bool
		ttf  []byte
	}{{false, goregular.TTF}, {true, gobold.TTF}} {
		parsed, err := opentype.Parse(weight.ttf)
		require.NoError(t, err)
		above, below := "", ""
		var most, least float64
		for _, size := range []render.Points{render.TitleSize, render.HeadSize, render.BodySize, render.NoteSize, render.SmallSize} {
			face, err := opentype.NewFace(parsed, &opentype.FaceOptions{Size: float64(size) * zoom, DPI: 72})
			require.NoError(t, err)
			for _, r := range letters {
				ink, advance, ok := face.GlyphBounds(r)
				require.True(t, ok, "%q", r)
				mm := func(i fixed.Int26_6) float64 { return float64(i) / 64 / zoom * 25.4 / 72 }
				box := typeset.Box(render.Text{String: string(r), Size: size, Bold: weight.bold})
				if over := box.Min.Y.MM() - mm(ink.Min.Y); over > most {
					most, above = over, fmt.Sprintf("%q at %v pt", r, size)
				}
				if under := mm(ink.Max.Y) - box.Max.Y.MM(); under > least {
					least, below = under, fmt.Sprintf("%q at %v pt", r, size)
				}
				assert.InDelta(t, mm(advance), box.Width().MM(), 0.01, "width of %q at %v pt, bold %v", r, size, weight.bold)
			}
			require.NoError(t, face.Close())
		}
		assert.LessOrEqual(t, most, 0.01, "mm that %s, bold %v, rises above its box", above, weight.bold)
		assert.LessOrEqual(t, least, 0.01, "mm that %s, bold %v, hangs below its box", below, weight.bold)
	}
}

// Turned text reads upward: its line runs up from where it starts, and what is
// above the baseline lies on the left.
func TestBoxOfTurnedText(t *testing.T) {
	for _, align := range []render.Align{render.Start, render.Middle, render.End} {
		text := render.Text{At: geometry.Pt(50, 70), String: "head edge", Size: render.BodySize, Align: align}
		level := typeset.Box(text)
		text.Turned = true
		turned := typeset.Box(text)
		// A quarter turn counterclockwise, Y downward: (x, y) goes to (y, -x).
		at := text.At
		assert.InDelta(t, (level.Min.Y - at.Y).MM(), (turned.Min.X - at.X).MM(), 1e-9)
		assert.InDelta(t, (level.Max.Y - at.Y).MM(), (turned.Max.X - at.X).MM(), 1e-9)
		assert.InDelta(t, (at.X - level.Max.X).MM(), (turned.Min.Y - at.Y).MM(), 1e-9)
		assert.InDelta(t, (at.X - level.Min.X).MM(), (turned.Max.Y - at.Y).MM(), 1e-9)
	}
}
