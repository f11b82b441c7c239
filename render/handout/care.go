package handout

import (
	"slices"

	"forel/geometry"
	"forel/geometry/wording"
	"forel/geometry/work"
	"forel/render"
	"forel/render/document"
)

// checks returns what to check, each with a box to tick, and what to do when a check
// fails.
func (d *doc) checks() []document.Block {
	head := d.Heading("Check the finished case").After(blockGap)
	head.Bookmark = "Checks"
	blocks := []document.Block{head}
	const tick = 3.6
	for _, t := range d.said(d.plan.Finished.Good) {
		blocks = append(blocks, document.Block{Stays: true, Draw: func(box geometry.Box) Length {
			document.Tick(d, geometry.Pt(box.Min.X, box.Min.Y+0.7+tick), tick)
			box.Min.X += 6
			return document.Paragraph(d, box, box.Min.Y, t, render.BodySize, false) + 1.4
		}})
	}
	blocks = append(blocks, d.Points("When a check fails", d.said(d.plan.Finished.Bad))...)
	return append(append(blocks, d.small("Time", "•", slices.Concat([]string{d.allTime()}, d.overnight(), []string{work.DryNote, ownTimes}))...), d.sources())
}

// sources returns the last paragraph: where values come from.
func (d *doc) sources() document.Block {
	return d.Paragraph(wording.Sentence(wording.Sources), render.NoteSize, false).After(1.5)
}
