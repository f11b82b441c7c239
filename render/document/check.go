package document

import (
	"forel/geometry"
	"forel/render"
	"forel/render/typeset"
)

// Check sets something to try with a box to tick: its name, when it is tried (may be
// empty), what should be seen, and what to do when it is not, without full stop (may be empty), or a table of
// what may be found. It returns where it ends.
func Check(s render.Surface, box geometry.Box, name, when string, see []string, fails string, found [][]string) Length {
	Tick(s, geometry.Pt(box.Min.X, box.Min.Y+4.6), 4)
	in := box
	in.Min.X += 7
	y := Paragraph(s, in, in.Min.Y, name, render.BodySize, true)
	if when != "" {
		y = Paragraph(s, in, y, when, render.NoteSize, false)
	}
	for _, t := range see {
		Write(s, geometry.Pt(in.Min.X, y+typeset.LineHeight(render.BodySize)), "–", render.BodySize, false)
		y = Paragraph(s, geometry.Bx(in.Min.X+4, y, in.Max.X, in.Max.Y), y, t, render.BodySize, false) + 0.3
	}
	if fails != "" {
		y = Paragraph(s, in, y, "If not: "+fails+".", render.BodySize, false)
	}
	if len(found) == 0 {
		return y
	}
	in.Min.Y, in.Max.X = y+0.8, in.Max.X-0.02 // a table breaks lines with a hundredth to spare
	return Found(found).Draw(s, in) + 0.8
}

// Found returns the table of findings: what is found, what it means, what to do.
func Found(rows [][]string) Table {
	return Table{Columns: []Column{{Head: "what is found", Broken: true}, {Head: "what it means", Broken: true}, {Head: "what to do", Broken: true}}, Rows: rows, Size: render.NoteSize}
}
