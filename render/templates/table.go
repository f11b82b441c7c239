package templates

import (
	"fmt"

	"forel/geometry"
	"forel/render"
	"forel/render/typeset"
)

// column is one column of the table of pieces.
type column struct {
	head  string
	right geometry.Length // of its text, from the table's left; 0: starts at left
	left  geometry.Length
	wrap  geometry.Length    // where its text is broken; 0: nowhere
	cell  func(i int) string // of the ith piece
}

// cut gives how many of a pattern are cut: none of one that is a piece seen from
// its other face.
func (b *booklet) cut(p geometry.Piece) string {
	if p.FaceOf != "" {
		return "–"
	}
	return fmt.Sprint(p.Count)
}

// of gives what a pattern is cut from.
func of(p geometry.Piece) string {
	if p.FaceOf != "" {
		return "drawing"
	}
	return string(p.Material)
}

// narrow is the width of a table whose columns are set closer.
const narrow geometry.Length = 165

// table lists every piece with its size and pages.
func (f *flow) table() {
	w := f.box.Width()
	const pages = 28 // wide at most
	drawn := f.plan.Drawn()
	columns := []column{
		{head: "piece", left: 0, cell: func(i int) string { return drawn[i].Name }},
		{head: "cut", right: 44, cell: func(i int) string { return f.cut(drawn[i]) }},
		{head: "of", left: 50, cell: func(i int) string { return of(drawn[i]) }},
		{head: "width", right: w - 86, cell: func(i int) string { w, _ := drawn[i].Size(); return f.Round.Pretty(w) }},
		{head: "height", right: w - 58, cell: func(i int) string { _, h := drawn[i].Size(); return f.Round.Pretty(h) }},
		{head: "grain along", left: w - 50, cell: func(i int) string { return string(drawn[i].Grain) }},
		{head: "pages", right: w, wrap: pages, cell: func(i int) string { return f.pagesText(f.layout.Patterns[i]) }},
	}
	if w < narrow {
		columns[1].right, columns[2].left = 36, 39
		columns[3].right, columns[4].right = 70, 89
		columns[5].head, columns[5].left = "grain", 91.5
		columns[6].wrap = w - 104
	}
	line := typeset.LineHeight(render.BodySize)
	row := func(bold bool, cells [][]string) {
		f.y += 1.6
		for i, c := range columns {
			for k, text := range cells[i] {
				t := render.Text{At: geometry.Pt(f.box.Min.X+c.left, f.y+geometry.Length(k+1)*line), String: text, Size: render.BodySize, Bold: bold, Color: render.Black}
				if c.right > 0 {
					t.At.X, t.Align = f.box.Min.X+c.right, render.End
				}
				f.Text(t)
			}
		}
		f.y += geometry.Length(tallest(cells)) * line
	}
	head := func() {
		var cells [][]string
		for _, c := range columns {
			cells = append(cells, []string{c.head})
		}
		row(true, cells)
		f.y += 1.6
		f.rule(geometry.Pt(f.box.Min.X, f.y), geometry.Pt(f.box.Max.X, f.y))
	}
	const below = 2 // the last row, to the rule
	f.room(2 * (1.6 + line + below))
	head()
	for i := range drawn {
		var cells [][]string
		for _, c := range columns {
			text := []string{c.cell(i)}
			if c.wrap > 0 {
				text = typeset.Break(text[0], render.BodySize, false, c.wrap)
			}
			cells = append(cells, text)
		}
		if f.room(1.6 + geometry.Length(tallest(cells))*line + below) {
			head()
		}
		row(false, cells)
	}
	f.y += below
	f.rule(geometry.Pt(f.box.Min.X, f.y), geometry.Pt(f.box.Max.X, f.y))
	f.y += 0.8
	note := "Sizes here are rounded " + f.Round.String() + "; the patterns are exact. " + sentence(f.plan.Runs)
	for _, r := range f.plan.Remarks {
		note += " " + sentence(r.In(f.Round.Pretty))
	}
	for _, m := range f.plan.Mistaken {
		note += " Take care: " + m + "."
	}
	f.paragraph(note, render.NoteSize, false)
}

// tallest gives how many lines a row of a table takes.
func tallest(cells [][]string) (lines int) {
	for _, c := range cells {
		lines = max(lines, len(c))
	}
	return lines
}
