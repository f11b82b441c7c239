package templates

import (
	"fmt"
	"slices"
	"strings"

	"forel/geometry"
	"forel/geometry/parallel"
	"forel/geometry/plan"
	"forel/geometry/wording"
	"forel/paper"
	"forel/render"
	"forel/render/document"
	"forel/render/labelled"
)

// doc is the document being made.
type doc struct {
	*document.Document
	render.Surface // what is drawn on
	plan           plan.Plan
	layout         paper.Layout
	before         int          // pages before the templates
	keyPage        int          // the first of the key
	page           int          // of templates: its number
	corner         geometry.Box // of the first page, for overview and key; empty: these have pages of their own
}

// Document draws the document of pieces laid over sheets: an overview, the key to the
// sheets, then each piece at true size. Those of the plan that the layout leaves out
// are marked out with rule and square: a sheet after the overview has their sizes.
func Document(c plan.Plan, l paper.Layout, o Options) *document.Document {
	pages, _ := draw(c, l, o)
	return pages
}

// draw draws the document, and returns the labels there was no room for.
func draw(c plan.Plan, l paper.Layout, o Options) (pages *document.Document, missed []string) {
	if o.Black {
		o.Theme = render.BlackTheme()
	}
	d := &doc{plan: c, layout: l}
	if len(l.Pages) > 0 && l.Pages[0].Corner.Width() > 0 {
		d.corner = l.Pages[0].Corner
		d.corner.Max.Y = tall
		d.Document = newDocument(c, o)
		d.Surface = d.Document
		return d.Document, d.sheets()
	}
	// What is told of pages depends on how many the overview takes.
	for n := 1; d.Document == nil || d.Count() >= n; n++ {
		d.keyPage, d.before = n+1, n+d.keyPages(o)
		d.Document = newDocument(c, o)
		d.Surface = d.Document
		d.overview()
	}
	for d.Count() < d.keyPage-1 { // numbers that are shorter than those it was tried with
		d.NewPage(false, "")
	}
	d.key()
	return d.Document, d.sheets()
}

// newDocument starts the document.
func newDocument(c plan.Plan, o Options) *document.Document {
	return &document.Document{Options: o, Title: "Templates for a " + c.Kind, Running: wording.OneLine(c.Title), TrueSize: true,
		Foot: "Print at actual size: scale 100 %."}
}

// sheets draws the pages of templates, and returns the labels there was no room for.
func (d *doc) sheets() (missed []string) {
	without := make([][]string, len(d.layout.Pages))
	pages := make([]doc, len(d.layout.Pages))
	for i, p := range d.layout.Pages {
		pages[i] = *d
		pages[i].page, pages[i].Surface = d.before+i+1, d.sheet(p)
		if i == 0 { // the number at its foot is its label
			d.Label(render.Decimal, pages[i].page)
			if d.corner.Width() > 0 {
				d.words()
			}
		}
	}
	parallel.Each(len(pages), func(i int) { without[i] = pages[i].templates(d.layout.Pages[i]) })
	return slices.Concat(without...)
}

// total returns the number of pages.
func (d *doc) total() int { return d.before + len(d.layout.Pages) }

// pageOf returns the number of the page that shows a tile.
func (d *doc) pageOf(t paper.Tile) int { return d.before + t.Page + 1 }

// pagesText names the pages of templates, such as "5" or "5–6, 8".
func (d *doc) pagesText(of ...paper.Tiling) string {
	var numbers []int
	for _, t := range of {
		for _, tile := range t.Tiles {
			numbers = append(numbers, d.pageOf(tile))
		}
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

// sheet starts a page of templates.
func (d *doc) sheet(p paper.Page) *document.Page {
	page := d.AddPage(p.Width, p.Height)
	for _, part := range p.Parts {
		t := d.layout.Tilings[part.Tiling]
		if name := labelled.Name(t.Piece); t.Whole() {
			page.Bookmark(name)
		} else {
			page.Under(name, address(t, t.Tiles[part.Tile]))
		}
	}
	return page
}

// templates draws what is on a page of templates.
func (d *doc) templates(p paper.Page) (missed []string) {
	for _, part := range p.Parts {
		t := d.layout.Tilings[part.Tiling]
		missed = append(missed, d.part(t, t.Tiles[part.Tile])...)
	}
	d.foot(p)
	return missed
}

// part draws what one place of a page shows of a template.
func (d *doc) part(t paper.Tiling, tile paper.Tile) []string {
	dx, dy := tile.ToPage()
	v := labelled.View{
		DX: dx, DY: dy,
		Window:  onPage(tile.Window, dx, dy),
		Safe:    tile.Room,
		Address: address(t, tile),
		Turned:  t.Turned,
		Wider:   1,
		Theme:   d.Theme, Round: d.Round,
	}
	core := onPage(tile.Core, dx, dy)
	d.Begin(render.Legend)
	var lines []geometry.Path
	v.Joins, lines, v.Safe = d.joins(t, tile, core, v.Window)
	v.Keep = d.marks(t, core, v.Window, dx, dy, lines)
	d.End()
	return labelled.Draw(d, t.Piece, v)
}

// onPage takes a box of a template to the page.
func onPage(b geometry.Box, dx, dy geometry.Length) geometry.Box {
	return geometry.Bx(b.Min.X+dx, dy-b.Max.Y, b.Max.X+dx, dy-b.Min.Y)
}

// address names a tile by its row and column; a whole template needs none.
func address(t paper.Tiling, tile paper.Tile) string {
	if t.Whole() {
		return ""
	}
	return fmt.Sprintf("row %d of %d, column %d of %d", tile.Row, t.Rows, tile.Col, t.Cols)
}
