// Package offcuts makes the labels that are stuck on what is kept of a sheet: its number in
// the shop's ledger, its material, its size, and an arrow along its grain.
package offcuts

import (
	"forel/geometry"
	"forel/geometry/wording"
	"forel/render"
	"forel/render/document"
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

// Of a label: the white round its words, between labels, and the room for its arrow.
const (
	inset Length = 3
	apart Length = 4
	arrow Length = 16
)

// Document draws labels in two columns, a frame round each to cut along.
func Document(labels []Label, o document.Options) *document.Document {
	d := &document.Document{Options: o, Title: "Labels of offcuts", Foot: "Labels of offcuts: cut along the frames, and stick each on its offcut the same way round."}
	var blocks []document.Block
	for _, l := range labels {
		blocks = append(blocks, l.block(d))
	}
	var page geometry.Box
	d.Flow(func(column int) geometry.Box {
		if column%2 == 0 {
			page = d.NewPage(false, "")
		}
		half := (page.Width() - apart) / 2
		x := page.Min.X + Length(column%2)*(half+apart)
		return geometry.Bx(x, page.Min.Y, x+half, page.Max.Y)
	}, blocks...)
	return d
}

// block returns one label.
func (l Label) block(d *document.Document) document.Block {
	return document.Block{Above: apart, Draw: func(box geometry.Box) Length {
		words := geometry.Bx(box.Min.X+inset, box.Min.Y+inset-1, box.Max.X-inset-arrow-inset, box.Max.Y)
		y := document.Paragraph(d, words, words.Min.Y, "Offcut "+l.Number, render.HeadSize, true)
		y = document.Paragraph(d, words, y, wording.OneLine(l.Material), render.BodySize, false)
		y = document.Paragraph(d, words, y, l.Size, render.BodySize, true)
		if l.Grain == geometry.GrainWidth || l.Grain == geometry.GrainHeight {
			y = document.Paragraph(d, words, y, wording.Capital(l.Runs)+" along the arrow", render.NoteSize, false)
		} else {
			y = document.Paragraph(d, words, y, "No "+l.Runs, render.NoteSize, false)
		}
		y = document.Paragraph(d, words, y, wording.Capital(wording.OneLine(l.From)), render.NoteSize, false)
		y = max(y, words.Min.Y+arrow) + inset - 1
		l.figure(d, geometry.Bx(box.Max.X-inset-arrow, box.Min.Y+inset, box.Max.X-inset, box.Min.Y+inset+arrow))
		d.Stroke(geometry.Rectangle(geometry.Bx(box.Min.X, box.Min.Y, box.Max.X, y)), render.Stroke{Width: 0.25, Color: render.Black})
		return y
	}}
}

// figure draws the offcut as it lies, wide or high, with the arrow.
func (l Label) figure(d *document.Document, in geometry.Box) {
	thin := render.Stroke{Width: 0.18, Color: render.Black}
	w, h := in.Width(), in.Height()
	if l.Wide {
		h *= 0.62
	} else {
		w *= 0.62
	}
	mid := geometry.Pt((in.Min.X+in.Max.X)/2, (in.Min.Y+in.Max.Y)/2)
	is := geometry.Bx(mid.X-w/2, mid.Y-h/2, mid.X+w/2, mid.Y+h/2)
	d.Stroke(geometry.Rectangle(is), thin)
	const head = 1.4
	line := func(from, to geometry.Point) {
		d.Stroke(geometry.Line(from, to), render.Stroke{Width: 0.35, Color: render.Black})
	}
	switch l.Grain {
	case geometry.GrainWidth:
		a, b := geometry.Pt(is.Min.X+1.5, mid.Y), geometry.Pt(is.Max.X-1.5, mid.Y)
		line(a, b)
		for _, s := range []Length{-1, 1} {
			line(a, geometry.Pt(a.X+head, a.Y+s*head))
			line(b, geometry.Pt(b.X-head, b.Y+s*head))
		}
	case geometry.GrainHeight:
		a, b := geometry.Pt(mid.X, is.Min.Y+1.5), geometry.Pt(mid.X, is.Max.Y-1.5)
		line(a, b)
		for _, s := range []Length{-1, 1} {
			line(a, geometry.Pt(a.X+s*head, a.Y+head))
			line(b, geometry.Pt(b.X+s*head, b.Y-head))
		}
	}
}
