package document

import (
	"forel/geometry"
	"forel/geometry/plan"
	"forel/geometry/wording"
	"forel/render"
	"forel/render/typeset"
)

// Check sets something to try with a box to tick, from the top of a box: what it is called,
// when it is tried (may be empty), what should be seen, and what to do when it is not, or a
// table of what may be found; write writes a length. It returns where it ends.
func Check(s render.Surface, box geometry.Box, name, when string, c plan.Check, write func(Length) string) Length {
	Tick(s, geometry.Pt(box.Min.X, box.Min.Y+4.6), 4)
	in := box
	in.Min.X += 7
	y := Paragraph(s, in, in.Min.Y, name, render.BodySize, true)
	if when != "" {
		y = Paragraph(s, in, y, when, render.NoteSize, false)
	}
	for _, see := range c.See {
		Write(s, geometry.Pt(in.Min.X, y+typeset.LineHeight(render.BodySize)), "–", render.BodySize, false)
		y = Paragraph(s, geometry.Bx(in.Min.X+4, y, in.Max.X, in.Max.Y), y, wording.Sentence(see.In(write)), render.BodySize, false) + 0.3
	}
	if c.Fails.Text != "" {
		y = Paragraph(s, in, y, "If not: "+c.Fails.In(write)+".", render.BodySize, false)
	}
	if len(c.Found) == 0 {
		return y
	}
	in.Min.Y, in.Max.X = y+0.8, in.Max.X-0.02 // a table breaks lines with a hundredth to spare
	return Found(plan.Told(c.Found, write)).Draw(s, in) + 0.8
}

// Found returns the table of findings: what is found, what it means, what to do.
func Found(rows [][]string) Table {
	return Table{Columns: []Column{{Head: "what is found", Broken: true}, {Head: "what it means", Broken: true}, {Head: "what to do", Broken: true}}, Rows: rows, Size: render.NoteSize}
}
