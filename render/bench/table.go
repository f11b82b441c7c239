package bench

import (
	"forel/geometry"
	"forel/render"
	"forel/render/typeset"
)

// table is a table on a page: columns as wide as their widest cell; what does
// not fit is wrapped in the columns that are flexible.
type table struct {
	columns []column
	flex    map[int]bool
	rows    [][]string
	tick    bool         // a box to tick off before each row
	bold    map[int]bool // columns set bold
	rules   map[int]bool // rows with a rule above them

	wide []Length // of columns, as fitted worked them out
	size render.Points
}

const (
	tickWide  Length = 5
	columnGap Length = 4
)

// widths gives each column's width within a table's.
func (t table) widths(total Length, size render.Points) []Length {
	wide := make([]Length, len(t.columns))
	var fixed, loose Length
	for i, c := range t.columns {
		for _, row := range t.rows {
			if row[i] != "" {
				wide[i] = max(wide[i], typeset.Width(row[i], size, t.bold[i]), typeset.Width(c.head, size, true))
			}
		}
		if wide[i] > 0 && t.flex[i] {
			loose += wide[i]
		}
		if wide[i] > 0 && !t.flex[i] {
			fixed += wide[i]
		}
		if wide[i] > 0 {
			fixed += columnGap
		}
	}
	if t.tick {
		fixed += tickWide
	}
	if room := total - fixed + columnGap; loose > room && loose > 0 {
		for i := range wide {
			if t.flex[i] {
				wide[i] *= room / loose
			}
		}
	}
	return wide
}

// fitted gives the table with its columns as wide as they are within a width.
func (t table) fitted(total Length) table {
	t.size = noteSize
	t.wide = t.widths(total, t.size)
	if over := sum(t.wide); over+Length(len(t.wide)-1)*columnGap > total {
		t.size = render.SmallSize
		t.wide = t.widths(total, t.size)
	}
	return t
}

// draw sets rows of a fitted table from the nth on into a box until it is full,
// and gives the row to go on with and where it ended.
func (t table) draw(on render.Surface, box geometry.Box, from int) (next int, y Length) {
	size, wide := t.size, t.wide
	y = box.Min.Y
	left := box.Min.X
	if t.tick {
		left += tickWide
	}
	cell := func(i int, x, y Length, text string, bold bool) {
		w := render.Text{At: geometry.Pt(x, y), String: text, Size: size, Bold: bold, Color: render.Black}
		if t.columns[i].right {
			w.At.X, w.Align = x+wide[i], render.End
		}
		if text != "" {
			on.Text(w)
		}
	}
	y += typeset.LineHeight(size)
	x := left
	for i, c := range t.columns {
		if wide[i] == 0 {
			continue
		}
		cell(i, x, y, c.head, true)
		x += wide[i] + columnGap
	}
	y += 1.4
	on.Stroke(geometry.Line(geometry.Pt(box.Min.X, y), geometry.Pt(box.Max.X, y)), rule)
	for n := from; n < len(t.rows); n++ {
		lines := make([][]string, len(t.columns))
		most := 1
		for i, text := range t.rows[n] {
			lines[i] = []string{text}
			if t.flex[i] {
				lines[i] = typeset.Break(text, size, t.bold[i], wide[i]+0.01)
			}
			most = max(most, len(lines[i]))
		}
		high := Length(most)*typeset.LineHeight(size) + 1.1
		if y+high > box.Max.Y && n > from {
			return n, y
		}
		if t.rules[n] && n > from {
			on.Stroke(geometry.Line(geometry.Pt(box.Min.X, y+0.6), geometry.Pt(box.Max.X, y+0.6)), rule)
		}
		base := y + 0.6 + typeset.LineHeight(size)
		if t.tick {
			on.Stroke(geometry.Rectangle(geometry.Bx(box.Min.X+0.2, base-2.2, box.Min.X+2.6, base+0.2)), render.Stroke{Width: 0.2, Color: render.Black})
		}
		x := left
		for i := range t.columns {
			if wide[i] == 0 {
				continue
			}
			for k, text := range lines[i] {
				cell(i, x, base+Length(k)*typeset.LineHeight(size), text, t.bold[i])
			}
			x += wide[i] + columnGap
		}
		y += high
	}
	y += 0.8
	on.Stroke(geometry.Line(geometry.Pt(box.Min.X, y), geometry.Pt(box.Max.X, y)), rule)
	return len(t.rows), y
}

func sum(lengths []Length) Length {
	var all Length
	for _, l := range lengths {
		all += l
	}
	return all
}

// flow sets a table on as many pages as it takes, the first below y in the box
// given, and gives the box it ended in and where.
func (b *book) flow(t table, box geometry.Box, y Length, heading string) (geometry.Box, Length) {
	t = t.fitted(box.Width())
	from := 0
	for {
		next, end := t.draw(b, geometry.Bx(box.Min.X, y, box.Max.X, box.Max.Y), from)
		if next == len(t.rows) {
			return box, end
		}
		from = next
		box = b.upright("")
		y = paragraph(b, box, box.Min.Y-1.2, heading+", continued", render.HeadSize, true) + 1
	}
}
