// Package pdf writes drawings as pages of a PDF (ISO 32000-1), at true size:
// user space is 1/72 in. The typeface is embedded, and a viewer is asked to
// print without scaling.
package pdf

import (
	"compress/zlib"
	"fmt"

	"github.com/signintech/gopdf"

	"forel/geometry"
	"forel/render"
	"forel/render/typeset"
)

// flatness is how far the chords that stand for an arc may leave it.
const flatness geometry.Length = 0.005

// Document is a PDF under construction; its last page is a render.Surface.
type Document struct {
	pdf  gopdf.GoPdf
	err  error // the first that happened; reported by Bytes
	page int
}

// New starts a document with the title that viewers show.
func New(title string) *Document {
	d := &Document{}
	d.pdf.Start(gopdf.Config{Unit: gopdf.UnitPT, PageSize: gopdf.Rect{W: 1, H: 1}})
	d.pdf.SetCompressLevel(zlib.BestSpeed) // a tenth larger, for a fifth of the time
	d.pdf.SetInfo(gopdf.PdfInfo{Title: title, Creator: "forel", Producer: "forel"})
	d.note(d.pdf.AddTTFFontData("regular", typeset.Regular))
	d.note(d.pdf.AddTTFFontData("bold", typeset.Bold))
	return d
}

func (d *Document) note(err error) {
	if d.err == nil && err != nil {
		d.err = err
	}
}

// AddPage starts a page of the given size.
func (d *Document) AddPage(width, height geometry.Length) {
	d.pdf.AddPageWithOption(gopdf.PageOption{PageSize: &gopdf.Rect{W: pt(width), H: pt(height)}})
	d.page++
}

// Bookmark names the last page in the viewer's list of contents.
func (d *Document) Bookmark(title string) { d.pdf.AddOutline(title) }

// Pages gives the number of pages so far.
func (d *Document) Pages() int { return d.page }

// Bytes ends the document and gives the file.
func (d *Document) Bytes() ([]byte, error) {
	if d.err != nil {
		return nil, fmt.Errorf("pdf: %w", d.err)
	}
	data, err := d.pdf.GetBytesPdfReturnErr()
	if err != nil {
		return nil, fmt.Errorf("pdf: %w", err)
	}
	return actualSize(data)
}

// Begin opens a layer; pages have none, so it does nothing.
func (d *Document) Begin(render.Layer) {}

// End closes a layer.
func (d *Document) End() {}

// Stroke draws along a path.
func (d *Document) Stroke(p geometry.Path, s render.Stroke) {
	d.pdf.SetStrokeColor(s.Color.R, s.Color.G, s.Color.B)
	d.pdf.SetLineWidth(pt(s.Width))
	dash := make([]float64, len(s.Dash))
	var period geometry.Length
	for i, l := range s.Dash {
		dash[i] = pt(l)
		period += l
	}
	points := p.Flatten(flatness)
	if p.Closed {
		d.pdf.SetCustomLineType(dash, pt(s.Phase))
		d.pdf.Polygon(at(points), "D")
		return
	}
	phase := s.Phase
	for i := 1; i < len(points); i++ {
		if period > 0 {
			phase -= geometry.Length(int(phase/period)) * period
		}
		d.pdf.SetCustomLineType(dash, pt(phase))
		a, b := points[i-1], points[i]
		d.pdf.Line(pt(a.X), pt(a.Y), pt(b.X), pt(b.Y))
		phase += a.Distance(b)
	}
}

// Fill fills a closed path.
func (d *Document) Fill(p geometry.Path, c render.Color) {
	d.pdf.SetFillColor(c.R, c.G, c.B)
	d.pdf.Polygon(at(p.Flatten(flatness)), "F")
}

// Text sets a line of text.
func (d *Document) Text(t render.Text) {
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

func pt(l geometry.Length) float64 { return float64(l / geometry.PDFPoint) }

func at(points []geometry.Point) []gopdf.Point {
	out := make([]gopdf.Point, len(points))
	for i, p := range points {
		out[i] = gopdf.Point{X: pt(p.X), Y: pt(p.Y)}
	}
	return out
}
