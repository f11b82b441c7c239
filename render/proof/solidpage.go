package proof

import (
	"forel/geometry"
	"forel/geometry/wording"
	"forel/render"
	"forel/render/document"
	"forel/render/figure"
)

// How wide a corner that is drawn larger is, with its labels, the white between it and the
// clearances, and what parts of a page it and the case take.
const (
	lensWide   Length = 88
	beside     Length = 6
	wholePart         = 0.52
	cornerPart        = 0.31
)

// opening says whether the case is sound, and draws it from outside at an angle, a corner
// of it larger, and the clearances.
func (d *doc) opening() []document.Block {
	p := d.Proof
	first := d.Opening(d.Running, "Proof: the "+d.Kind+" folded up from "+from(d.Plan))
	first.Bookmark = "The case"
	blocks := []document.Block{first, d.Paragraph(wording.Sentence(Verdict(p)), render.BodySize, true).After(1)}
	if len(p.Faces) == 0 {
		return append(blocks, d.Paragraph("The pieces do not fit together, so there is no case to draw.", render.BodySize, false).After(2))
	}
	for _, r := range p.Remarks {
		blocks = append(blocks, d.Paragraph(wording.Sentence(r), render.BodySize, false))
	}
	// The case, below it the clearances, and beside these, or below them, the corner.
	told := d.clearances()
	whole := document.Block{Above: 2, Draw: func(box geometry.Box) Length {
		box.Max.Y = box.Min.Y + wholePart*box.Height()
		d.whole(box)
		return box.Max.Y
	}}
	if p.Closeup != nil && !d.narrow() {
		return append(blocks, whole, document.Block{Above: 3, Draw: func(box geometry.Box) Length {
			left, right := box, box
			right.Min.X, right.Max.X = box.Max.X-lensWide, box.Max.X-4 // a viewer's typeface may be wider
			left.Max.X = right.Min.X - beside
			return max(d.corner(right), document.Below(left, told...))
		}})
	}
	blocks = append(blocks, whole)
	if p.Closeup != nil {
		blocks = append(blocks, document.Block{Above: 3, Draw: d.corner})
	}
	told[0].Above = 3
	return append(blocks, told...)
}

// corner draws the corner that is shown larger, and returns where it ends.
func (d *doc) corner(box geometry.Box) Length {
	box.Max = geometry.Pt(min(box.Max.X, box.Min.X+lensWide), box.Min.Y+cornerPart*box.Height())
	picture := d.picture()
	seen, _ := d.panel(picture).See()
	d.panel(d.closeup(picture, seen)).Draw(d, box, figure.AtRight)
	return box.Max.Y
}

// whole draws the case into a box.
func (d *doc) whole(box geometry.Box) {
	picture := d.picture()
	seen, window := d.panel(picture).See()
	picture.Notes = d.named(seen)
	to := d.panel(picture).Draw(d, box, figure.AtBoth)
	drawMarks(d, d.solidMarks(seen, to, moveBox(window, to)))
}

// moveBox returns a box of the view on the page.
func moveBox(box geometry.Box, to func(geometry.Point) geometry.Point) geometry.Box {
	return geometry.Around(to(box.Min), to(box.Max))
}

// clearances tells what is left between the book and the case, and what the case measures.
func (d *doc) clearances() []document.Block {
	unit := d.Round.Unit
	t := clearanceTable(d.Proof.Clearances, "", "–", unit)
	t.Size, t.Wider = render.BodySize, d.Wider
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
