// Package offcuts makes the labels that are stuck on what is kept of a sheet: its number in
// the shop's ledger, its material, its size, and an arrow along its grain.
package offcuts

import (
	"forel/geometry"
	"forel/geometry/wording"
	"forel/render"
	"forel/render/document"
	"forel/render/shape"
)

// Length is a distance in millimetres.
type Length = geometry.Length

// Label is what is told of an offcut.
type Label struct {
	Number   string
	Material string
	Size     string         // in words, width first
	Runs     string         // "grain", or "flutes"
	Grain    geometry.Grain // along its width, along its height, or none
	Wide     bool           // it is wider than high
	From     string
}

// Of a label: the room for its arrow, and the white before it.
const (
	arrow  Length = 16
	before Length = 3
)

// Document draws labels in two columns, a frame round each to cut along.
func Document(labels []Label, o document.Options) *document.Document {
	d := &document.Document{Options: o, Title: "Labels of offcuts", Foot: "Labels of offcuts: cut along the frames, and stick each on its offcut the same way round."}
	d.Labels(len(labels), func(n int, in geometry.Box) Length { return labels[n].draw(d, in) })
	return d
}

// draw draws what is on a label.
func (l Label) draw(d *document.Document, in geometry.Box) Length {
	words := in
	words.Max.X -= arrow + before
	y := document.Paragraph(d, words, words.Min.Y, "Offcut "+l.Number, render.HeadSize, true)
	y = document.Paragraph(d, words, y, wording.OneLine(l.Material), render.BodySize, false)
	y = document.Paragraph(d, words, y, l.Size, render.BodySize, true)
	runs := "No " + l.Runs
	if l.Grain == geometry.GrainWidth || l.Grain == geometry.GrainHeight {
		runs = wording.Capital(l.Runs) + " along the arrow"
	}
	y = document.Paragraph(d, words, y, runs, render.NoteSize, false)
	y = document.Paragraph(d, words, y, wording.Capital(wording.OneLine(l.From)), render.NoteSize, false)
	l.figure(d, geometry.Bx(in.Max.X-arrow, in.Min.Y+1, in.Max.X, in.Min.Y+1+arrow))
	return max(y, words.Min.Y+arrow)
}

// figure draws the offcut as it lies, wide or high, with the arrow.
func (l Label) figure(d *document.Document, in geometry.Box) {
	w, h := in.Width(), in.Height()
	if l.Wide {
		h *= 0.62
	} else {
		w *= 0.62
	}
	mid := in.Center()
	is := geometry.Bx(mid.X-w/2, mid.Y-h/2, mid.X+w/2, mid.Y+h/2)
	d.Stroke(geometry.Rectangle(is), render.Stroke{Width: 0.18, Color: render.Black})
	switch l.Grain {
	case geometry.GrainWidth:
		shape.Thin.Twin(d, geometry.Pt(is.Min.X+1.5, mid.Y), geometry.Pt(is.Max.X-1.5, mid.Y))
	case geometry.GrainHeight:
		shape.Thin.Twin(d, geometry.Pt(mid.X, is.Min.Y+1.5), geometry.Pt(mid.X, is.Max.Y-1.5))
	}
}
