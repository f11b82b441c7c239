package handout

import (
	"forel/geometry"
	"forel/render"
	"forel/render/layout"
)

// checks gives the last block: what to check, and what to do when a check fails.
func (b *book) checks() block {
	good, bad := b.said(b.plan.Finished.Good), b.said(b.plan.Finished.Bad)
	const a, c = "Check the finished case", "When a check fails"
	width := b.column().Width()
	tickHead := func(y Length, box geometry.Box, texts []string) Length {
		y = layout.Paragraph(b, box, y, a, render.HeadSize, true) + 0.8
		for _, t := range texts {
			b.Stroke(geometry.Rectangle(geometry.Bx(box.Min.X, y+0.7, box.Min.X+tick, y+0.7+tick)), render.Stroke{Width: 0.25, Color: render.Black})
			y = layout.Paragraph(b, geometry.Bx(box.Min.X+6, y, box.Max.X, box.Max.Y), y, t, render.BodySize, false) + 1.4
		}
		return y
	}
	height := layout.ParagraphHeight(a, render.HeadSize, true, width) + 0.8 + 3 + layout.StepsHeight(c, bad, width)
	for _, t := range good {
		height += layout.ParagraphHeight(t, render.BodySize, false, width-6) + 1.4
	}
	return block{
		mark:   "Checks",
		height: func(Length) Length { return height },
		draw: func(box geometry.Box, _ Length) {
			y := tickHead(box.Min.Y, box, good) + 3
			layout.Points(b, geometry.Bx(box.Min.X, y, box.Max.X, box.Max.Y), c, bad)
		},
	}
}
