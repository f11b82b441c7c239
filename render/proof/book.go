package proof

import (
	"forel/geometry"
	"forel/geometry/plan"
	"forel/render"
	"forel/render/document"
)

// book is the document being made.
type book struct {
	plan.Plan
	*document.Document
	faces  []face
	looks  looks
	pageOf map[geometry.Face]int // on which a face is drawn flat
}

// substitute is by how much wider a viewer's typeface may be than ours.
const substitute = 1.2

// newBook starts the document of a proof. Nothing of it is to be cut: no layer is
// opened.
func newBook(p plan.Plan, o Options) *book {
	d := &document.Document{Options: o, Title: "Proof: " + name(p), Running: name(p), Wider: substitute,
		About: "A " + p.Kind + " folded up from " + from(p) + ": seen from outside, then every face with what lies on it. " +
			"Figures, not at true size: not to be cut from.",
		Foot: "Figures, not at true size: do not cut from this page."}
	return &book{Plan: p, Document: d, faces: study(p.Proof), looks: looksOf(p.Proof), pageOf: map[geometry.Face]int{}}
}

// Draw draws the case from outside at an angle, what is wrong if anything is,
// then every face flat, and a table of them.
func Draw(p plan.Plan, o Options) *document.Document {
	b := newBook(p, o)
	first := 2
	if !p.Proof.Sound() {
		b.Aside(func() {
			b.faultPages()
			first += b.Count()
		})
	}
	for i, sp := range p.Proof.Spreads {
		for _, row := range sp.Rows {
			for _, cell := range row {
				if _, ok := faceOf(b.faces, cell.Face); ok {
					b.pageOf[cell.Face] = first + i
				}
			}
		}
	}
	b.solidPage()
	if !p.Proof.Sound() {
		b.faultPages()
	}
	if len(b.faces) > 0 {
		b.facePages()
	}
	return b.Document
}

// measured returns where drawing something ends, without keeping it.
func (b *book) measured(draw func() Length) (end Length) {
	b.Aside(func() { end = draw() })
	return end
}

// heading sets a head with an explanation at the top of a page and returns where
// it ends.
func (b *book) heading(box geometry.Box, head, text string) Length {
	y := b.paragraph(box, box.Min.Y, head, render.HeadSize, true)
	return b.paragraph(box, y, text, render.BodySize, false) + 2
}

// paragraph sets text below y within a box's sides and returns where it ends.
func (b *book) paragraph(box geometry.Box, y Length, text string, size render.Points, bold bool) Length {
	box.Max.X = box.Min.X + box.Width()*spare[bold]
	return document.Paragraph(b, box, y, text, size, bold)
}
