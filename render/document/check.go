package document

import (
	"forel/geometry"
	"forel/render"
	"forel/render/typeset"
)

// Check sets something to try with a box to tick: its name, when it is tried (may be
// empty), what should be seen, and what to do when it is not. It returns where it
// ends.
func Check(s render.Surface, box geometry.Box, name, when string, see []string, fails string) Length {
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
	return Paragraph(s, in, y, "If not: "+fails, render.BodySize, false)
}
