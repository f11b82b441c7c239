package templates_test

import (
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/geometry"
	"forel/geometry/plan"
	"forel/geometry/slipcase"
	"forel/paper"
	"forel/render/templates"
)

// markedOut gives the file of a case whose plain rectangles are not printed.
func markedOut(t *testing.T, c plan.Plan) (*viewed, paper.Layout) {
	o := on(t, "A4")
	l := o.Setup.Lay(templates.Shaped(c.Drawn()), paper.Options{})
	file, err := templates.Document(c, l, o).PDF()
	require.NoError(t, err)
	return view(t, file), l
}

// allText gives the words of some pages, on one line.
func allText(t *testing.T, v *viewed, from, to int) string {
	var words []string
	for n := from; n <= to; n++ {
		words = append(words, v.text(n)...)
	}
	return strings.Join(strings.Fields(strings.Join(words, " ")), " ")
}

// The sheet for rule and square has each plain rectangle with its size and diagonal
// by the tables of the design, and no page shows a template of it; shaped pieces are
// printed.
func TestMarkOut(t *testing.T) {
	for _, s := range []scenario{octavo, folio, thumbHole} {
		c := s.make()
		v, l := markedOut(t, c)
		first := v.Pages - len(l.Pages) + 1
		told, printed := allText(t, v, 1, first-1), allText(t, v, first, v.Pages)
		assert.Equal(t, 1, strings.Count(told, "Mark out with rule and square"), s.name)
		for name, size := range s.cuts() {
			diagonal := math.Hypot(size.width, size.height)
			row := regexp.MustCompile(`(?:^| )` + name + ` \d \w+ ([0-9.]+) mm ([0-9.]+) mm ([0-9.]+) mm (?:width|height)`).FindStringSubmatch(told)
			// In the drawing of the case the thumb hole makes these no rectangles.
			shaped := strings.HasSuffix(name, "cloth") || s.hole != slipcase.NoHole && strings.HasPrefix(name, "side") || name == "side paper" || name == "hole strip"
			if shaped {
				assert.Contains(t, printed, name, s.name)
				assert.Nil(t, row, "%s: %s", s.name, name)
				continue
			}
			if assert.NotNil(t, row, "%s: %s", s.name, name) {
				for i, want := range []float64{size.width, size.height, diagonal} {
					got, err := strconv.ParseFloat(row[i+1], 64)
					require.NoError(t, err)
					assert.InDelta(t, want, got, 0.0501, "%s: %s", s.name, name) // shown to 0.1 mm
				}
			}
			assert.False(t, slices.ContainsFunc(l.Tilings, func(p paper.Tiling) bool { return p.Piece.Name == name }), name)
		}
	}
}

// A case of plain rectangles alone takes no sheet of templates.
func TestMarkOutOfRectanglesAlone(t *testing.T) {
	c := octavo.make()
	c.Pieces = slices.DeleteFunc(slices.Clone(c.Pieces), func(p geometry.Piece) bool { return !p.Plain() })
	v, l := markedOut(t, c)
	assert.Empty(t, l.Pages)
	told := allText(t, v, 1, v.Pages)
	assert.Contains(t, told, "Every piece is a plain rectangle")
	assert.NotContains(t, told, "Key to the pages")
}
