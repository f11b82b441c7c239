package lessons_test

import (
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry/fit"
	"forel/render/document"
	"forel/render/lessons"
	"forel/render/pagetest"
)

// The sheet of any case, on any paper, has its words apart and within the margins, and every
// length that can be measured on it.
func TestAnySheet(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, _ := pagetest.AnyPlan(t)
		o := document.Options{Setup: pagetest.AnySetup(t), Round: pagetest.Rounding(p.Chain.Unit)}
		var lines []lessons.Line
		for _, q := range fit.Quantities(p.Chain) {
			l := lessons.Line{Quantity: q}
			l.Low, l.High = q.Within()
			if rapid.IntRange(0, 3).Draw(t, "measured") == 0 {
				l.Readings = []lessons.Length{q.Planned + 0.3, q.Planned - 0.12}
			}
			lines = append(lines, l)
		}
		text := ""
		for i, page := range lessons.Sheet(p.Title, lines, o).Pages() {
			require.Empty(t, pagetest.Faults(&page.Surface, o.Setup.Reach(false)), "page %d", i+1)
			for _, w := range page.Texts {
				text += w.String + " "
			}
		}
		require.GreaterOrEqual(t, strings.Count(text, "planned"), 1)
	})
}

// What can be measured of any case is told so that it can be read in a terminal of usual width.
func TestRecordFitsATerminal(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, _ := pagetest.AnyPlan(t)
		var lines []lessons.Line
		for _, q := range fit.Quantities(p.Chain) {
			l := lessons.Line{Quantity: q}
			l.Low, l.High = q.Within()
			lines = append(lines, l)
		}
		for line := range strings.Lines(string(lessons.Record("", lines, p.Chain.Unit))) {
			require.LessOrEqual(t, utf8.RuneCountInString(strings.TrimSpace(line)), 100, line)
		}
	})
}
