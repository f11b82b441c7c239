package proof

import (
	"forel/geometry"
	"forel/geometry/plan"
	"forel/render"
	"forel/render/document"
	"forel/render/typeset"
)

// doc is the document being made.
type doc struct {
	plan.Plan
	*document.Document
	faces  []face
	looks  looks
	pageOf map[geometry.Face]int // on which a face is drawn flat
}

// newDoc starts the document of a proof. Nothing of it is to be cut: no layer is
// opened.
func newDoc(p plan.Plan, o Options) *doc {
	pages := &document.Document{Options: o, Title: "Proof: " + name(p), Running: name(p), Wider: typeset.Substitute,
		About: "A " + p.Kind + " folded up from " + from(p) + ": seen from outside, then every face with what lies on it. " +
			"Figures, not at true size: not to be cut from.",
		Foot: "Figures, not at true size: do not cut from this page."}
	return &doc{Plan: p, Document: pages, faces: study(p.Proof), looks: looksOf(p.Proof), pageOf: map[geometry.Face]int{}}
}

// Document draws the case from outside at an angle, what is wrong if anything is,
// then every face flat, and a table of them.
func Document(p plan.Plan, o Options) *document.Document {
	d := newDoc(p, o)
	first := 2
	if !p.Proof.Sound() {
		d.Aside(func() {
			d.faultPages()
			first += d.Count()
		})
	}
	for i, sp := range p.Proof.Spreads {
		for _, row := range sp.Rows {
			for _, cell := range row {
				if _, ok := faceOf(d.faces, cell.Face); ok {
					d.pageOf[cell.Face] = first + i
				}
			}
		}
	}
	d.solidPage()
	if !p.Proof.Sound() {
		d.faultPages()
	}
	if len(d.faces) > 0 {
		d.facePages()
	}
	return d.Document
}

// measured returns where drawing something ends, without keeping it.
func (d *doc) measured(draw func() Length) (end Length) {
	d.Aside(func() { end = draw() })
	return end
}

// heading sets a head with an explanation at the top of a page and returns where
// it ends.
func (d *doc) heading(box geometry.Box, head, text string) Length {
	y := d.paragraph(box, box.Min.Y, head, render.HeadSize, true)
	return d.paragraph(box, y, text, render.BodySize, false) + 2
}

// paragraph sets text below y within a box's sides and returns where it ends.
func (d *doc) paragraph(box geometry.Box, y Length, text string, size render.Points, bold bool) Length {
	box.Max.X = box.Min.X + box.Width()*spare[bold]
	return document.Paragraph(d, box, y, text, size, bold)
}
