package handout

import (
	"forel/geometry"
	"forel/geometry/wording"
	"forel/render"
	"forel/render/document"
)

// checks returns what to check, each with a box to tick, and what to do when a check
// fails.
func (b *book) checks() []document.Block {
	head := b.Heading("Check the finished case").After(blockGap)
	head.Bookmark = "Checks"
	blocks := []document.Block{head}
	for _, t := range b.said(b.plan.Finished.Good) {
		blocks = append(blocks, document.Block{Stays: true, Draw: func(box geometry.Box) Length {
			document.Tick(b, geometry.Pt(box.Min.X, box.Min.Y+0.7+tick), tick)
			box.Min.X += 6
			return document.Paragraph(b, box, box.Min.Y, t, render.BodySize, false) + 1.4
		}})
	}
	blocks = append(blocks, b.Points("When a check fails", b.said(b.plan.Finished.Bad))...)
	return append(blocks, b.sources())
}

// sources returns the last paragraph: where values come from.
func (b *book) sources() document.Block {
	return b.Paragraph(wording.Sentence(wording.Sources), render.NoteSize, false).After(1.5)
}
