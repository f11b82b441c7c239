package fit

import (
	"forel/geometry"
	"forel/render"
	"forel/render/typeset"
)

// Lines of the drawings. They differ in dash and weight, so that a print in
// black alone can be read.
var (
	white     = render.Color{R: 255, G: 255, B: 255}
	pale      = render.Color{R: 0xE8, G: 0xE8, B: 0xE8}
	rule      = render.Stroke{Width: 0.15, Color: render.Grey}
	axis      = render.Stroke{Width: 0.25, Color: render.Black}
	edge      = render.Stroke{Width: 0.35, Color: render.Black}
	foldLine  = render.Stroke{Width: 0.25, Dash: []Length{3, 1.2}, Color: render.Black}
	limitLine = render.Stroke{Width: 0.45, Color: render.Vermilion}
	hatchLine = render.Stroke{Width: 0.14, Color: render.Vermilion}
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

// pen draws on a surface.
type pen struct {
	render.Surface
	Options
}

// words sets one line.
func (p pen) words(x, y Length, s string, size render.Points, align render.Align, bold bool) {
	p.Text(render.Text{At: geometry.Pt(x, y), String: s, Size: size, Align: align, Bold: bold, Color: render.Black})
}

// line draws a straight line.
func (p pen) line(x0, y0, x1, y1 Length, s render.Stroke) {
	p.Stroke(geometry.Line(geometry.Pt(x0, y0), geometry.Pt(x1, y1)), s)
}

// box draws the outline of a rectangle.
func (p pen) box(b geometry.Box, s render.Stroke) { p.Stroke(geometry.Rectangle(b), s) }

// spare is the part of a line that words may fill: a viewer of an SVG that
// lacks the typeface takes another, which may be wider.
const spare = 0.9

// paragraph sets text below y within a box's sides and gives where it ends.
func (p pen) paragraph(box geometry.Box, y Length, text string, size render.Points, bold bool) Length {
	for _, l := range typeset.Break(text, size, bold, box.Width()*spare) {
		y += typeset.LineHeight(size)
		p.words(box.Min.X, y, l, size, render.Start, bold)
	}
	return y + typeset.Descent(size)
}

// table sets rows under a row of heads and gives where it ends. The first column
// is flush left, and the last where it has no head; the others flush right. Words
// in the last column are broken.
func (p pen) table(box geometry.Box, y Length, rows [][]string, size render.Points) Length {
	if len(rows) < 2 {
		return y
	}
	last := len(rows[0]) - 1
	wordy := rows[0][last] == ""
	wide := make([]Length, len(rows[0]))
	heads := make([][]string, len(rows[0]))
	deepest := 1
	for _, row := range rows[1:] {
		for i, cell := range row {
			wide[i] = max(wide[i], typeset.Width(cell, size, false)*1.08)
		}
	}
	room := box.Width()
	for i := range wide {
		// A head is broken over lines rather than widen a column of numbers.
		for _, w := range typeset.Wrap(rows[0][i], size, true, 1) {
			wide[i] = max(wide[i], typeset.Width(w, size, true)*1.08)
		}
		if !(wordy && i == last) {
			room -= wide[i]
		}
	}
	columns := Length(last)
	gap := min(room/columns, 7)
	if wordy {
		gap = 4
		wide[last] = room - gap*columns
	}
	for i, h := range rows[0] {
		heads[i] = typeset.Wrap(h, size, true, wide[i]*1.001)
		deepest = max(deepest, len(heads[i]))
	}
	at := func(i int) (Length, render.Align) {
		x := box.Min.X
		for k := range i {
			x += wide[k] + gap
		}
		if i == 0 && !wordy || i == last && wordy {
			return x, render.Start
		}
		return x + wide[i], render.End
	}
	lh := typeset.LineHeight(size)
	for i := range heads {
		x, align := at(i)
		for k, h := range heads[i] {
			p.words(x, y+lh*Length(deepest-len(heads[i])+k+1), h, size, align, true)
		}
	}
	y += lh*Length(deepest) + 1.2
	p.line(box.Min.X, y, box.Max.X, y, rule)
	for _, row := range rows[1:] {
		lines := 1
		for i, cell := range row {
			x, align := at(i)
			if wordy && i == last {
				broken := typeset.Break(cell, size, false, wide[i]*spare)
				lines = max(lines, len(broken))
				for k, l := range broken {
					p.words(x, y+lh*Length(k+1)+0.5, l, size, align, false)
				}
				continue
			}
			p.words(x, y+lh+0.5, cell, size, align, false)
		}
		y += lh*Length(lines) + 0.8
	}
	y += 0.6
	p.line(box.Min.X, y, box.Max.X, y, rule)
	return y
}
