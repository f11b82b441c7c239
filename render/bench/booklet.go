package bench

import (
	"fmt"

	"forel/geometry"
	"forel/paper/bench"
	"forel/render"
	"forel/render/pdf"
	"forel/render/svg"
	"forel/render/typeset"
)

// pages is a surface with pages; the last one is drawn on.
type pages interface {
	render.Surface
	AddPage(width, height Length)
	Bookmark(title string)
}

// book is the document being made.
type book struct {
	Options
	pages
	plan        bench.Plan
	page, total int
	missed      []string // numbers and names there was no room for on the drawings
}

// Drawing is one file.
type Drawing struct {
	Name string
	SVG  []byte
}

// Booklet gives the document: the shopping list, every sheet, the order of the
// cuts.
func Booklet(p bench.Plan, o Options) ([]byte, error) {
	doc := pdf.New("Bench plan: " + titles(p))
	doc.Dated(o.Date)
	if o.Black {
		doc.BlackOnly()
	}
	drawBook(doc, p, o)
	return doc.Bytes()
}

// drawBook draws the document on pages, twice: the first time to count them.
func drawBook(on pages, p bench.Plan, o Options) (missed []string) {
	b := &book{Options: o, pages: render.Discard{}, plan: p}
	b.all()
	b = &book{Options: o, pages: on, plan: p, total: b.page}
	b.all()
	return b.missed
}

func (b *book) all() {
	b.Begin(render.Legend)
	defer b.End()
	b.shopping()
	for _, g := range b.plan.Groups {
		for i := range g.Sheets {
			b.sheetPages(g, i)
		}
	}
	b.cutPages()
}

// Drawings gives a drawing of each sheet, named by its number.
func Drawings(p bench.Plan, o Options) []Drawing {
	var out []Drawing
	for _, g := range p.Groups {
		for i, s := range g.Sheets {
			f := newFigure(p, g, i, o)
			f.wider = substitute
			f.arrange()
			w, h := f.page()
			room := o.Setup.Reach(w > h)
			split := f.split(room)
			lines := (len(f.rows) + split.across - 1) / split.across
			tall := max(h, split.bottom+Length(lines)*rowHeight+3+h-room.Max.Y)
			c := svg.New(w, tall, fmt.Sprintf("Sheet %d of %s", s.Number, titles(p)), describe(p, g, s))
			c.Begin(render.Legend)
			c.Fill(geometry.Rectangle(geometry.Bx(0, 0, w, tall)), white)
			y := f.draw(c, room, split)
			f.legend(c, geometry.Bx(room.Min.X, y, room.Max.X, tall), f.rows, split.across)
			c.End()
			out = append(out, Drawing{FileName(s), c.Bytes()})
		}
	}
	return out
}

// substitute is by how much wider a viewer's typeface may be than ours.
const substitute = 1.2

// FileName gives the name of a sheet's drawing.
func FileName(s bench.Sheet) string { return fmt.Sprintf("sheet-%02d.svg", s.Number) }

func describe(p bench.Plan, g bench.Group, s bench.Sheet) string {
	return fmt.Sprintf("%s, %.3f x %.3f mm, %s. A figure, not at true size: cut by the measures. Boxed numbers are cuts in their order, bold numbers pieces. %s",
		label(g, geometry.ToTenthMM), s.Width.MM(), s.Height.MM(), g.Stock[s.Stock].Along(), cautions)
}

// The look of pages.
var (
	white    = render.Color{R: 255, G: 255, B: 255}
	pale     = render.Color{R: 0xE4, G: 0xE4, B: 0xE4} // what is thrown away
	rule     = render.Stroke{Width: 0.15, Color: render.Grey}
	noteSize = render.NoteSize
)

// footHeight is that of the line at the bottom of a page.
const footHeight Length = 6

// newPage starts a page and gives the room on it.
func (b *book) newPage(width, height Length, bookmark string) geometry.Box {
	b.page++
	b.AddPage(width, height)
	if bookmark != "" {
		b.Bookmark(bookmark)
	}
	box := b.Setup.Reach(width > height)
	y := box.Max.Y - typeset.Descent(noteSize)
	box.Max.Y -= footHeight
	b.Stroke(geometry.Line(geometry.Pt(box.Min.X, box.Max.Y+1.4), geometry.Pt(box.Max.X, box.Max.Y+1.4)), rule)
	left := "Figures, not at true size: cut by the measures."
	b.Text(render.Text{At: geometry.Pt(box.Min.X, y), String: left, Size: noteSize, Color: render.Black})
	right := fmt.Sprintf("page %d of %d – %s", b.page, b.total, titles(b.plan))
	right = typeset.Fit(right, noteSize, false, box.Width()-typeset.Width(left, noteSize, false)-8)
	b.Text(render.Text{At: geometry.Pt(box.Max.X, y), String: right, Size: noteSize, Align: render.End, Color: render.Black})
	return box
}

// upright starts a page of the maker's paper.
func (b *book) upright(bookmark string) geometry.Box {
	return b.newPage(b.Setup.Sheet.Width, b.Setup.Sheet.Height, bookmark)
}

// paragraph sets text below y within a box's sides and gives where it ends.
func paragraph(on render.Surface, box geometry.Box, y Length, text string, size render.Points, bold bool) Length {
	for _, l := range typeset.Break(text, size, bold, box.Width()) {
		y += typeset.LineHeight(size)
		on.Text(render.Text{At: geometry.Pt(box.Min.X, y), String: l, Size: size, Bold: bold, Color: render.Black})
	}
	return y + typeset.Descent(size)
}

// tall gives the height a paragraph takes.
func tall(text string, size render.Points, width Length) Length {
	return Length(len(typeset.Break(text, size, false, width)))*typeset.LineHeight(size) + typeset.Descent(size)
}
