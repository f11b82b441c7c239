package paper_test

import (
	"cmp"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/plan/plantest"
	"forel/geometry/slipcase"
	"forel/paper"
)

// Sheets lie upright or turned, and nothing is printed in their margins or
// over their foot.
func TestLayPages(t *testing.T) {
	forLayouts(t, func(t *rapid.T, s paper.Setup, _ []geometry.Piece, l paper.Layout) {
		for n, p := range l.Pages {
			width, height, area := prints(s, p.Width > p.Height)
			near(t, width, p.Width)
			near(t, height, p.Height)
			near(t, area.Min.X, p.Area.Min.X)
			near(t, area.Min.Y, p.Area.Min.Y)
			near(t, area.Max.X, p.Area.Max.X)
			near(t, area.Max.Y, p.Area.Max.Y)
			require.NotEmpty(t, p.Parts, "page %d", n)
		}
	})
}

// Each tile has a room of its own on its page, which holds what it prints.
func TestLayRooms(t *testing.T) {
	forLayouts(t, func(t *rapid.T, _ paper.Setup, _ []geometry.Piece, l paper.Layout) {
		for n, p := range l.Pages {
			var rooms []geometry.Box
			for _, part := range p.Parts {
				tile := l.Tilings[part.Tiling].Tiles[part.Tile]
				require.Equal(t, n, tile.Page)
				print := geometry.Bx(tile.At.X, tile.At.Y, tile.At.X+tile.Window.Width(), tile.At.Y+tile.Window.Height())
				// Two rooms may share less than a micrometre, the unit of the search.
				assert.True(t, tile.Room.Grow(eps).Contains(print), "page %d: %.2f is printed beyond %.2f", n, print, tile.Room)
				assert.True(t, p.Area.Grow(eps).Contains(tile.Room), "page %d: %.2f leaves %.2f", n, tile.Room, p.Area)
				for _, o := range rooms {
					assert.False(t, o.Grow(-0.001).Overlaps(tile.Room), "page %d: %.2f and %.2f", n, o, tile.Room)
				}
				rooms = append(rooms, tile.Room)
			}
		}
	})
}

// Every tile is on one page, which lists it once; pages come in the order of
// the pieces whose parts they show, or else of the first piece on them.
func TestLayParts(t *testing.T) {
	forLayouts(t, func(t *rapid.T, _ paper.Setup, pieces []geometry.Piece, l paper.Layout) {
		require.Len(t, l.Tilings, len(pieces))
		listed := map[paper.Part]int{}
		first := -1
		for _, p := range l.Pages {
			rank := p.Parts[0].Tiling
			for _, part := range p.Parts {
				if !l.Tilings[part.Tiling].Whole() {
					rank = part.Tiling
				}
			}
			assert.GreaterOrEqual(t, rank, first, "pages in the order of the pieces")
			first = rank
			for i, part := range p.Parts {
				listed[part]++
				if i > 0 {
					assert.GreaterOrEqual(t, part.Tiling, p.Parts[i-1].Tiling)
				}
			}
		}
		tiles, blank := 0, 0
		for i, p := range l.Tilings {
			blank += len(p.Blank)
			for k := range p.Tiles {
				tiles++
				assert.Equal(t, 1, listed[paper.Part{Tiling: i, Tile: k}])
			}
		}
		assert.Len(t, listed, tiles)
		assert.Equal(t, blank, l.Blank)
	})
}

// Parts of one piece stand on consecutive pages and share no sheet with parts of
// another.
func TestLayPartsTogether(t *testing.T) {
	forLayouts(t, func(t *rapid.T, _ paper.Setup, _ []geometry.Piece, l paper.Layout) {
		of := map[int]int{} // of a page: the template
		for i, p := range l.Tilings {
			if p.Whole() {
				continue
			}
			on := map[int]bool{}
			from, to := len(l.Pages), -1
			for _, tile := range p.Tiles {
				other, shared := of[tile.Page]
				assert.False(t, shared && other != i, "page %d has parts of two pieces", tile.Page)
				of[tile.Page], on[tile.Page] = i, true
				from, to = min(from, tile.Page), max(to, tile.Page)
			}
			assert.Len(t, on, to-from+1, "pages %d to %d", from, to)
		}
	})
}

// Tiles are listed row by row, rows from the top and columns from the left,
// can be found by both, and with the blank ones fill the grid.
func TestTileOrder(t *testing.T) {
	forTilings(t, func(t *rapid.T, _ paper.Setup, p paper.Tiling) {
		grid := map[[2]int]int{}
		last := 0
		for _, tile := range p.Tiles {
			grid[[2]int{tile.Row, tile.Col}]++
			at := tile.Row*p.Cols + tile.Col
			assert.Greater(t, at, last)
			last = at
			got, ok := p.Neighbour(tile.Row, tile.Col)
			assert.True(t, ok && got == tile)
			if right, ok := p.Neighbour(tile.Row, tile.Col+1); ok {
				assert.Greater(t, right.Window.Min.X, tile.Window.Min.X)
			}
			if below, ok := p.Neighbour(tile.Row+1, tile.Col); ok {
				assert.Less(t, below.Window.Min.Y, tile.Window.Min.Y)
			}
		}
		for _, b := range p.Blank {
			grid[b]++
			_, ok := p.Neighbour(b[0], b[1])
			assert.False(t, ok, "%v is blank", b)
		}
		for r := 1; r <= p.Rows; r++ {
			for c := 1; c <= p.Cols; c++ {
				assert.Equal(t, 1, grid[[2]int{r, c}], "row %d, column %d", r, c)
			}
		}
		assert.Len(t, grid, p.Rows*p.Cols)
		for _, at := range [][2]int{{0, 1}, {1, 0}, {-1, -1}, {p.Rows + 1, 1}, {1, p.Cols + 1}} {
			_, ok := p.Neighbour(at[0], at[1])
			assert.False(t, ok, "%v", at)
		}
		assert.Equal(t, p.Rows*p.Cols == 1, p.Whole())
	})
}

func TestTileNeighboursOverlap(t *testing.T) {
	forTilings(t, func(t *rapid.T, s paper.Setup, p paper.Tiling) {
		near(t, s.Overlap, p.Overlap)
		for _, tile := range p.Tiles {
			if right, ok := p.Neighbour(tile.Row, tile.Col+1); ok {
				near(t, s.Overlap, tile.Window.Max.X-right.Window.Min.X)
				near(t, tile.Window.Min.Y, right.Window.Min.Y)
				near(t, tile.Window.Max.Y, right.Window.Max.Y)
			}
			if below, ok := p.Neighbour(tile.Row+1, tile.Col); ok {
				near(t, s.Overlap, below.Window.Max.Y-tile.Window.Min.Y)
				near(t, tile.Window.Min.X, below.Window.Min.X)
				near(t, tile.Window.Max.X, below.Window.Max.X)
			}
		}
	})
}

// gridOf gives where the columns and the rows of a template part, from the cores
// of its tiles: each column and each row has a tile, since the outline reaches
// every one of them.
func gridOf(t require.TestingT, p paper.Tiling) (xs, ys []paper.Length) {
	xs, ys = make([]paper.Length, p.Cols+1), make([]paper.Length, p.Rows+1)
	for _, list := range [][]paper.Length{xs, ys} {
		for i := range list {
			list[i] = paper.Length(math.NaN())
		}
	}
	set := func(list []paper.Length, i int, to paper.Length) {
		if !math.IsNaN(list[i].MM()) {
			near(t, list[i], to, "tiles in one row, or one column, part at one place")
		}
		list[i] = to
	}
	for _, tile := range p.Tiles {
		set(xs, tile.Col-1, tile.Core.Min.X)
		set(xs, tile.Col, tile.Core.Max.X)
		set(ys, tile.Row-1, tile.Core.Max.Y)
		set(ys, tile.Row, tile.Core.Min.Y)
	}
	for _, list := range [][]paper.Length{xs, ys} {
		for _, l := range list {
			require.False(t, math.IsNaN(l.MM()), "a row or a column with no tile")
		}
	}
	return xs, ys
}

// Cores, with those of blank tiles, cover the template and the white about it
// once: no gap, no part twice. Each is within what is printed.
func TestTileCoresPartitionThePattern(t *testing.T) {
	forTilings(t, func(t *rapid.T, _ paper.Setup, p paper.Tiling) {
		xs, ys := gridOf(t, p)
		for i := 1; i < len(xs); i++ {
			require.Greater(t, xs[i], xs[i-1])
		}
		for i := 1; i < len(ys); i++ {
			require.Less(t, ys[i], ys[i-1])
		}
		whole := geometry.Bx(xs[0], ys[p.Rows], xs[p.Cols], ys[0])
		assert.True(t, whole.Contains(p.Piece.Outline.Bounds().Grow(1)), "with white about it for the width of its lines")
		for _, tile := range p.Tiles {
			assert.True(t, tile.Window.Grow(eps).Contains(tile.Core))
			assert.True(t, whole.Grow(eps).Contains(tile.Window), "a window goes no farther than the template")
		}
	})
}

// inked gives the length of the lines of a template within a box.
func inked(p geometry.Piece, in geometry.Box) (length float64) {
	for _, l := range p.Lines() {
		points := l.Flatten(0.001)
		if l.Closed {
			points = append(points, points[0])
		}
		for i := 1; i < len(points); i++ {
			length += within(points[i-1], points[i], in)
		}
	}
	return length
}

// within gives the length of a straight line within a box: it is cut at the
// lines of the box's sides, and each part is in or out by its middle.
func within(a, b geometry.Point, in geometry.Box) (length float64) {
	cuts := []float64{0, 1}
	add := func(from, to, side paper.Length) {
		if f := ((side - from) / (to - from)).MM(); f > 0 && f < 1 {
			cuts = append(cuts, f)
		}
	}
	add(a.X, b.X, in.Min.X)
	add(a.X, b.X, in.Max.X)
	add(a.Y, b.Y, in.Min.Y)
	add(a.Y, b.Y, in.Max.Y)
	for i, f := range cuts {
		next := 1.0
		for _, g := range cuts {
			if g > f {
				next = min(next, g)
			}
		}
		m := a.Add(b.Sub(a).Mul((f + next) / 2))
		if i != 1 && m.X > in.Min.X && m.X < in.Max.X && m.Y > in.Min.Y && m.Y < in.Max.Y {
			length += a.Distance(b).MM() * (next - f)
		}
	}
	return length
}

// A tile is left out where it would show no line of its template, and only there:
// nothing is lost, and no sheet is printed with no ink of a piece on it.
func TestTileBlanks(t *testing.T) {
	forTilings(t, func(t *rapid.T, _ paper.Setup, p paper.Tiling) {
		xs, ys := gridOf(t, p)
		for _, b := range p.Blank {
			r, c := b[0], b[1]
			core := geometry.Bx(xs[c-1], ys[r], xs[c], ys[r-1])
			assert.Zero(t, inked(p.Piece, core), "row %d, column %d of %s is left out", r, c, p.Piece.Name)
		}
		for _, tile := range p.Tiles {
			assert.Positive(t, inked(p.Piece, tile.Core.Grow(eps)), "row %d, column %d of %s", tile.Row, tile.Col, p.Piece.Name)
		}
	})
}

// A template lies as its piece was given, or turned by a quarter, and is the
// same piece.
func TestLayKeepsThePieces(t *testing.T) {
	forLayouts(t, func(t *rapid.T, _ paper.Setup, pieces []geometry.Piece, l paper.Layout) {
		for i, p := range l.Tilings {
			want := pieces[i]
			if p.Turned {
				want = want.QuarterTurn()
			}
			require.Equal(t, want.Name, p.Piece.Name)
			assert.Equal(t, want.Grain, p.Piece.Grain)
			assert.Equal(t, want.Count, p.Piece.Count)
			lines, got := want.Lines(), p.Piece.Lines()
			require.Len(t, got, len(lines))
			for k := range lines {
				require.Len(t, got[k].Vertices, len(lines[k].Vertices))
				for v := range lines[k].Vertices {
					assert.True(t, lines[k].Vertices[v].Near(got[k].Vertices[v].Point))
				}
			}
		}
	})
}

// Never more sheets than each template in a grid of its own, never fewer than
// the paper it takes.
func TestLayCountsSheets(t *testing.T) {
	forLayouts(t, func(t *rapid.T, s paper.Setup, pieces []geometry.Piece, l paper.Layout) {
		plain := 0
		for _, p := range pieces {
			plain += plainGrid(s, p)
		}
		assert.LessOrEqual(t, len(l.Pages), plain)
		assert.GreaterOrEqual(t, len(l.Pages), l.AtLeast)
		assert.Positive(t, l.AtLeast)
	})
}

// A template that takes whole sheets to the last of them is laid like any other,
// whatever the rounding of floats makes of its size.
func TestLayOfPatternsThatFillSheets(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := setups().Draw(t, "setup")
		// Margins that make a length lie halfway between two that are told apart.
		part := paper.Length(rapid.SampledFrom([]float64{1, 64, 128, 256}).Draw(t, "part"))
		s.Margins.Right = paper.Length(rapid.IntRange(0, 2000).Draw(t, "right")) / part / 8
		s.Margins.Bottom = paper.Length(rapid.IntRange(0, 2000).Draw(t, "bottom")) / part / 8
		if s.Check() != nil {
			t.Skip("too little to print on")
		}
		area := s.Printable(false)
		foot, _ := s.Foot(false)
		area.Max.Y -= foot
		const white = 2 // about a template
		long := func(sheet paper.Length, label string) paper.Length {
			n := paper.Length(rapid.IntRange(1, 3).Draw(t, label))
			return n*(sheet-s.Overlap) + s.Overlap - 2*white
		}
		p := plate("plate", long(area.Width(), "across"), long(area.Height(), "down"))
		l := s.Lay([]geometry.Piece{p, p}, paper.Options{})
		for _, template := range l.Tilings {
			for _, tile := range template.Tiles {
				on := geometry.Bx(tile.At.X, tile.At.Y, tile.At.X+tile.Window.Width(), tile.At.Y+tile.Window.Height())
				assert.True(t, l.Pages[tile.Page].Area.Grow(eps).Contains(on), "%.9f on %.9f", on, l.Pages[tile.Page].Area)
			}
		}
	})
}

func TestLaySeparate(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, pieces := setups().Draw(t, "setup"), cases().Draw(t, "pieces")
		apart, shared := s.Lay(pieces, paper.Options{Set: paper.Separate}), s.Lay(pieces, paper.Options{})
		for n, p := range apart.Pages {
			for _, part := range p.Parts {
				assert.Equal(t, p.Parts[0].Tiling, part.Tiling, "page %d shows two templates", n)
			}
		}
		assert.LessOrEqual(t, len(shared.Pages), len(apart.Pages))
	})
}

// No sheet shows pieces of two sets, and those of the first set are printed first.
func TestLaySets(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, pieces := setups().Draw(t, "setup"), cases().Draw(t, "pieces")
		slices.SortStableFunc(pieces, func(a, b geometry.Piece) int { return strings.Compare(byLength(a), byLength(b)) })
		l := s.Lay(pieces, paper.Options{Set: byLength})
		last := byLength(pieces[0])
		for n, p := range l.Pages {
			for _, part := range p.Parts {
				of := byLength(l.Tilings[part.Tiling].Piece)
				assert.Equal(t, byLength(l.Tilings[p.Parts[0].Tiling].Piece), of, "page %d shows two sets", n)
				assert.GreaterOrEqual(t, of, last)
				last = of
			}
		}
		for i := range pieces {
			assert.Equal(t, pieces[i].Name, l.Tilings[i].Piece.Name)
		}
	})
}

func TestLayIsTheSameEachTime(t *testing.T) {
	forLayouts(t, func(t *rapid.T, s paper.Setup, pieces []geometry.Piece, _ paper.Layout) {
		o := paper.Options{}
		require.Equal(t, s.Lay(pieces, o), s.Lay(pieces, o))
	})
}

// A place of the template comes out where its window lies on the page.
func TestTileToPage(t *testing.T) {
	forTilings(t, func(t *rapid.T, _ paper.Setup, p paper.Tiling) {
		for _, tile := range p.Tiles {
			dx, dy := tile.ToPage()
			near(t, tile.At.X, tile.Window.Min.X+dx)
			near(t, tile.At.Y, dy-tile.Window.Max.Y, "the top of the window is at the top")
		}
	})
}

// Pieces on a sheet stand as far from each other as they can: what is white is shared
// evenly, so that each has room beside it for words.
func TestLayStandsApart(t *testing.T) {
	setup := paper.DefaultSetup()
	var pieces []geometry.Piece
	for _, h := range []geometry.Length{40, 50, 60} {
		pieces = append(pieces, geometry.Piece{Name: "strip", Count: 1, Outline: geometry.Rectangle(geometry.Bx(0, 0, 160, h))})
	}
	l := setup.Lay(pieces, paper.Options{})
	require.Len(t, l.Pages, 1)
	tiles := make([]paper.Tile, len(pieces))
	for i, tiling := range l.Tilings {
		tiles[i] = tiling.Tiles[0]
	}
	slices.SortFunc(tiles, func(a, b paper.Tile) int { return cmp.Compare(a.At.X, b.At.X) }) // they lie side by side
	var white []float64
	end := l.Pages[0].Area.Min.X
	for _, tile := range tiles {
		white = append(white, (tile.At.X - end).MM())
		end = tile.At.X + tile.Window.Width()
	}
	assert.InDelta(t, white[1], white[2], 2, "%.1f", white)
	assert.Greater(t, white[1], white[0], "%.1f", white)
}

// Templates of one set take no more sheets than each by itself, where trying one after the
// other in other grids comes to a stand with a sheet too many.
func TestLaySharedIsNoWorse(t *testing.T) {
	j := slipcase.DefaultJob(geometry.MM)
	j.Covering = slipcase.AllPaper
	j.Lining.Thickness = 0
	j.Books = []job.Book{{Height: job.Readings{146.7376}, Width: job.Readings{400}, Thickness: job.Readings{4.736}}}
	c, err := plantest.Make[slipcase.Case](j)
	require.NoError(t, err)
	s := paper.DefaultSetup()
	s.Sheet, err = paper.ParseSheet("Letter", geometry.MM)
	require.NoError(t, err)
	s.Margins = paper.Margins{Left: 40, Right: 40, Top: 40, Bottom: 40}
	s.Overlap = 28.21
	apart, shared := s.Lay(c.Pieces, paper.Options{Set: paper.Separate}), s.Lay(c.Pieces, paper.Options{})
	assert.LessOrEqual(t, len(shared.Pages), len(apart.Pages))
}
