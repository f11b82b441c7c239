package proof

import (
	"forel/geometry"
	"forel/geometry/stage"
	"forel/geometry/wording"
	"forel/render"
	"forel/render/document"
	"forel/render/figure"
	"forel/render/scene"
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
	if d.stands() {
		return append(blocks, document.Block{Above: 2, Draw: d.solid})
	}
	blocks = append(blocks, document.Block{Above: 2, Draw: func(box geometry.Box) Length {
		box.Max.Y = box.Min.Y + 0.6*box.Height()
		d.whole(box)
		return box.Max.Y
	}})
	if d.Proof.Closeup != nil {
		blocks = append(blocks, document.Block{Above: 3, Draw: func(box geometry.Box) Length {
			box.Max = geometry.Pt(min(box.Max.X, box.Min.X+lensWide), box.Min.Y+0.4*box.Height())
			picture := d.picture()
			seen, _ := d.panel(picture).See()
			d.panel(d.closeup(picture, seen)).Draw(d, box, figure.AtRight)
			return box.Max.Y
		}})
	}
	told := d.clearances()
	told[0].Above = 3
	return append(blocks, told...)
}

// stands tells whether a page holds the case, the clearances and the corner together.
func (d *doc) stands() (does bool) {
	if d.narrow() {
		return false
	}
	d.Aside(func() {
		room := d.NewPage(false, "")
		_, lower, _ := d.parts(room)
		does = document.Below(lower, d.clearances()...) <= room.Max.Y
	})
	return does
}

// parts returns where in most of a page the case stands, below it the clearances, and
// beside these the corner, if one is drawn larger.
func (d *doc) parts(box geometry.Box) (whole, lower, corner geometry.Box) {
	whole, lower = box, box
	whole.Max.Y = box.Min.Y + 0.52*box.Height()
	lower.Min.Y = whole.Max.Y + 3
	lower.Max.Y = box.Min.Y + 0.84*box.Height()
	if d.Proof.Closeup != nil {
		corner = lower
		corner.Min.X, corner.Max.X = box.Max.X-lensWide, box.Max.X-4 // a viewer's typeface may be wider
		lower.Max.X = corner.Min.X - beside
	}
	return whole, lower, corner
}

// solid draws the case, below it the clearances and the corner, into most of a page, and
// returns where they end.
func (d *doc) solid(box geometry.Box) Length {
	whole, lower, corner := d.parts(box)
	picture, seen := d.whole(whole)
	if d.Proof.Closeup == nil {
		return document.Below(lower, d.clearances()...)
	}
	d.panel(d.closeup(picture, seen)).Draw(d, corner, figure.AtRight)
	return max(lower.Max.Y, document.Below(lower, d.clearances()...))
}

// whole draws the case into a box, and returns the picture without names, and what is seen
// of it.
func (d *doc) whole(box geometry.Box) (stage.Picture, scene.Seen) {
	picture := d.picture()
	seen, window := d.panel(picture).See()
	of := picture
	of.Notes = d.named(seen)
	to := d.panel(of).Draw(d, box, figure.AtBoth)
	drawMarks(d, d.solidMarks(seen, to, moveBox(window, to)))
	return picture, seen
}

// moveBox returns a box of the view on the page.
func moveBox(box geometry.Box, to func(geometry.Point) geometry.Point) geometry.Box {
	return geometry.Around(to(box.Min), to(box.Max))
}

// clearances tells what is left between the book and the case, and what the case measures.
func (d *doc) clearances() []document.Block {
	unit := d.Round.Unit
	rows := clearanceRows(d.Proof.Clearances, "", "–", unit)
	t := document.Table{Rows: rows[1:], Size: render.BodySize, Wider: typeset.Substitute}
	for i, head := range rows[0] {
		t.Columns = append(t.Columns, document.Column{Head: head, Right: i > 0, Bold: i > 0, Broken: i == 0})
	}
	blocks := []document.Block{
		d.Paragraph("Left between the book and the case", render.BodySize, true),
		d.Paragraph(unitName(unit)+", to "+geometry.FineStep(unit), noteSize, false),
		{Draw: func(box geometry.Box) Length { return t.Draw(d, box) + 1 }},
	}
	blocks[0].Stays, blocks[1].Stays = true, true
	if d.Proof.Tightest != "" {
		blocks = append(blocks, d.Paragraph(d.Proof.Tightest, noteSize, false))
	}
	for _, f := range d.Proof.Folded {
		blocks = append(blocks, d.Paragraph(wording.Sentence(folded(f, d.Round)), render.BodySize, false))
	}
	return blocks
}
