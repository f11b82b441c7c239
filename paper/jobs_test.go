package paper_test

import (
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/plan/plantest"
	"forel/geometry/slipcase"
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
		if rapid.Bool().Draw(t, "uneven") {
			s.Margins = paper.Margins{Left: length(0, 20, "left"), Right: length(0, 20, "right"), Top: length(0, 20, "top"), Bottom: length(0, 20, "bottom")}
		}
		if s.Check() != nil {
			t.Skip("too little to print on")
		}
		return s
	})
}

// cases draws the pieces of a case for a book of any size.
func cases() *rapid.Generator[[]geometry.Piece] {
	return rapid.Custom(func(t *rapid.T) []geometry.Piece {
		length := func(lo, hi float64, label string) job.Readings {
			return job.Readings{geometry.Length(rapid.OneOf(
				rapid.Float64Range(lo, hi),
				rapid.Map(rapid.IntRange(int(2*lo), int(2*hi)), func(n int) float64 { return float64(n) / 2 }),
			).Draw(t, label))}
		}
		j := slipcase.DefaultJob(geometry.MM)
		j.Books = []job.Book{{Height: length(40, 500, "height"), Width: length(30, 400, "width"), Thickness: length(3, 150, "thickness")}}
		j.Lining.Thickness = rapid.SampledFrom([]geometry.Length{0, 0.15}).Draw(t, "lining")
		j.Covering = rapid.SampledFrom([]string{
			slipcase.ClothAndPaper, slipcase.AllCloth, slipcase.AllPaper, slipcase.SidesOnly,
		}).Draw(t, "covering")
		j.ThumbHole.Shape = rapid.SampledFrom([]string{slipcase.NoHole, slipcase.Semicircle, slipcase.Triangle}).Draw(t, "thumb hole")
		c, err := plantest.Make[slipcase.Case](j)
		if err != nil {
			t.Skip("can't be made")
		}
		return c.Pieces
	})
}

// sets returns none, every piece by itself, or two sets of pieces that alternate.
func sets() *rapid.Generator[func(geometry.Piece) string] {
	return rapid.SampledFrom([]func(geometry.Piece) string{nil, paper.Separate, byLength})
}

func byLength(p geometry.Piece) string { return strconv.Itoa(len(p.Name) % 2) }

// forLayouts holds random layouts to a rule.
func forLayouts(t *testing.T, rule func(t *rapid.T, s paper.Setup, pieces []geometry.Piece, l paper.Layout)) {
	t.Helper()
	rapid.Check(t, func(t *rapid.T) {
		s, pieces := setups().Draw(t, "setup"), cases().Draw(t, "pieces")
		rule(t, s, pieces, s.Lay(pieces, paper.Options{Set: sets().Draw(t, "sets")}))
	})
}

// forTilings holds the templates of random layouts to a rule.
func forTilings(t *testing.T, rule func(t *rapid.T, s paper.Setup, p paper.Tiling)) {
	t.Helper()
	forLayouts(t, func(t *rapid.T, s paper.Setup, _ []geometry.Piece, l paper.Layout) {
		for _, p := range l.Tilings {
			rule(t, s, p)
		}
	})
}

// plate is a plain rectangular piece.
func plate(name string, width, height paper.Length) geometry.Piece {
	return geometry.Piece{Name: name, Material: geometry.Board, Count: 1, Grain: geometry.GrainHeight, Outline: geometry.Rectangle(geometry.Bx(0, 0, width, height))}
}

// plainGrid gives how many sheets a template takes without anything clever: a
// grid of its own, the sheets upright or lying, whichever takes fewer.
func plainGrid(s paper.Setup, p geometry.Piece) int {
	// White is kept about a template: 2 mm, about one narrower than 25 mm 6 mm
	// for words. For marks outside it there is more; here less is reckoned.
	w, h := p.Size()
	white := paper.Length(2)
	if min(w, h) < 25 {
		white = 12
		for _, lying := range []bool{false, true} {
			if _, _, area := prints(s, lying); max(w, h)+2*6 <= max(area.Width(), area.Height()) {
				white = 6
			}
		}
	}
	across := func(length, print paper.Length) (n int) {
		n = 1
		for reach := print; reach < length-eps; reach += print - s.Overlap {
			n++
		}
		return n
	}
	grid := func(lying bool) int {
		_, _, print := prints(s, lying)
		return across(w+2*white, print.Width()) * across(h+2*white, print.Height())
	}
	return min(grid(false), grid(true))
}

// prints gives the size of a page, upright or lying, and what of it can take
// templates. A page that lies is turned a quarter anticlockwise onto the sheet:
// its left is the sheet's bottom.
func prints(s paper.Setup, lying bool) (width, height paper.Length, area geometry.Box) {
	m := s.Margins
	width, height = s.Sheet.Width, s.Sheet.Height
	if lying {
		width, height = height, width
		m = paper.Margins{Left: m.Bottom, Right: m.Top, Top: m.Left, Bottom: m.Right}
	}
	foot, _ := s.Foot(lying)
	return width, height, geometry.Bx(m.Left, m.Top, width-m.Right, height-m.Bottom-foot)
}
