package typeset_test

import (
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/render"
	"forel/render/typeset"
)

// Broken text has all its letters in their order, no line longer than the width,
// and no word in two that would fit on a line.
func TestBreakOfAnyText(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringOfN(rapid.RuneFrom([]rune("  aeiWM–é港日\u0301")), 0, 80, -1).Draw(t, "text")
		width := geometry.Length(rapid.Float64Range(0.5, 60).Draw(t, "width"))
		bold := rapid.Bool().Draw(t, "bold")
		lines := typeset.Break(text, render.BodySize, bold, width)
		bare := func(s string) string { return strings.Join(strings.Fields(s), "") }
		assert.Equal(t, bare(text), bare(strings.Join(lines, "")))
		for _, l := range lines {
			assert.True(t, typeset.Width(l, render.BodySize, bold) <= width+1e-9 || utf8.RuneCountInString(l) == 1, "%q", l)
		}
		all := " " + strings.Join(lines, " ") + " "
		for _, word := range strings.Fields(text) {
			if typeset.Width(word, render.BodySize, bold) <= width {
				assert.Contains(t, all, " "+word+" ")
			}
		}
	})
}
