package proof

import (
	"time"

	"forel/geometry"
	"forel/paper"
	"forel/render"
	"forel/render/pdf"
	"forel/render/svg"
)

// Drawing is the pictures of a proof, page by page, ready to be written in any
// format. It is a render.Surface while it is made.
type Drawing struct {
	black bool
	date  time.Time // zero: none
	title string
	sheet paper.Sheet
	pages []page
	at    int // the page drawn on
}

// page is a page with all that is drawn on it, in order.
type page struct {
	bookmark string
	steps    []func(render.Surface)
}

func newDrawing(s Subject, sheet paper.Sheet) *Drawing {
	return &Drawing{title: "Proof: " + s.name(), sheet: sheet}
}

// Pages gives the number of pages.
func (d *Drawing) Pages() int { return len(d.pages) }

// Page draws one page, from 0, on a surface in millimetres from the page's
// upper left corner. Nothing of it is to be cut: no layer is opened.
func (d *Drawing) Page(i int, on render.Surface) {
	for _, step := range d.pages[i].steps {
		step(on)
	}
}

// PDF gives the pictures as a document.
func (d *Drawing) PDF() ([]byte, error) {
	doc := pdf.New(d.title)
	doc.Dated(d.date)
	if d.black {
		doc.BlackOnly()
	}
	for i, p := range d.pages {
		doc.AddPage(d.sheet.Width, d.sheet.Height)
		doc.Bookmark(p.bookmark)
		d.Page(i, doc)
	}
	return doc.Bytes()
}

// SVG gives the pictures as one canvas, the pages one below the other.
func (d *Drawing) SVG() []byte {
	w, h := d.sheet.Width, d.sheet.Height
	c := svg.New(w, h*Length(d.Pages()), d.title,
		"A slipcase folded up from its pieces: the case from outside, then every face with what lies on it. "+
			"Figures, not at true size: not to be cut from.")
	c.Begin(render.Legend)
	for i := range d.pages {
		on := lowered{c, h * Length(i)}
		on.Fill(geometry.Rectangle(geometry.Bx(0, 0, w, h)), white)
		if i > 0 {
			on.Stroke(geometry.Line(geometry.Pt(0, 0), geometry.Pt(w, 0)), rule)
		}
		d.Page(i, on)
	}
	c.End()
	return c.Bytes()
}

// AddPage starts a page. The bookmark is for a viewer's list of contents.
func (d *Drawing) AddPage(bookmark string) {
	d.pages = append(d.pages, page{bookmark: bookmark})
	d.at = len(d.pages) - 1
}

// turnTo goes on drawing on a page, from 0.
func (d *Drawing) turnTo(i int) { d.at = i }

func (d *Drawing) add(step func(render.Surface)) {
	p := &d.pages[d.at]
	p.steps = append(p.steps, step)
}

// Begin opens a layer; a proof has none.
func (d *Drawing) Begin(render.Layer) {}

// End closes a layer.
func (d *Drawing) End() {}

// Stroke draws along a path.
func (d *Drawing) Stroke(p geometry.Path, s render.Stroke) {
	d.add(func(on render.Surface) { on.Stroke(p, s) })
}

// Fill fills a closed path.
func (d *Drawing) Fill(p geometry.Path, c render.Color) {
	d.add(func(on render.Surface) { on.Fill(p, c) })
}

// Text sets one line of text.
func (d *Drawing) Text(t render.Text) { d.add(func(on render.Surface) { on.Text(t) }) }

// lowered is a surface on which everything is drawn further down.
type lowered struct {
	render.Surface
	down Length
}

// Stroke draws along a path.
func (l lowered) Stroke(p geometry.Path, s render.Stroke) {
	l.Surface.Stroke(p.Move(geometry.Pt(0, l.down)), s)
}

// Fill fills a closed path.
func (l lowered) Fill(p geometry.Path, c render.Color) {
	l.Surface.Fill(p.Move(geometry.Pt(0, l.down)), c)
}

// Text sets one line of text.
func (l lowered) Text(t render.Text) {
	t.At.Y += l.down
	l.Surface.Text(t)
}
