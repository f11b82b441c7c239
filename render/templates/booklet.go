package templates

import (
	"fmt"

	"forel/geometry"
	"forel/geometry/plan"
	"forel/paper"
	"forel/render"
	"forel/render/pattern"
	"forel/render/pdf"
)

// pages is a surface with pages; the last one is drawn on.
type pages interface {
	render.Surface
	AddPage(width, height geometry.Length)
	Bookmark(title string)
}

// sheets is one piece with the sheets it is printed on.
type sheets struct {
	piece  geometry.Piece
	tiling paper.Tiling
	first  int // page number of the first
}

func (s sheets) last() int { return s.first + len(s.tiling.Tiles) - 1 }

// pagesText names the pages, "5" or "5–6".
func (s sheets) pagesText() string {
	if s.first == s.last() {
		return fmt.Sprint(s.first)
	}
	return fmt.Sprintf("%d–%d", s.first, s.last())
}

// booklet is the document being made.
type booklet struct {
	Options
	pages
	plan   plan.Plan
	pieces []sheets
	total  int // pages
	page   int // that is being drawn
}

// Booklet gives the document of all pieces: an overview, the key to the
// sheets, then each piece at true size.
func Booklet(c plan.Plan, o Options) ([]byte, error) {
	title := "Slipcase templates"
	if c.Title != "" {
		title += ": " + c.Title
	}
	doc := pdf.New(title)
	draw(doc, c, o)
	return doc.Bytes()
}

// draw draws the document on pages and gives the labels there was no room for.
func draw(on pages, c plan.Plan, o Options) (missed []string) {
	b := &booklet{Options: o, pages: on, plan: c}
	for _, p := range c.Drawn() {
		b.pieces = append(b.pieces, sheets{piece: p, tiling: o.Setup.Tile(p.Outline.Bounds(), p.Lines()...)})
	}
	trial := *b
	trial.pages = render.Discard{}
	ordered := trial.overview()
	next := 1 + 1 + b.keyPages()
	if !ordered {
		next++
	}
	for i := range b.pieces {
		b.pieces[i].first = next
		next += len(b.pieces[i].tiling.Tiles)
	}
	b.total = next - 1
	b.overview()
	if !ordered {
		b.orderPage()
	}
	b.key()
	for _, s := range b.pieces {
		for i := range s.tiling.Tiles {
			missed = append(missed, b.sheet(s, i)...)
		}
	}
	return missed
}

// newPage starts a page and gives what may be printed on it.
func (b *booklet) newPage(width, height geometry.Length) geometry.Box {
	b.page++
	b.AddPage(width, height)
	m := b.Setup.Margin
	return geometry.Bx(m, m, width-m, height-m)
}

// sheet draws one sheet of a piece.
func (b *booklet) sheet(s sheets, i int) []string {
	t, tile := s.tiling, s.tiling.Tiles[i]
	b.newPage(t.Width, t.Height)
	if i == 0 {
		b.Bookmark(pattern.Name(s.piece))
	}
	dx, dy := t.ToPage(tile)
	v := pattern.View{
		DX: dx, DY: dy,
		Window: t.Area,
		Wider:  1,
		Theme:  b.Theme, Round: b.Round,
	}
	core := geometry.Bx(tile.Core.Min.X+dx, dy-tile.Core.Max.Y, tile.Core.Max.X+dx, dy-tile.Core.Min.Y)
	v.Safe = core.Grow(-1)
	b.Begin(render.Legend)
	v.Joins = b.joins(s, tile, core)
	v.Keep = b.marks(s, core, dx, dy)
	b.End()
	missed := pattern.Draw(b, s.piece, v)
	b.foot(s, tile)
	return missed
}
