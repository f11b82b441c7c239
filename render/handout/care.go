package handout

import (
	"slices"

	"forel/geometry/wording"
	"forel/geometry/work"
	"forel/render"
	"forel/render/document"
)

// checks returns what to check, each with a box to tick, and what to do when a check
// fails.
func (d *doc) checks() []document.Block {
	good := d.List("Check the finished case", document.ToTick, d.said(d.plan.Finished.Good))
	good[0].Bookmark = "Checks"
	good[len(good)-1].Stays = true
	bad := d.Points("When a check fails", d.said(d.plan.Finished.Bad))
	time := d.SmallList("Time", document.Bullet, slices.Concat([]string{d.allTime()}, d.overnight(), []string{work.DryNote, ownTimes}))
	return append(slices.Concat(good, bad, time), d.sources())
}

// sources returns the last paragraph: where values come from.
func (d *doc) sources() document.Block {
	return d.Paragraph(wording.Sentence(wording.Sources), render.NoteSize, false).After(1.5)
}
