package templates_test

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const (
	tenth    = 0.1  // of a millimetre: what a measured size may be off by
	cutWidth = 0.35 // of a cutting line, by default
	footTall = 23.8 // of the page's margin and foot: what is above it is the template
)

// pagesByPiece returns the numbers of the pages whose foot names a piece, for
// each of a scenario's pieces.
func pagesByPiece(t *testing.T, v *viewed, s scenario) map[string][]int {
	t.Helper()
	out := map[string][]int{}
	for n := 1; n <= v.Pages; n++ {
		lines, _, _ := foot(t, v, n, v.size(n).y)
		if !slices.Contains(lines, "100 mm") { // a ruler
			continue
		}
		for piece, cut := range s.cuts() {
			if footNames(lines, piece, cut.count) {
				out[piece] = append(out[piece], n)
			}
		}
	}
	return out
}

// footNames tells whether one of the lines of a foot names a piece, alone or
// among others, whole or by the row and the column of a part.
func footNames(lines []string, piece string, count int) bool {
	if count > 1 {
		piece += fmt.Sprintf(" × %d", count)
	}
	named := regexp.MustCompile(`(^|, )` + regexp.QuoteMeta(piece) + `($|,| \()`)
	return slices.ContainsFunc(lines, named.MatchString)
}

// rulers measures the two rulers at a page's foot: lines of about 100 mm with a
// long mark at both ends, from the middle of one mark to that of the other. The
// upper one has its marks upward, the lower one downward.
func rulers(t *testing.T, v *viewed, page int) []float64 {
	t.Helper()
	const dpi, fromLine = 600, 3.0
	size := v.size(page)
	p := v.render(page, dpi, xy{0, size.y - footTall}, size)
	var out []float64
	last := math.Inf(-1)
	for y := p.from.y; y < size.y; y += 1 / p.scale.y {
		for _, line := range p.across(black, y, 0, size.x) {
			if long := line.to - line.from; long < 95 || long > 106 || y-last < 1 {
				continue
			}
			last = y
			at := y - fromLine
			if len(out) == 1 {
				at = y + fromLine
			}
			marks := p.across(black, at, line.from-0.5, line.to+0.5)
			require.Len(t, marks, 2, "long marks of the ruler at %.1f mm on page %d", y, page)
			out = append(out, marks[1].middle-marks[0].middle)
		}
	}
	return out
}

func TestPixelsRulersAreTrue(t *testing.T) {
	for _, sheet := range []string{"A4", "Letter"} {
		c := octavo.on(sheet)
		v := view(t, c.file())
		measured := 0
		for page := 1; page <= v.Pages; page++ {
			if lines, _, _ := foot(t, v, page, v.size(page).y); !slices.Contains(lines, "100 mm") {
				continue
			}
			got := rulers(t, v, page)
			t.Logf("%s, page %d: %.3f mm", sheet, page, got)
			require.Len(t, got, 2)
			assert.InDelta(t, 100, got[0], tenth)
			assert.InDelta(t, 4*inch, got[1], tenth)
			measured++
		}
		assert.Len(t, c.layout.Pages, measured, "every sheet of templates has its rulers")
	}
}

// Each template that is printed whole has its outline in black as large as the
// design has it, turned or not.
func TestPixelsOutlinesAreTrue(t *testing.T) {
	const dpi = 300
	worst, measured := 0.0, 0
	all := []struct {
		scenario
		sheet string
	}{{unlined, "A4"}, {pamphlet, "Letter"}}
	if testing.Short() {
		all = all[:1]
	}
	for _, test := range all {
		c := test.on(test.sheet)
		v := view(t, c.file())
		for _, tiling := range c.layout.Tilings {
			if !tiling.Whole() {
				continue
			}
			want := test.cuts()[tiling.Piece.Name]
			if tiling.Turned {
				want.width, want.height = want.height, want.width
			}
			tile := tiling.Tiles[0]
			lo, hi := xy{tile.Room.Min.X.MM(), tile.Room.Min.Y.MM()}, xy{tile.Room.Max.X.MM(), tile.Room.Max.Y.MM()}
			p := v.render(v.Pages-len(c.layout.Pages)+tile.Page+1, dpi, lo, hi)
			left, right := extremes(func(y float64) []stripe { return p.across(black, y, lo.x, hi.x) }, lo.y, hi.y, 1/p.scale.y, cutWidth)
			top, bottom := extremes(func(x float64) []stripe { return p.down(black, x, lo.y, hi.y) }, lo.x, hi.x, 1/p.scale.x, cutWidth)
			assert.InDelta(t, want.width, right-left, tenth, "%s, %s, %s: width", test.sheet, test.name, tiling.Piece.Name)
			assert.InDelta(t, want.height, bottom-top, tenth, "%s, %s, %s: height", test.sheet, test.name, tiling.Piece.Name)
			worst = max(worst, math.Abs(want.width-(right-left)), math.Abs(want.height-(bottom-top)))
			measured++
		}
	}
	assert.Greater(t, measured, 5*len(all), "templates that are whole")
	t.Logf("%d templates, largest deviation %.3f mm", measured, worst)
}
