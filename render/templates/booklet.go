package templates

import (
	"fmt"
	"runtime"
	"slices"
	"strings"

	"golang.org/x/sync/errgroup"

	"forel/geometry"
	"forel/geometry/plan"
	"forel/paper"
	"forel/render"
	"forel/render/pattern"
	"forel/render/pdf"
)

// pages is a document. Page gives the last page, which may be drawn on after
// others are added and by another goroutine than they are.
type pages interface {
	AddPage(width, height geometry.Length)
	Page() render.Surface
	Bookmark(title string)
	Under(above, title string)
	Label(n render.Numerals, first int)
}

// booklet is the document being made.
type booklet struct {
	Options
	pages
	render.Surface // the page that is being drawn
	plan           plan.Plan
	layout         paper.Layout
	before         int // pages before the patterns
	keyPage        int // the first of the key
	page           int // its number
}

// Booklet gives the document of all pieces laid over sheets: an overview, the
// key to the sheets, then each piece at true size.
func Booklet(c plan.Plan, l paper.Layout, o Options) ([]byte, error) {
	title := "Templates for a " + c.Kind
	if c.Title != "" {
		title += ": " + c.Title
	}
	doc := pdf.New(title)
	doc.PrintedOn(o.Setup)
	doc.Dated(o.Date)
	if o.Black {
		doc.BlackOnly()
		o.Theme = render.BlackTheme()
	}
	draw(doc, c, l, o)
	return doc.Bytes()
}

// draw draws the document on pages and gives the labels there was no room for.
func draw(on pages, c plan.Plan, l paper.Layout, o Options) (missed []string) {
	b := &booklet{Options: o, pages: on, plan: c, layout: l}
	// What is told of pages depends on how many the overview takes.
	for n := 1; ; n++ {
		b.keyPage, b.before = n+1, n+b.keyPages()
		trial := *b
		trial.pages = render.Discard{}
		if trial.overview(); trial.page <= n {
			break
		}
	}
	b.overview()
	for b.page < b.keyPage-1 { // numbers that are shorter than those it was tried with
		b.newPage(b.Setup.Sheet.Width, b.Setup.Sheet.Height)
	}
	b.key()
	without := make([][]string, len(b.layout.Pages))
	var together errgroup.Group
	together.SetLimit(runtime.GOMAXPROCS(0))
	for i, p := range b.layout.Pages {
		b.sheet(p)
		if i == 0 { // the number at its foot is its label
			b.Label(render.Decimal, b.page)
		}
		one := *b
		together.Go(func() error { without[i] = one.patterns(p); return nil })
	}
	together.Wait() // none gives an error
	return slices.Concat(without...)
}

// total gives the number of pages.
func (b *booklet) total() int { return b.before + len(b.layout.Pages) }

// pageOf gives the number of the page that shows a tile.
func (b *booklet) pageOf(t paper.Tile) int { return b.before + t.Page + 1 }

// pagesText names the pages of a pattern, such as "5" or "5–6, 8".
func (b *booklet) pagesText(t paper.Tiling) string {
	var numbers []int
	for _, tile := range t.Tiles {
		numbers = append(numbers, b.pageOf(tile))
	}
	slices.Sort(numbers)
	numbers = slices.Compact(numbers)
	var runs []string
	for i := 0; i < len(numbers); {
		k := i
		for k+1 < len(numbers) && numbers[k+1] == numbers[k]+1 {
			k++
		}
		run := fmt.Sprint(numbers[i])
		if k > i {
			run += fmt.Sprintf("–%d", numbers[k])
		}
		runs, i = append(runs, run), k+1
	}
	return strings.Join(runs, ", ")
}

// newPage starts a page and gives what may be printed on it.
func (b *booklet) newPage(width, height geometry.Length) geometry.Box {
	b.page++
	b.AddPage(width, height)
	b.Surface = b.Page()
	b.corrected(width, height)
	return b.printable(width, height)
}

// sheet starts a page of patterns.
func (b *booklet) sheet(p paper.Page) {
	b.page++
	b.AddPage(p.Width, p.Height)
	b.Surface = b.Page()
	for _, part := range p.Parts {
		t := b.layout.Patterns[part.Pattern]
		if name := pattern.Name(t.Piece); t.Whole() {
			b.Bookmark(name)
		} else {
			b.Under(name, address(t, t.Tiles[part.Tile]))
		}
	}
}

// patterns draws what is on a page of patterns.
func (b *booklet) patterns(p paper.Page) (missed []string) {
	for _, part := range p.Parts {
		t := b.layout.Patterns[part.Pattern]
		missed = append(missed, b.part(t, t.Tiles[part.Tile])...)
	}
	b.foot(p)
	return missed
}

// part draws what one place of a page shows of a pattern.
func (b *booklet) part(t paper.Tiling, tile paper.Tile) []string {
	dx, dy := tile.ToPage()
	v := pattern.View{
		DX: dx, DY: dy,
		Window:  onPage(tile.Window, dx, dy),
		Safe:    tile.Room,
		Address: address(t, tile),
		Turned:  t.Turned,
		Wider:   1,
		Theme:   b.Theme, Round: b.Round,
	}
	core := onPage(tile.Core, dx, dy)
	b.Begin(render.Legend)
	var lines []geometry.Path
	v.Joins, lines, v.Safe = b.joins(t, tile, core, v.Window)
	v.Keep = b.marks(t, core, v.Window, dx, dy, lines)
	b.End()
	return pattern.Draw(b, t.Piece, v)
}

// onPage takes a box of a pattern to the page.
func onPage(b geometry.Box, dx, dy geometry.Length) geometry.Box {
	return geometry.Bx(b.Min.X+dx, dy-b.Max.Y, b.Max.X+dx, dy-b.Min.Y)
}

// address names a tile by its row and column; a whole pattern needs none.
func address(t paper.Tiling, tile paper.Tile) string {
	if t.Whole() {
		return ""
	}
	return fmt.Sprintf("row %d of %d, column %d of %d", tile.Row, t.Rows, tile.Col, t.Cols)
}
