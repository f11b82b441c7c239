package templates_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/geometry"
	"forel/render/typeset"
)

// Every word of the finished file has its ink where it was meant to stand, be
// it set from its start, its middle or its end, level or turned: words kept
// apart on the drawing board are apart on the page.
func TestPDFWordsStandWhereTheyWereSet(t *testing.T) {
	const tolerance = 0.4 // mm, of ink beyond the box of its text
	meant := nearSquare.on("A4")
	v := view(t, meant.file())
	require.Equal(t, len(meant.pages), v.Pages)
	seen := 0
	for n, page := range meant.pages {
		for _, f := range v.phrases(n + 1) {
			if f.text == "" {
				continue
			}
			seen++
			ink := geometry.Bx(geometry.Length(f.lo.x), geometry.Length(f.lo.y), geometry.Length(f.hi.x), geometry.Length(f.hi.y))
			found := false
			for _, w := range page.Texts {
				if strings.Contains(w.String, f.text) && typeset.Box(w.Text).Grow(tolerance).Contains(ink) {
					found = true
				}
			}
			assert.True(t, found, "page %d: %q is at %.2f", n+1, f.text, ink)
		}
	}
	assert.Greater(t, seen, 200)
}

// The first page says that one side of a sheet is printed: on the other would be a
// template that the knife destroys.
func TestPDFFirstPageSaysOneSide(t *testing.T) {
	eachSheet(t, func(t *testing.T, _, _ float64, file []byte) {
		words := strings.Join(view(t, file).text(1), " ")
		assert.Contains(t, words, "Print on one side of the sheet only")
	})
}
