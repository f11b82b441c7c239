package templates_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const (
	tenth    = 0.1  // of a millimetre: what a measured size may be off by
	cutWidth = 0.35 // of a cutting line, by default
	footTall = 33.5 // of the page's margin and foot: what is above it is the pattern
)

// pagesByPiece gives the numbers of the pages whose foot names a piece, for
// each of a scenario's pieces.
func pagesByPiece(t *testing.T, v *viewed, s scenario) map[string][]int {
	t.Helper()
	out := map[string][]int{}
	for n := 1; n <= v.pages; n++ {
		lines, number, _ := foot(t, v, n, pageSize(t, v, n).y)
		if number == 0 {
			continue
		}
		for piece := range s.cuts() {
			for _, l := range lines {
				if l == piece || l == piece+" × 2" {
					out[piece] = append(out[piece], n)
				}
			}
		}
	}
	return out
}

// rulers measures the rulers at a page's foot: lines of about 100 mm with a
// long tick at both ends, from the middle of one tick to that of the other.
func rulers(t *testing.T, v *viewed, page int) []float64 {
	t.Helper()
	const dpi, aboveLine = 600, 3.0
	size := pageSize(t, v, page)
	p := v.render(t, page, dpi, xy{0, size.y - footTall}, size)
	var out []float64
	last := math.Inf(-1)
	for y := p.from.y; y < size.y; y += 1 / p.scale.y {
		for _, line := range p.across(black, y, 0, size.x) {
			if long := line.to - line.from; long < 95 || long > 106 || y-last < 1 {
				continue
			}
			last = y
			ticks := p.across(black, y-aboveLine, line.from-1, line.to+1)
			require.Len(t, ticks, 2, "long ticks of the ruler at %.1f mm on page %d", y, page)
			out = append(out, ticks[1].middle-ticks[0].middle)
		}
	}
	return out
}

func TestPixelsRulersAreTrue(t *testing.T) {
	for _, sheet := range []string{"A4", "Letter"} {
		v := view(t, booklet(t, octavo.make(t), on(t, sheet)))
		pages := pagesByPiece(t, v, octavo)
		for _, piece := range []string{"side", "head lining", "spine cloth"} {
			require.NotEmpty(t, pages[piece])
			for _, page := range pages[piece] {
				got := rulers(t, v, page)
				t.Logf("%s, page %d: %.3f mm", sheet, page, got)
				require.Len(t, got, 2)
				assert.InDelta(t, 100, got[0], tenth)
				assert.InDelta(t, 4*inch, got[1], tenth)
			}
		}
	}
}

// Every piece of a small case stands whole on a page; its outline in black is
// as large as the design has it.
func TestPixelsOutlinesAreTrue(t *testing.T) {
	const dpi = 300
	worst, measured := 0.0, 0
	for _, test := range []struct {
		scenario
		sheet string
	}{{unlined, "A4"}, {pamphlet, "Letter"}} {
		v := view(t, booklet(t, test.make(t), on(t, test.sheet)))
		pages := pagesByPiece(t, v, test.scenario)
		for piece, want := range test.cuts() {
			if len(pages[piece]) > 1 {
				continue
			}
			require.NotEmpty(t, pages[piece], piece)
			page := pages[piece][0]
			size := pageSize(t, v, page)
			p := v.render(t, page, dpi, xy{0, 0}, xy{size.x, size.y - footTall})
			in := p.size()
			left, right := extremes(func(y float64) []stripe { return p.across(black, y, 0, in.x) }, 0, in.y, 1/p.scale.y, cutWidth)
			top, bottom := extremes(func(x float64) []stripe { return p.down(black, x, 0, in.y) }, 0, in.x, 1/p.scale.x, cutWidth)
			assert.InDelta(t, want.width, right-left, tenth, "%s, %s, %s: width", test.sheet, test.name, piece)
			assert.InDelta(t, want.height, bottom-top, tenth, "%s, %s, %s: height", test.sheet, test.name, piece)
			worst = max(worst, math.Abs(want.width-(right-left)), math.Abs(want.height-(bottom-top)))
			measured++
		}
	}
	assert.Greater(t, measured, 15, "pieces on one page each")
	t.Logf("%d pieces, largest deviation %.3f mm", measured, worst)
}
