package fit

import (
	"forel/geometry"
	"forel/render"
	"forel/render/document"
	"forel/render/shape"
)

// Lines of the drawings. They differ in dash and weight, so that a print in
// black alone can be read.
var (
	white     = render.White
	pale      = render.Color{R: 0xE8, G: 0xE8, B: 0xE8}
	axis      = render.Stroke{Width: 0.25, Color: render.Black}
	edge      = render.Stroke{Width: 0.35, Color: render.Black}
	foldLine  = render.Stroke{Width: 0.25, Dash: []Length{3, 1.2}, Color: render.Black}
	limitLine = render.Stroke{Width: 0.45, Color: render.Vermilion}
	// beyondLimit hatches the room that is too little or too much.
	beyondLimit = shape.Hatch{Angle: -45, Gap: 1.7, Stroke: render.Stroke{Width: 0.14, Color: render.Vermilion}}
	// curves are those of a dimension's gaps, from the widest to the tightest; what
	// is beyond them has the last.
	curves = []render.Stroke{
		{Width: 0.55, Color: render.Black},
		{Width: 0.5, Dash: []Length{3, 1.2}, Color: render.Blue},
		{Width: 0.5, Dash: []Length{0.6, 1}, Color: render.Blue},
	}
)

// curve returns the line of the nth gap of a dimension.
func curve(n int) render.Stroke { return curves[min(n, len(curves)-1)] }

// words sets one line.
func (d *doc) words(x, y Length, s string, size render.Points, align render.Align, bold bool) {
	d.Text(render.Text{At: geometry.Pt(x, y), String: s, Size: size, Align: align, Bold: bold, Color: render.Black})
}

// line draws a straight line.
func (d *doc) line(x0, y0, x1, y1 Length, s render.Stroke) {
	d.Stroke(geometry.Line(geometry.Pt(x0, y0), geometry.Pt(x1, y1)), s)
}

// box draws the outline of a rectangle.
func (d *doc) box(b geometry.Box, s render.Stroke) { d.Stroke(geometry.Rectangle(b), s) }

// paragraph sets text below y within a box's sides and returns where it ends.
func (d *doc) paragraph(box geometry.Box, y Length, text string, size render.Points, bold bool) Length {
	box.Min.Y = y
	return d.Paragraph(text, size, bold).Draw(box)
}

// tableOf returns rows below a row of heads as a table. The first column is flush
// left, and the last where it has no head; the others flush right. Words in the last
// column without a head are broken, else those in the first.
func tableOf(rows [][]string) document.Table {
	t := document.Table{Rows: rows[1:], Size: render.NoteSize, Whole: true}
	last := len(rows[0]) - 1
	wordy := rows[0][last] == ""
	for i, head := range rows[0] {
		t.Columns = append(t.Columns, document.Column{Head: head, Right: !(i == 0 && !wordy || i == last && wordy), Broken: wordy && i == last || !wordy && i == 0})
	}
	return t
}
