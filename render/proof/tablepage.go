package proof

import (
	"forel/geometry"
	"forel/render"
	"forel/render/typeset"
)

// table sets the table of all faces into a box, or on a page of its own if it
// is too tall for that.
func (b *book) table(box geometry.Box) {
	if b.quiet().tableAt(box) > box.Max.Y {
		box = b.newPage("Face by face")
		box.Min.Y -= 1.2
	}
	b.tableAt(box)
}

// tableAt sets the table and gives where it ends.
func (b *book) tableAt(box geometry.Box) Length {
	y := b.paragraph(box, box.Min.Y, "Face by face", render.HeadSize, true)
	rows := b.faceRows(each(b.faces), b.Round)
	const size = noteSize
	words := func(i int) bool { return i == 0 || i == len(rows[0])-1 }
	// Columns as wide as they must be, what is left over shared between them.
	wide := make([]Length, len(rows[0]))
	for _, row := range rows {
		for i, cell := range row {
			wide[i] = max(wide[i], typeset.Width(cell, size, true)*1.1)
		}
	}
	gap := box.Width()
	for _, w := range wide {
		gap -= w
	}
	gap = min(gap/Length(len(wide)-1), 8)
	for n, row := range rows {
		y += typeset.LineHeight(size) + 1.4
		x := box.Min.X
		for i, cell := range row {
			t := render.Text{At: geometry.Pt(x, y), String: cell, Size: size, Bold: n == 0, Color: render.Black}
			if !words(i) {
				t.At.X, t.Align = x+wide[i], render.End
			}
			if cell != "" {
				b.Text(t)
			}
			x += wide[i] + gap
		}
		if n == 0 || n == len(rows)-1 {
			y += 1.4
			b.Stroke(geometry.Line(geometry.Pt(box.Min.X, y), geometry.Pt(box.Max.X, y)), rule)
		}
	}
	y += 2
	for _, n := range b.notes(b.faces, b.Round) {
		y = b.paragraph(box, y, capital(n)+".", size, false) + 0.6
	}
	return y
}
