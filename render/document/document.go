// Package document makes the documents that are printed: pages with a foot,
// paragraphs, lists, tables and blocks that stay together. Pages are kept as they
// are drawn, and written when their number is known.
package document

import (
	"fmt"
	"time"

	"forel/geometry"
	"forel/paper"
	"forel/render"
	"forel/render/pdf"
	"forel/render/svg"
	"forel/render/typeset"
)

// Length is a distance in millimetres.
type Length = geometry.Length

// Options say how a document looks.
type Options struct {
	Setup paper.Setup // of its pages
	Round geometry.Rounding
	Theme render.Theme // lines of what is cut; not all documents have any
	Line  Length       // the width of all lines of an SVG for a machine, which are then solid; 0: lines to be read
	Black bool         // print in black alone; an SVG keeps its colours
	Date  time.Time    // the document's; zero: none
}

// Document is a document being made; its last page is drawn on.
type Document struct {
	Options
	Title    string // what it is; viewers show it with Running
	About    string // the description of an SVG
	Running  string // the job's title, at the foot of each page; may be empty
	Foot     string // what is said at the foot of each page
	TrueSize bool   // templates are on it: it is corrected by what the printer was measured to be off
	Wider    Length // by how much a viewer's typeface may be wider than ours; 0: it is ours
	// Frame draws what each page has besides its foot, and returns what it leaves
	// of a room; nil: nothing.
	Frame func(room geometry.Box) geometry.Box
	*Page
	pages []*Page
	added []Block // not set yet
}

// Page is a page with all that is drawn on it.
type Page struct {
	pdf.Page
	foot *geometry.Box // where it has one
	room geometry.Box  // what is written on
	// How much of what is drawn is no part of what is written on it.
	strokes, texts int
}

// footTall is the height of the line at the bottom of a page.
const footTall Length = 6

// Room returns what of an upright or a lying page is written on, above its foot.
func (d *Document) Room(lying bool) geometry.Box {
	box := d.area(lying)
	box.Max.Y -= footTall
	return box
}

// area is what of a page can be drawn on.
func (d *Document) area(lying bool) geometry.Box {
	if d.TrueSize {
		return d.Setup.Printable(d.lies(lying))
	}
	return d.Setup.Reach(d.lies(lying))
}

// lies tells whether a page lies: a square sheet does not, since nothing would
// show it.
func (d *Document) lies(lying bool) bool {
	return lying && d.Setup.Sheet.Width != d.Setup.Sheet.Height
}

// NewPage starts a page with a foot, upright or lying, and returns what is written
// on. An empty bookmark is none.
func (d *Document) NewPage(lying bool, bookmark string) geometry.Box {
	area := d.area(lying)
	d.AddPage(d.Setup.Size(d.lies(lying))).foot = &area
	if bookmark != "" {
		d.Bookmark(bookmark)
	}
	box := d.Room(lying)
	if d.Frame != nil {
		box = d.Frame(box)
	}
	d.Page.room, d.Page.strokes, d.Page.texts = box, len(d.Strokes), len(d.Texts)
	return box
}

// Rest returns what is left of the page that is drawn on, below so much white.
func (d *Document) Rest(white Length) geometry.Box {
	box := d.Page.room
	if y := d.Page.Lowest(); y > 0 {
		box.Min.Y = y + white
	}
	return box
}

// AddPage starts a page without a foot. It may be drawn on after others are added,
// and by another goroutine than they are.
func (d *Document) AddPage(width, height Length) *Page {
	d.Page = &Page{Page: pdf.Page{Width: width, Height: height}}
	d.pages = append(d.pages, d.Page)
	return d.Page
}

// Lowest returns where what is drawn on a page ends, its foot and its frame left out.
func (p *Page) Lowest() (y Length) {
	for _, s := range p.Strokes[p.strokes:] {
		y = max(y, s.Path.Bounds().Max.Y)
	}
	for _, t := range p.Texts[p.texts:] {
		y = max(y, typeset.Box(t.Text).Max.Y)
	}
	return y
}

// Writable returns how much of a width words may fill: a viewer's typeface may be wider.
func (d *Document) Writable(width Length) Length { return width / max(1, d.Wider) }

// Count returns the number of pages so far.
func (d *Document) Count() int { return len(d.pages) }

// Aside lets do draw on pages that are not kept, to measure or to count.
func (d *Document) Aside(do func()) {
	page, pages := d.Page, d.pages
	d.Page, d.pages = &Page{}, nil
	defer func() { d.Page, d.pages = page, pages }()
	do()
}

// Pages ends the document and returns its pages.
func (d *Document) Pages() []*Page {
	d.Break()
	for i, p := range d.pages {
		if p.foot == nil {
			continue
		}
		area := *p.foot
		p.foot = nil
		y := area.Max.Y - typeset.Descent(render.NoteSize)
		Rule(p, geometry.Pt(area.Min.X, area.Max.Y-footTall+1.4), geometry.Pt(area.Max.X, area.Max.Y-footTall+1.4))
		right := d.PageText(i+1, len(d.pages))
		left := d.Foot
		if d.TrueSize && !d.Setup.Measured.True() {
			left = d.Setup.Measured.String()
		}
		const apart = 8
		wide := d.Writable(area.Width())
		left = typeset.Fit(left, render.NoteSize, false, wide*0.7)
		Write(p, geometry.Pt(area.Min.X, y), left, render.NoteSize, false)
		right = typeset.Fit(right, render.NoteSize, false, wide-typeset.Width(left, render.NoteSize, false)-apart)
		p.Text(render.Text{At: geometry.Pt(area.Max.X, y), String: right, Size: render.NoteSize, Align: render.End, Color: render.Black})
	}
	return d.pages
}

// name returns what it is, and of which job.
func (d *Document) name() string {
	if d.Running == "" {
		return d.Title
	}
	return d.Title + ": " + d.Running
}

// PageText returns what the foot of a page says of it.
func (d *Document) PageText(page, of int) string {
	text := fmt.Sprintf("page %d of %d", page, of)
	if d.Running != "" {
		text += " – " + d.Running
	}
	return text
}

// PDF returns the document as a PDF.
func (d *Document) PDF() ([]byte, error) {
	doc := pdf.Document{Title: d.name(), Date: d.Date, Black: d.Black}
	for _, p := range d.Pages() {
		if d.TrueSize {
			p.Setup = &d.Setup
		}
		doc.Pages = append(doc.Pages, &p.Page)
	}
	return doc.Bytes()
}

// Drawings returns each page as a drawing of its own: what a screen shows of what will
// be printed.
func (d *Document) Drawings() [][]byte {
	pages := d.Pages()
	out := make([][]byte, len(pages))
	for i, p := range pages {
		c := svg.New(p.Width, p.Height, d.PageText(i+1, len(pages)), d.name())
		c.Begin(render.Legend)
		c.Fill(geometry.Rectangle(geometry.Bx(0, 0, p.Width, p.Height)), render.White)
		c.End()
		p.Play(c, geometry.Point{})
		out[i] = c.Bytes()
	}
	return out
}

// SVG returns the document as one drawing, its pages one below the other.
func (d *Document) SVG() []byte {
	pages := d.Pages()
	var wide, tall Length
	for _, p := range pages {
		wide, tall = max(wide, p.Width), tall+p.Height
	}
	c := svg.New(wide, tall, d.name(), d.About)
	c.Begin(render.Legend)
	c.Fill(geometry.Rectangle(geometry.Bx(0, 0, wide, tall)), render.White)
	var down Length
	for _, p := range pages {
		if down > 0 {
			Rule(c, geometry.Pt(0, down), geometry.Pt(p.Width, down))
		}
		p.Play(c, geometry.Pt(0, down))
		down += p.Height
	}
	c.End()
	return c.Bytes()
}
