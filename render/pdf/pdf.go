// Package pdf writes drawings as pages of a PDF (ISO 32000-1), at true size:
// user space is 1/72 in. The typeface is embedded, and a viewer is asked to
// print without scaling. Lines and fills keep their order; words lie above
// them all.
package pdf

import (
	"fmt"
	"time"

	"github.com/signintech/gopdf"

	"forel/geometry"
	"forel/paper"
	"forel/render"
	"forel/render/typeset"
)

// Document is a PDF under construction; its last page is a render.Surface.
type Document struct {
	pdf       gopdf.GoPdf // writes the words and the typeface; all else is ours
	err       error       // the first that happened; reported by Bytes
	title     string
	date      time.Time
	black     bool
	setup     *paper.Setup
	pages     []*page
	bookmarks []bookmark
	labels    []label
}

// New starts a document with the title that viewers show.
func New(title string) *Document {
	d := &Document{title: title}
	d.pdf.Start(gopdf.Config{Unit: gopdf.UnitPT, PageSize: gopdf.Rect{W: 1, H: 1}})
	d.pdf.SetNoCompression() // words are few, and a packer for every page takes longer than all of it
	d.note(d.pdf.AddTTFFontData("regular", typeset.Regular))
	d.note(d.pdf.AddTTFFontData("bold", typeset.Bold))
	return d
}

func (d *Document) note(err error) {
	if d.err == nil && err != nil {
		d.err = err
	}
}

// PrintedOn says what the pages to come are printed with: pages are drawn in
// true millimetres and the file is scaled by what the printer was measured to
// be off (see paper.Setup.InFile), words and all. Nothing reaches out of
// paper.Setup.Printable. Without it pages are drawn as they are.
func (d *Document) PrintedOn(s paper.Setup) { d.setup = &s }

// Dated gives the document a date of creation, written in UTC to the second.
// Without one, or with the zero time, the file has no date.
func (d *Document) Dated(t time.Time) { d.date = t.UTC() }

// BlackOnly makes all that is drawn from here on pure black: every line and
// every word, and those fills that are no light tint, which are left out. No
// line is finer than render.Finest.
func (d *Document) BlackOnly() { d.black = true }

// AddPage starts a page of the given size.
func (d *Document) AddPage(width, height geometry.Length) {
	d.pages = append(d.pages, newPage(d.pdf.GetNextObjectID(), width, height, d.setup))
	d.pdf.AddPageWithOption(gopdf.PageOption{PageSize: &gopdf.Rect{W: pt(width), H: pt(height)}})
}

// Pages gives the number of pages so far.
func (d *Document) Pages() int { return len(d.pages) }

// Bytes ends the document and gives the file.
func (d *Document) Bytes() ([]byte, error) {
	if d.err != nil {
		return nil, fmt.Errorf("pdf: %w", d.err)
	}
	data, err := d.pdf.GetBytesPdfReturnErr()
	if err == nil {
		data, err = d.finish(data)
	}
	if err != nil {
		return nil, fmt.Errorf("pdf: %w", err)
	}
	return data, nil
}

// Begin opens a layer; pages have none, so it does nothing.
func (d *Document) Begin(render.Layer) {}

// End closes a layer.
func (d *Document) End() {}

// Stroke draws along a path, its arcs as Bézier curves within 0.002 mm of
// themselves. Dashes run on from one line or arc of the path to the next.
func (d *Document) Stroke(p geometry.Path, s render.Stroke) {
	if d.black {
		s.Width = max(s.Width, render.Finest)
		if s.Color != render.White {
			s.Color = render.Black
		}
	}
	d.last().stroke(p, s)
}

// Fill fills a closed path.
func (d *Document) Fill(p geometry.Path, c render.Color) {
	if d.black {
		c = c.InBlack()
	}
	d.last().fill(p, c)
}

// Text sets a line of text.
func (d *Document) Text(t render.Text) {
	if d.black && t.Color != render.White {
		t.Color = render.Black
	}
	family := "regular"
	if t.Bold {
		family = "bold"
	}
	d.note(d.pdf.SetFont(family, "", float64(t.Size)))
	d.pdf.SetTextColor(t.Color.R, t.Color.G, t.Color.B)
	back := geometry.Length(0)
	if t.Align != render.Start {
		back = typeset.Width(t.String, t.Size, t.Bold)
		if t.Align == render.Middle {
			back /= 2
		}
	}
	if t.Turned {
		d.pdf.Rotate(90, pt(t.At.X), pt(t.At.Y))
		defer d.pdf.RotateReset()
	}
	d.pdf.SetXY(pt(t.At.X-back), pt(t.At.Y))
	d.note(d.pdf.Text(typeset.Settable(t.String)))
}

func (d *Document) last() *page { return d.pages[len(d.pages)-1] }

func pt(l geometry.Length) float64 { return float64(l / geometry.PDFPoint) }
