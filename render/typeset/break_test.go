package typeset_test

import (
	"slices"
	"strconv"
	"strings"
	"testing"
	"unicode"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/render"
	"forel/render/typeset"
)

// countLetters counts those of a text, each with its marks.
func countLetters(s string) (n int) {
	for i, r := range s {
		if i == 0 || !unicode.Is(unicode.M, r) {
			n++
		}
	}
	return n
}

// Broken text has all its letters in their order, no line longer than the width,
// and no word in two that would fit on a line.
func TestBreakOfAnyText(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringOfN(rapid.RuneFrom([]rune("  aeiWM–é港日\u0301ễש\u05b8م")), 0, 80, -1).Draw(t, "text")
		width := geometry.Length(rapid.Float64Range(0.5, 60).Draw(t, "width"))
		bold := rapid.Bool().Draw(t, "bold")
		lines := typeset.Break(text, render.BodySize, bold, width)
		bare := func(s string) string { return strings.Join(strings.Fields(s), "") }
		assert.Equal(t, bare(text), bare(strings.Join(lines, "")))
		for _, l := range lines {
			assert.True(t, typeset.Width(l, render.BodySize, bold) <= width+1e-9 || countLetters(l) == 1, "%q", l)
		}
		all := " " + strings.Join(lines, " ") + " "
		for _, word := range strings.Fields(text) {
			if typeset.Width(word, render.BodySize, bold) <= width {
				assert.Contains(t, all, " "+word+" ")
			}
		}
	})
}

// No number is broken, and none stands on another line than its unit where both have
// room on one.
func TestSizesStayWhole(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := strconv.FormatFloat(rapid.Float64Range(0.1, 99999).Draw(t, "n"), 'f', rapid.IntRange(0, 3).Draw(t, "decimals"), 64)
		length := n + " " + rapid.SampledFrom([]string{"mm", "in", "kg", "1/32 in"}).Draw(t, "unit")
		text := "lay the board down " + length + ", then another of " + n + "mm"
		width := geometry.Length(rapid.Float64Range(0.5, 60).Draw(t, "width"))
		lines := typeset.Break(text, render.BodySize, false, width)
		whole := strings.FieldsFunc(strings.Join(lines, "\n"), func(r rune) bool { return !unicode.IsDigit(r) && r != '.' && r != '/' })
		assert.Equal(t, 2, len(slices.DeleteFunc(whole, func(s string) bool { return s != n })), "%q", lines)
		if typeset.Width(length+",", render.BodySize, false) < width {
			assert.Contains(t, strings.Join(lines, "\n"), length+",")
		}
	})
}

// Shortened text is the longest start that has room with its ellipsis, but for the last
// word, in which a letter can change the face.
func TestFitOfAnyText(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringOfN(rapid.RuneFrom([]rune(" aeiWMéễ")), 0, 60, -1).Draw(t, "text")
		width := geometry.Length(rapid.Float64Range(5, 60).Draw(t, "width"))
		got := typeset.Fit(text, render.BodySize, false, width)
		assert.LessOrEqual(t, typeset.Width(got, render.BodySize, false), width+1e-9)
		if got != text {
			start := strings.TrimSuffix(got, "…")
			assert.True(t, strings.HasPrefix(text, start))
			assert.Greater(t, typeset.Width(text[:len(start)]+"M…M", render.BodySize, false), width-4, "shorter than need be: %q", got)
		}
	})
}

// The parts of a line in their faces have its letters, and its length.
func TestRunsOfAnyText(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringOfN(rapid.RuneFrom([]rune("  aM–éễשל12(),м\u202f")), 0, 40, -1).Draw(t, "text")
		bold := rapid.Bool().Draw(t, "bold")
		var long geometry.Length
		said := ""
		for _, r := range typeset.Runs(text, bold) {
			long += typeset.RunWidth(r, render.BodySize)
			said += r.Text
			for _, c := range r.Text {
				if r.Face != typeset.Fallback {
					assert.NotContains(t, "ễשל", string(c))
				}
			}
		}
		sorted := func(s string) string {
			all := []rune(strings.NewReplacer("(", "", ")", "").Replace(s)) // which are mirrored
			slices.Sort(all)
			return string(all)
		}
		assert.Equal(t, sorted(text), sorted(said))
		assert.InDelta(t, typeset.Width(text, render.BodySize, bold).MM(), long.MM(), 1e-9)
	})
}

// What is written from right to left is so in print; sizes stand where they are. The
// order within a stretch is that of UAX 9, worked out by hand: numbers run from left to
// right, brackets are mirrored, marks are drawn before the letter that they belong to.
func TestOrder(t *testing.T) {
	for text, want := range map[string]string{
		"plain 5 mm":        "plain 5 mm",
		"ספר 5 mm":          "רפס 5 mm",
		"ספר הים: 5 × 3 mm": "םיה רפס: 5 × 3 mm",
		"ספר 12 הים, 5 mm":  "םיה 12 רפס, 5 mm",
		"(ספר) 5":           "(רפס) 5",
		"ספר (הים) אב":      "בא (םיה) רפס",
		"A ספר B הים C":     "A רפס B םיה C",
		"ל\u05b8ש 5":        "ש\u05b8ל 5",
		"5 mm, of the ספר":  "5 mm, of the רפס",
	} {
		said := ""
		for _, r := range typeset.Runs(text, false) {
			said += r.Text
		}
		assert.Equal(t, want, said, text)
	}
	assert.Equal(t, "A \u2067ספר 12 הים\u2069: 5", typeset.Isolated("A ספר 12 הים: 5"))
}
