package slipcase_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/slipcase"
)

const inch = 25.4

func assertSize(t require.TestingT, ps pieces, name string, width, height float64) {
	require.Contains(t, ps, name)
	w, h := ps[name].Size()
	assert.InDelta(t, width, w.MM(), eps, "width of %s", name)
	assert.InDelta(t, height, h.MM(), eps, "height of %s", name)
}

// Source: University of Brighton, Book Arts, "Worksheets for bookbinders:
// slipcase": a book 113 wide, 157 high and 12 thick, five pieces of 2 mm board,
// sizes given without the lining paper.
func TestBrightonWorkedExample(t *testing.T) {
	j := slipcase.DefaultJob(geometry.MM)
	j.Books = []job.Book{{Height: readings(157), Width: readings(113), Thickness: readings(12)}}
	j.Board.Thickness, j.Lining.Thickness = 2, 0
	j.Clearance = job.Clearance{Height: 2, Width: 0, Thickness: 2}
	c, err := slipcase.Make(j)
	require.NoError(t, err)

	ps := piecesOf(c)
	assertSize(t, ps, "side", 115, 163)
	assertSize(t, ps, "spine wall", 14, 163)
	assertSize(t, ps, "head wall", 113, 14)
	assertSize(t, ps, "tail wall", 113, 14)
	boards := 0
	for _, p := range c.Pieces {
		if p.Material == geometry.Board {
			boards += p.Count
		}
	}
	assert.Equal(t, 5, boards)
}

// Source: E. Diehl, Bookbinding: Its Background and Technique (1946),
// "Slipcases": the length of a side is the length of the book, the thickness of
// both end strips, and 1/8 in; the backstrip is exactly as long as the sides;
// the strips are about a generous 1/32 in wider than the book at head or tail.
func TestDiehlRule(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := slipcase.DefaultJob(geometry.MM)
		book := books().Draw(t, "book")
		j.Books = []job.Book{book}
		j.Board.Thickness = slipcase.Length(length(0.5, 3, 2).Draw(t, "board"))
		j.Lining.Thickness = slipcase.Length(length(0, 0.3, 0.15).Draw(t, "lining"))
		j.Cloth.Thickness, j.SidePaper.Thickness = 0.15, 0.05 // thin enough for 1/32 in
		j.Clearance.Height, j.Clearance.Thickness = geometry.Inch/8, geometry.Inch/32
		c, err := mended(j) // in a tiny book the usual margins of cloth are too wide
		require.NoError(t, err)

		ps := piecesOf(c)
		strip := float64(j.Board.Thickness + j.Lining.Thickness)
		_, side := ps["side"].Size()
		assert.InDelta(t, largest(book.Height)+2*strip+inch/8, side.MM(), eps)
		_, back := ps["spine wall"].Size()
		assert.Equal(t, side, back)
		for _, strip := range []string{"head wall", "tail wall"} {
			_, wide := ps[strip].Size()
			assert.InDelta(t, largest(book.Thickness)+inch/32, wide.MM(), eps)
		}
	})
}

// Common practice, no source: with about 2 mm board and a paper lining a side
// laid flush with the spine of the book shows about 1/8 in beyond the
// fore-edge; laid flush with head or tail, about 1/4 in at the other end.
func TestDryFitShowsAnEighthAndAQuarter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c, err := mended(defaultJobs().Draw(t, "job"))
		require.NoError(t, err)
		// By hand: 1 + 2 + 0.15, and 2 + 2 x (2 + 0.15).
		assert.InDelta(t, 3.15, c.Stands.Fit().ForeEdge.MM(), eps)
		assert.InDelta(t, 6.30, c.Stands.Fit().HeadOrTail.MM(), eps)
		// "About": within a 64th of an inch.
		assert.InDelta(t, inch/8, c.Stands.Fit().ForeEdge.MM(), inch/64)
		assert.InDelta(t, inch/4, c.Stands.Fit().HeadOrTail.MM(), inch/64)
	})
}

// The fit is what one can measure: the side less the book.
func TestFitIsSideLessBook(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := goodJobs().Draw(t, "case")
		w, h := piecesOf(c.Case)["side"].Size()
		assert.InDelta(t, w.MM()-largest(c.job.Books[0].Width), c.Stands.Fit().ForeEdge.MM(), eps)
		assert.InDelta(t, h.MM()-largest(c.job.Books[0].Height), c.Stands.Fit().HeadOrTail.MM(), eps)
	})
}

// The starter job, by hand: 148.5 + 1 + 2.15 and 221.5 + 2 + 2 x 2.15.
func TestStarterExample(t *testing.T) {
	j := slipcase.DefaultJob(geometry.MM)
	j.Books = []job.Book{{
		Height: readings(221, 221.5), Width: readings(148.5), Thickness: readings(31, 1.25*inch),
	}}
	c, err := slipcase.Make(j)
	require.NoError(t, err)
	assertSize(t, piecesOf(c), "side", 151.65, 227.8)
	assertSize(t, piecesOf(c), "spine wall", 33.75, 227.8) // 31.75 + 2
	assert.Empty(t, c.Suspects())
}

// Source: G. Malkin, "Straightforward Slipcases", Society of Bookbinders
// "Bookbinder" (2016): measure each dimension at several points and keep the
// maximum.
func TestLargestReadingCounts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		one := goodJobs().Draw(t, "case")
		j := one.job
		j.Books = []job.Book{j.Books[0]}
		b := &j.Books[0]
		for _, r := range []*job.Readings{&b.Height, &b.Width, &b.Thickness} {
			most := largest(*r)
			least := max(most*rapid.Float64Range(0.9, 1).Draw(t, "smaller"), map[*job.Readings]float64{
				&b.Height: 40, &b.Width: 20, &b.Thickness: 1,
			}[r])
			*r = rapid.Permutation(append(readings(least), *r...)).Draw(t, "readings")
		}
		several, err := slipcase.Make(j)
		require.NoError(t, err)
		assert.Equal(t, one.Pieces, several.Pieces)
		assert.Equal(t, one.Stands.Cavity(), several.Stands.Cavity())
	})
}
