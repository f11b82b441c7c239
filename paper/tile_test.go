package paper_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/paper"
)

// eps is what two lengths, reached by two ways of calculating, may differ by.
const eps = 1e-6

func near(t assert.TestingT, want, got paper.Length, why ...any) {
	assert.InDelta(t, want.MM(), got.MM(), eps, why...)
}

// setups draws a way to print: any sheet, margin and overlap that is allowed.
func setups() *rapid.Generator[paper.Setup] {
	return rapid.Custom(func(t *rapid.T) paper.Setup {
		length := func(lo, hi float64, label string) paper.Length {
			return paper.Length(rapid.OneOf(rapid.Float64Range(lo, hi), rapid.SampledFrom([]float64{lo, hi, 10})).Draw(t, label))
		}
		s := paper.Setup{
			Sheet:   rapid.SampledFrom(paper.Sheets).Draw(t, "sheet"),
			Margins: paper.EvenMargins(length(0, paper.MostMargin.MM(), "margin")),
			Overlap: length(paper.LeastOverlap.MM(), paper.MostOverlap.MM(), "overlap"),
		}
		if rapid.Bool().Draw(t, "a size of its own") {
			a, b := length(paper.LeastSheet.MM(), 700, "one side"), length(paper.LeastSheet.MM(), 900, "the other")
			s.Sheet = paper.Sheet{Width: min(a, b), Height: max(a, b)}
		}
		if s.Check() != nil {
			t.Skip("too little to print on")
		}
		return s
	})
}

// patterns draws the box of a pattern, often one that just fits a number of
// sheets, anywhere.
func patterns(s paper.Setup) *rapid.Generator[geometry.Box] {
	return rapid.Custom(func(t *rapid.T) geometry.Box {
		side := func(label string, prints ...paper.Length) paper.Length {
			n := paper.Length(rapid.IntRange(1, 5).Draw(t, label+", sheets"))
			full := rapid.SampledFrom(prints).Draw(t, label+", of")*n - s.Overlap*(n-1)
			around := rapid.SampledFrom([]float64{0, -1, 1, -2, 2, -2.001, -1.999, -10, -18}).Draw(t, label+", beyond")
			return paper.Length(rapid.OneOf(
				rapid.Float64Range(1, 1200),
				rapid.Just(max(1, (full+paper.Length(around)).MM())),
			).Draw(t, label))
		}
		w, h := s.Sheet.Width-2*s.Margins.Left, s.Sheet.Height-2*s.Margins.Left
		x := paper.Length(rapid.SampledFrom([]float64{0, -37.5, 1000}).Draw(t, "x"))
		y := paper.Length(rapid.SampledFrom([]float64{0, -37.5, 1000}).Draw(t, "y"))
		return geometry.Bx(x, y, x+side("width", w, h), y+side("height", w-paper.Foot, h-paper.Foot))
	})
}

// forTilings holds random tilings to a rule.
func forTilings(t *testing.T, rule func(t *rapid.T, s paper.Setup, pattern geometry.Box, tiled paper.Tiling)) {
	rapid.Check(t, func(t *rapid.T) {
		s := setups().Draw(t, "setup")
		pattern := patterns(s).Draw(t, "pattern")
		rule(t, s, pattern, s.Tile(pattern))
	})
}

// Sheets lie upright or turned, and nothing is printed in their margins or
// over their foot.
func TestTileSheets(t *testing.T) {
	forTilings(t, func(t *rapid.T, s paper.Setup, _ geometry.Box, tiled paper.Tiling) {
		upright := tiled.Width == s.Sheet.Width && tiled.Height == s.Sheet.Height
		lying := tiled.Width == s.Sheet.Height && tiled.Height == s.Sheet.Width
		require.True(t, upright || lying)
		near(t, s.Margins.Left, tiled.Area.Min.X)
		near(t, s.Margins.Left, tiled.Area.Min.Y)
		near(t, tiled.Width-s.Margins.Left, tiled.Area.Max.X)
		near(t, tiled.Height-s.Margins.Left-paper.Foot, tiled.Area.Max.Y)
		for _, tile := range tiled.Tiles {
			near(t, tiled.Area.Width(), tile.Window.Width(), "a window is drawn at its size")
			near(t, tiled.Area.Height(), tile.Window.Height())
		}
	})
}

// Tiles are listed row by row, rows from the top and columns from the left,
// and can be found by both.
func TestTileOrder(t *testing.T) {
	forTilings(t, func(t *rapid.T, _ paper.Setup, _ geometry.Box, tiled paper.Tiling) {
		require.Len(t, tiled.Tiles, tiled.Rows*tiled.Cols)
		for i, tile := range tiled.Tiles {
			assert.Equal(t, i/tiled.Cols+1, tile.Row)
			assert.Equal(t, i%tiled.Cols+1, tile.Col)
			got, ok := tiled.Neighbour(tile.Row, tile.Col)
			assert.True(t, ok && got == tile)
			if right, ok := tiled.Neighbour(tile.Row, tile.Col+1); ok {
				assert.Greater(t, right.Window.Min.X, tile.Window.Min.X)
			} else {
				assert.Equal(t, tiled.Cols, tile.Col)
			}
			if below, ok := tiled.Neighbour(tile.Row+1, tile.Col); ok {
				assert.Less(t, below.Window.Min.Y, tile.Window.Min.Y)
			} else {
				assert.Equal(t, tiled.Rows, tile.Row)
			}
		}
		for _, at := range [][2]int{{0, 1}, {1, 0}, {-1, -1}, {tiled.Rows + 1, 1}, {1, tiled.Cols + 1}} {
			_, ok := tiled.Neighbour(at[0], at[1])
			assert.False(t, ok, "%v", at)
		}
	})
}

func TestTileNeighboursOverlap(t *testing.T) {
	forTilings(t, func(t *rapid.T, s paper.Setup, _ geometry.Box, tiled paper.Tiling) {
		for _, tile := range tiled.Tiles {
			if right, ok := tiled.Neighbour(tile.Row, tile.Col+1); ok {
				near(t, s.Overlap, tile.Window.Max.X-right.Window.Min.X)
				near(t, tile.Window.Min.Y, right.Window.Min.Y)
			}
			if below, ok := tiled.Neighbour(tile.Row+1, tile.Col); ok {
				near(t, s.Overlap, below.Window.Max.Y-tile.Window.Min.Y)
				near(t, tile.Window.Min.X, below.Window.Min.X)
			}
		}
	})
}

// What is left of the sheets when they are joined covers the pattern once, and
// each part of it is printed on its sheet.
func TestTileCoresPartitionThePattern(t *testing.T) {
	forTilings(t, func(t *rapid.T, _ paper.Setup, pattern geometry.Box, tiled paper.Tiling) {
		var area float64
		for i, tile := range tiled.Tiles {
			require.False(t, tile.Core.Empty())
			assert.True(t, tile.Window.Grow(eps).Contains(tile.Core))
			for _, other := range tiled.Tiles[:i] {
				require.False(t, tile.Core.Grow(-eps).Overlaps(other.Core.Grow(-eps)), "%v and %v", tile, other)
			}
			if part := tile.Core.Intersect(pattern); assert.False(t, part.Empty(), "a sheet with nothing on it") {
				area += part.Width().MM() * part.Height().MM()
			}
		}
		whole := pattern.Width().MM() * pattern.Height().MM()
		assert.InDelta(t, whole, area, eps*(1+whole))
	})
}

// white is the least that is kept between a pattern and the end of what is
// printed, so that its outline is drawn whole.
const white = 1.0

// fewest gives how many prints in a row reach over a length, each beginning
// where the last ends but for the overlap.
func fewest(length, print, overlap float64) int {
	n := 1
	for reach := print; reach < length-eps; reach += print - overlap {
		n++
	}
	return n
}

// No grid of sheets, upright or lying, takes fewer.
func TestTileTakesTheFewestSheets(t *testing.T) {
	forTilings(t, func(t *rapid.T, s paper.Setup, pattern geometry.Box, tiled paper.Tiling) {
		w, h := pattern.Width().MM()+2*white, pattern.Height().MM()+2*white
		best := math.MaxInt
		for _, sheet := range [][2]paper.Length{{s.Sheet.Width, s.Sheet.Height}, {s.Sheet.Height, s.Sheet.Width}} {
			across, along := sheet[0]-2*s.Margins.Left, sheet[1]-2*s.Margins.Left-paper.Foot
			best = min(best, fewest(w, across.MM(), s.Overlap.MM())*fewest(h, along.MM(), s.Overlap.MM()))
		}
		assert.Equal(t, best, len(tiled.Tiles))
	})
}

// Every join has two marks of its own. Each lies on the line on which the two
// sheets are joined, and is printed on both.
func TestTileMarks(t *testing.T) {
	forTilings(t, func(t *rapid.T, s paper.Setup, pattern geometry.Box, tiled paper.Tiling) {
		names := map[string]bool{}
		for _, m := range tiled.Marks {
			assert.False(t, names[m.Name], "%s twice", m.Name)
			names[m.Name] = true
		}
		joins := 0
		for _, tile := range tiled.Tiles {
			for _, to := range [][2]int{{0, 1}, {1, 0}} {
				next, ok := tiled.Neighbour(tile.Row+to[0], tile.Col+to[1])
				if !ok {
					continue
				}
				joins++
				line := tile.Core.Grow(eps).Intersect(next.Core.Grow(eps))
				var on []geometry.Point
				for _, m := range tiled.Marks {
					if line.Contains(geometry.Box{Min: m.At, Max: m.At}) {
						on = append(on, m.At)
						// Half the overlap away from where either print ends.
						whole := geometry.Box{Min: m.At, Max: m.At}.Grow(min(s.Overlap/2, 2) - eps)
						if to[0] == 0 {
							whole.Min.Y, whole.Max.Y = m.At.Y, m.At.Y
						} else {
							whole.Min.X, whole.Max.X = m.At.X, m.At.X
						}
						assert.True(t, tile.Window.Contains(whole) && next.Window.Contains(whole), "%s", m.Name)
					}
				}
				require.Len(t, on, 2, "join of %d,%d and %d,%d", tile.Row, tile.Col, next.Row, next.Col)
				assert.False(t, on[0].Near(on[1]))
			}
		}
		assert.Len(t, tiled.Marks, 2*joins)
	})
}

// A place of the pattern comes out within its sheet's area, the window's
// corners at the area's.
func TestTileToPage(t *testing.T) {
	forTilings(t, func(t *rapid.T, _ paper.Setup, _ geometry.Box, tiled paper.Tiling) {
		for _, tile := range tiled.Tiles {
			dx, dy := tiled.ToPage(tile)
			near(t, tiled.Area.Min.X, tile.Window.Min.X+dx)
			near(t, tiled.Area.Max.X, tile.Window.Max.X+dx)
			near(t, tiled.Area.Min.Y, dy-tile.Window.Max.Y, "the top of the window is at the top")
			near(t, tiled.Area.Max.Y, dy-tile.Window.Min.Y)
		}
	})
}

// One book's pattern by hand: 227.8 by 151.65 mm on A4 with margins of 10 mm
// leaves 190 by 254 mm upright, so one sheet; 285 mm high takes two upright
// (244 mm more a sheet) and two lying (267 mm across, but 157 mm high).
func TestTileByHand(t *testing.T) {
	s := paper.DefaultSetup()
	assert.Len(t, s.Tile(geometry.Bx(0, 0, 151.65, 227.8)).Tiles, 1)
	spine := s.Tile(geometry.Bx(0, 0, 95.45, 284.95))
	assert.Equal(t, []int{2, 1}, []int{spine.Rows, spine.Cols})
	require.Len(t, spine.Marks, 2)
	for _, m := range spine.Marks {
		near(t, 284.95/2, m.At.Y, "the join is in the middle")
	}
	// 190 mm of the sheet can be printed: each mark is 12 mm from an end.
	near(t, 190-2*12, spine.Marks[1].At.X-spine.Marks[0].At.X)
}

// Where the grid has room to move, no join comes near a line's corner, and no
// mark near a line. By hand: 285 mm high on A4 leaves 498-285 mm to move in, and
// its fold across the middle, where a join would fall, is moved off.
func TestJoinsAndMarksKeepOffLines(t *testing.T) {
	s := paper.DefaultSetup()
	box := geometry.Bx(0, 0, 95.45, 284.95)
	lines := []geometry.Path{
		geometry.Rectangle(box),
		geometry.Line(geometry.Pt(0, 284.95/2), geometry.Pt(95.45, 284.95/2)),
		geometry.Line(geometry.Pt(30, 0), geometry.Pt(30, 284.95)),
	}
	tiled := s.Tile(box, lines...)
	require.Len(t, tiled.Marks, 2)
	for _, m := range tiled.Marks {
		assert.GreaterOrEqual(t, (m.At.Y - 284.95/2).Abs(), paper.Length(5), "the join is off the fold")
		for _, x := range []paper.Length{0, 30, 95.45} {
			assert.GreaterOrEqual(t, (m.At.X - x).Abs(), paper.Length(5), "%s is off the upright line at %v", m.Name, x)
		}
	}
}
