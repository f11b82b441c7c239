package templates

import (
	"fmt"
	"runtime"
	"slices"
	"strings"

	"golang.org/x/sync/errgroup"

	"forel/geometry"
	"forel/geometry/plan"
	"forel/geometry/wording"
	"forel/paper"
	"forel/render"
	"forel/render/document"
	"forel/render/pattern"
)

// booklet is the document being made.
type booklet struct {
	*document.Document
	render.Surface // what is drawn on
	plan           plan.Plan
	layout         paper.Layout
	before         int          // pages before the patterns
	keyPage        int          // the first of the key
	page           int          // of patterns: its number
	corner         geometry.Box // of the first page, for overview and key; empty: these have pages of their own
}

// Booklet returns the document of pieces laid over sheets: an overview, the key to the
// sheets, then each piece at true size. Those of the plan that the layout leaves out
// are marked out with rule and square: a sheet after the overview has their sizes.
func Booklet(c plan.Plan, l paper.Layout, o Options) ([]byte, error) {
	d, _ := draw(c, l, o)
	return d.PDF()
}

// Drawings returns the pages of the document as drawings, to look at.
func Drawings(c plan.Plan, l paper.Layout, o Options) [][]byte {
	d, _ := draw(c, l, o)
	return d.Drawings()
}

// draw draws the document, and returns the labels there was no room for.
func draw(c plan.Plan, l paper.Layout, o Options) (d *document.Document, missed []string) {
	if o.Black {
		o.Theme = render.BlackTheme()
	}
	b := &booklet{plan: c, layout: l}
	if len(l.Pages) > 0 && l.Pages[0].Corner.Width() > 0 {
		b.corner = l.Pages[0].Corner
		b.corner.Max.Y = tall
		b.Document = newDocument(c, o)
		b.Surface = b.Document
		return b.Document, b.sheets()
	}
	// What is told of pages depends on how many the overview takes.
	for n := 1; b.Document == nil || b.Count() >= n; n++ {
		b.keyPage, b.before = n+1, n+b.keyPages(o)
		b.Document = newDocument(c, o)
		b.Surface = b.Document
		b.overview()
	}
	for b.Count() < b.keyPage-1 { // numbers that are shorter than those it was tried with
		b.NewPage(false, "")
	}
	b.key()
	return b.Document, b.sheets()
}

// newDocument starts the document.
func newDocument(c plan.Plan, o Options) *document.Document {
	title := wording.OneLine(c.Title)
	return &document.Document{Options: o, Title: strings.TrimSuffix("Templates for a "+c.Kind+": "+title, ": "), Running: title, TrueSize: true,
		Foot: "Print at actual size: scale 100 %."}
}

// sheets draws the pages of patterns, and returns the labels there was no room for.
func (b *booklet) sheets() (missed []string) {
	without := make([][]string, len(b.layout.Pages))
	var together errgroup.Group
	together.SetLimit(runtime.GOMAXPROCS(0))
	for i, p := range b.layout.Pages {
		one := *b
		one.page, one.Surface = b.before+i+1, b.sheet(p)
		if i == 0 { // the number at its foot is its label
			b.Label(render.Decimal, one.page)
			if b.corner.Width() > 0 {
				b.words()
			}
		}
		together.Go(func() error { without[i] = one.patterns(p); return nil })
	}
	together.Wait() // none returns an error
	return slices.Concat(without...)
}

// total returns the number of pages.
func (b *booklet) total() int { return b.before + len(b.layout.Pages) }

// pageOf returns the number of the page that shows a tile.
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

// sheet starts a page of patterns.
func (b *booklet) sheet(p paper.Page) *document.Page {
	page := b.AddPage(p.Width, p.Height)
	for _, part := range p.Parts {
		t := b.layout.Patterns[part.Pattern]
		if name := pattern.Name(t.Piece); t.Whole() {
			page.Bookmark(name)
		} else {
			page.Under(name, address(t, t.Tiles[part.Tile]))
		}
	}
	return page
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
