package proof

import (
	"forel/geometry"
	"forel/render"
	"forel/render/document"
)

// book is the document being made.
type book struct {
	Subject
	*document.Document
	faces   []face
	looks   looks
	base    look                  // of a face inside where nothing is turned in
	pageOf  map[geometry.Face]int // on which a face is drawn flat
	caption func(face) string     // says what lies on a face, where that is not covering
}

// substitute is by how much wider a viewer's typeface may be than ours.
const substitute = 1.2

// newDocument starts the document of a subject. Nothing of it is to be cut: no layer
// is opened.
func newDocument(title string, s Subject, o Options) *document.Document {
	return &document.Document{Options: o, Title: title, Running: s.name(), Wider: substitute,
		About: "A slipcase folded up from its pieces: the case from outside, then every face with what lies on it. " +
			"Figures, not at true size: not to be cut from.",
		Foot: "Figures, not at true size: do not cut from this page."}
}

// Draw draws the case from outside at an angle, what is wrong if anything is,
// then every face flat, and a table of them.
func Draw(s Subject, o Options) *document.Document {
	b := &book{
		Subject: s, Document: newDocument("Proof: "+s.name(), s, o), faces: study(s.Report),
		looks: looksOf(s), pageOf: map[geometry.Face]int{},
	}
	b.base = s.inside(b.looks)
	first := 2
	if !s.Report.Sound() {
		b.Aside(func() {
			b.faultPages()
			first += b.Count()
		})
	}
	for i, sp := range b.spreads() {
		for _, row := range sp.rows {
			for _, face := range row.names {
				if _, ok := faceOf(b.faces, face); ok {
					b.pageOf[face] = first + i
				}
			}
		}
	}
	b.solidPage()
	if !s.Report.Sound() {
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
