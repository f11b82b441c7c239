package pdf_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/image/font"
	"golang.org/x/image/font/opentype"
	"golang.org/x/image/math/fixed"

	"forel/geometry"
	"forel/render"
	"forel/render/pdf"
	"forel/render/pdf/pdftest"
	"forel/render/typeset"
)

// A letter in the finished file has all that it is made of: its ink reaches as far as
// the outline that the font library reads, accents and all.
func TestLettersAreWhole(t *testing.T) {
	const size, dpi = 200, 150
	parsed, err := opentype.Parse(typeset.Fallback.Data())
	require.NoError(t, err)
	face, err := opentype.NewFace(parsed, &opentype.FaceOptions{Size: size, DPI: 72, Hinting: font.HintingNone})
	require.NoError(t, err)
	letters := []rune("ếễộựǘẨỸșḝ×ǡȭЇΐԵծქשẫ")
	d := &pdf.Document{Title: "Letters"}
	for _, r := range letters {
		addPage(d, 150, 151)
		last(d).Text(render.Text{At: geometry.Pt(30, 100), String: string(r), Size: size, Color: render.Black})
	}
	doc := pdftest.Open(t, made(t, d))
	mm := func(i fixed.Int26_6) float64 { return float64(i) / 64 * 25.4 / 72 }
	for i, r := range letters {
		if runs := typeset.Runs(string(r), false); runs[0].Face != typeset.Fallback {
			continue // of the usual face
		}
		lo, hi, ok := doc.Ink(i+1, dpi)
		require.True(t, ok, "%c", r)
		ink, _, _ := face.GlyphBounds(r)
		const off = 0.4 // mm: two pixels and what is grey
		assert.InDelta(t, 30+mm(ink.Min.X), lo.X, off, "%c", r)
		assert.InDelta(t, 30+mm(ink.Max.X), hi.X, off, "%c", r)
		assert.InDelta(t, 100+mm(ink.Min.Y), lo.Y, off, "%c", r)
		assert.InDelta(t, 100+mm(ink.Max.Y), hi.Y, off, "%c", r)
	}
}
