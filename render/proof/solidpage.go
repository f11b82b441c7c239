package proof

import (
	"forel/geometry"
	"forel/geometry/wording"
	"forel/render"
	"forel/render/document"
	"forel/render/figure"
	"forel/render/typeset"
)

// lensWide is how wide a corner that is drawn larger is, with its labels, and beside the
// white between it and the clearances.
const (
	lensWide Length = 88
	beside   Length = 6
)

// opening says whether the case is sound, and draws it from outside at an angle, a corner
// of it larger, and the clearances.
func (d *doc) opening() []document.Block {
	p := d.Proof
	first := d.Opening(name(d.Plan), "Proof: the "+d.Kind+" folded up from "+from(d.Plan))
	first.Bookmark = "The case"
	blocks := []document.Block{first, d.Paragraph(wording.Sentence(Verdict(p)), render.BodySize, true).After(1)}
	if len(p.Faces) == 0 {
		return append(blocks, d.Paragraph("The pieces do not fit together, so there is no case to draw.", render.BodySize, false).After(2))
	}
	for _, r := range p.Remarks {
		blocks = append(blocks, d.Paragraph(wording.Sentence(r), render.BodySize, false))
	}
	return append(blocks, document.Block{Above: 2, Draw: d.solid})
}

// solid draws the case, below it the clearances and the corner, into most of a page, and
// returns where they end.
func (d *doc) solid(box geometry.Box) Length {
	whole, lower := box, box
	whole.Max.Y = box.Min.Y + 0.52*box.Height()
	lower.Min.Y = whole.Max.Y + 3
	lower.Max.Y = box.Min.Y + 0.84*box.Height()
	picture := d.picture()
	seen, window := d.panel(picture).See()
	of := picture
	of.Notes = d.named(seen)
	to := d.panel(of).Draw(d, whole, figure.AtBoth)
	drawMarks(d, d.solidMarks(seen, to, moveBox(window, to)))
	if d.Proof.Closeup == nil {
		return d.clearances(lower)
	}
	corner := lower
	corner.Min.X, corner.Max.X = box.Max.X-lensWide, box.Max.X-4 // a viewer's typeface may be wider
	d.panel(d.closeup(picture, seen)).Draw(d, corner, figure.AtRight)
	lower.Max.X = corner.Min.X - beside
	return max(lower.Max.Y, d.clearances(lower))
}

// moveBox returns a box of the view on the page.
func moveBox(box geometry.Box, to func(geometry.Point) geometry.Point) geometry.Box {
	return geometry.Around(to(box.Min), to(box.Max))
}

// clearances tells from the top of a box what is left between the book and the case, and
// what the case measures, and returns where it ends.
func (d *doc) clearances(box geometry.Box) Length {
	unit := d.Round.Unit
	say := func(text string, size render.Points, bold bool) {
		box.Min.Y = d.Paragraph(text, size, bold).Draw(box)
	}
	say("Left between the book and the case", render.BodySize, true)
	say(unitName(unit)+", to "+geometry.FineStep(unit), noteSize, false)
	rows := clearanceRows(d.Proof.Clearances, "", "–", unit)
	t := document.Table{Rows: rows[1:], Size: render.BodySize, Wider: typeset.Substitute}
	for i, head := range rows[0] {
		t.Columns = append(t.Columns, document.Column{Head: head, Right: i > 0, Bold: i > 0, Broken: i == 0})
	}
	box.Min.Y = t.Draw(d, box) + 1
	if d.Proof.Tightest != "" {
		say(d.Proof.Tightest, noteSize, false)
	}
	for _, f := range d.Proof.Folded {
		say(wording.Sentence(folded(f, d.Round)), render.BodySize, false)
	}
	return box.Min.Y
}
