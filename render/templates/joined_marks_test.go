package templates_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/geometry"
	"forel/geometry/slipcase"
	"forel/paper"
	"forel/render/pdf/pdftest"
)

// forJoined runs a test on the pages of cases with long narrow parts, all invented, as they
// are in the file.
func forJoined(t *testing.T, test func(t *testing.T, v *viewed, before int, l paper.Layout)) {
	for k, size := range [][3]float64{{330, 230, 8}, {300, 240, 3}, {420, 300, 25}, {296, 210, 55}, {385, 120, 18}} {
		for i, sheet := range []string{"A4", "Letter"} {
			if testing.Short() && !oneSheet(i, k) {
				continue
			}
			t.Run(fmt.Sprint(sheet, " ", size), func(t *testing.T) {
				c := scenario{"narrow", size[0], size[1], size[2], 0.15, slipcase.NoHole}.on(sheet)
				v := view(t, c.file())
				test(t, v, v.Pages-len(c.layout.Pages), c.layout)
			})
		}
	}
}

// dashed tells whether a path has a dash that begins so long.
func dashed(p pdftest.Path, on float64) bool {
	return len(p.Dash) > 0 && math.Abs(p.Dash[0]-on) < 0.01
}

// What is cut along is black, and at 300 dots an inch never narrower than a dot that
// is inked wherever it falls: two dots wide, one of them is inked whole.
func TestLinesToCutArePrintedUnbroken(t *testing.T) {
	const twoDots = 2 * 25.4 / 300
	forJoined(t, func(t *testing.T, d *viewed, before int, l paper.Layout) {
		cuts, joins := 0, 0
		for n := before + 1; n <= d.Pages; n++ {
			for _, p := range d.Paths(n) {
				switch {
				case dashed(p, 9):
					joins++
				case p.Stroke && len(p.Dash) == 0 && math.Abs(p.Width-0.35) < 0.01:
					cuts++
				default:
					continue
				}
				assert.Equal(t, [3]uint8{}, p.Color, "page %d", n)
				assert.Greater(t, p.Width, twoDots, "page %d", n)
			}
		}
		assert.Positive(t, cuts)
		sides := 0
		for _, p := range l.Tilings {
			sides += len(p.Marks) // two a join, which is drawn on two parts
		}
		assert.Equal(t, sides, joins)
	})
}

// No joined part reaches farther from a join than six times the distance of the
// marks on it, both measured in the file: its rings, and its cut lines within the
// join.
func TestJoinedPartsHaveNoLongLever(t *testing.T) {
	worst := 0.0
	forJoined(t, func(t *testing.T, d *viewed, before int, l paper.Layout) {
		for _, p := range l.Tilings {
			for _, tile := range p.Tiles {
				if p.Whole() {
					continue
				}
				dx, dy := tile.ToPage()
				core := geometry.Bx(tile.Core.Min.X+dx, dy-tile.Core.Max.Y, tile.Core.Max.X+dx, dy-tile.Core.Min.Y)
				var rings []geometry.Point
				cut := geometry.Box{Min: geometry.Pt(1e9, 1e9), Max: geometry.Pt(-1e9, -1e9)}
				for _, path := range d.Paths(before + tile.Page + 1) {
					lo, hi := path.Bounds()
					box := geometry.Bx(geometry.Length(lo.X), geometry.Length(lo.Y), geometry.Length(hi.X), geometry.Length(hi.Y))
					switch {
					case math.Abs(hi.X-lo.X-2*ringRadius) < 0.02 && math.Abs(hi.Y-lo.Y-2*ringRadius) < 0.02 && core.Grow(0.1).Contains(geometry.Box{Min: box.Center(), Max: box.Center()}):
						rings = append(rings, box.Center())
					case path.Stroke && len(path.Dash) == 0 && math.Abs(path.Width-0.35) < 0.01 && tile.Room.Grow(0.01).Contains(box):
						in := box.Intersect(core)
						cut = geometry.Bx(min(cut.Min.X, in.Min.X), min(cut.Min.Y, in.Min.Y), max(cut.Max.X, in.Max.X), max(cut.Max.Y, in.Max.Y))
					}
				}
				for _, side := range []struct {
					row, col int
					on       func(geometry.Point) bool
					reach    geometry.Length
				}{
					{0, 1, func(r geometry.Point) bool { return (r.X - core.Max.X).Abs() < 0.05 }, core.Max.X - cut.Min.X},
					{0, -1, func(r geometry.Point) bool { return (r.X - core.Min.X).Abs() < 0.05 }, cut.Max.X - core.Min.X},
					{1, 0, func(r geometry.Point) bool { return (r.Y - core.Max.Y).Abs() < 0.05 }, core.Max.Y - cut.Min.Y},
					{-1, 0, func(r geometry.Point) bool { return (r.Y - core.Min.Y).Abs() < 0.05 }, cut.Max.Y - core.Min.Y},
				} {
					if _, ok := p.Neighbour(tile.Row+side.row, tile.Col+side.col); !ok {
						continue
					}
					var here []geometry.Point
					for _, r := range rings {
						if side.on(r) {
							here = append(here, r)
						}
					}
					require.Len(t, here, 2, "%s, row %d, column %d", p.Piece.Name, tile.Row, tile.Col)
					lever := (side.reach / here[0].Distance(here[1])).MM()
					assert.LessOrEqual(t, lever, 6.02, "%s, row %d, column %d: %.0f mm, marks %.0f mm apart", p.Piece.Name, tile.Row, tile.Col, side.reach.MM(), here[0].Distance(here[1]).MM())
					worst = max(worst, lever)
				}
			}
		}
	})
	assert.Positive(t, worst)
	t.Logf("the worst lever is %.1f", worst)
}

// Every mark has its name on each of the two parts it joins, and no two names touch.
func TestNamesOfMarksStandApart(t *testing.T) {
	forJoined(t, func(t *testing.T, v *viewed, before int, l paper.Layout) {
		named := map[string]int{}
		for n := before + 1; n <= v.Pages; n++ {
			var set []phrase
			for _, f := range v.phrases(n) {
				if markName.FindString(f.text) != f.text {
					assert.NotRegexp(t, `[A-Z][12][A-Z]+[12]`, f.text, "page %d", n)
					continue
				}
				for _, o := range set {
					across := max(f.lo.x-o.hi.x, o.lo.x-f.hi.x)
					along := max(f.lo.y-o.hi.y, o.lo.y-f.hi.y)
					assert.Greater(t, max(across, along), 1.0, "page %d: %s and %s", n, f.text, o.text)
				}
				set = append(set, f)
				named[f.text]++
			}
		}
		for _, p := range l.Tilings {
			for _, m := range p.Marks {
				assert.Equal(t, 2, named[m.Name], m.Name)
			}
		}
	})
}
