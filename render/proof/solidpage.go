package proof

import (
	"forel/geometry"
	"forel/geometry/wording"
	"forel/render"
	"forel/render/document"
	"forel/render/scene"
	"forel/render/typeset"
)

// Room on the first page.
const (
	labelsWide Length = 45 // a column of labels beside the case
	lensMost   Length = 56 // the corner, as wide as it is drawn
	beside     Length = 8  // between the clearances and the corner
	tableWide  Length = 72 // the clearances, at least
)

// leastLarger is how much larger the corner is drawn, at least.
const leastLarger = 2.2

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

// solid draws the case, below it the clearances and the corner, into most of a page, and returns where they end.
func (d *doc) solid(box geometry.Box) Length {
	p, tall := d.Proof, box.Height()
	figure, lower := box, box
	figure.Max.Y = box.Min.Y + 0.54*tall
	lower.Min.Y = figure.Max.Y + 4
	sc := sightOf(p, d.faces, d.looks)
	middle := geometry.Bx(figure.Min.X+labelsWide, figure.Min.Y, figure.Max.X-labelsWide, figure.Max.Y)
	to, scale := scene.Fitted(sc.bounds(), middle)
	sc.draw(d, d.looks, to)
	marks := func() { drawMarks(d, d.solidMarks(sc, to, moveBox(sc.bounds(), to))) }
	if p.Closeup == nil {
		d.solidLabels(sc, to, nil, figure)
		marks()
		return d.clearances(lower)
	}
	wide := min(lensMost, box.Width()-labelsWide-beside-tableWide)
	lens := geometry.Bx(lower.Max.X-labelsWide-wide, lower.Min.Y+8, lower.Max.X-labelsWide, box.Min.Y+0.84*tall)
	window := sc.corner(*p.Closeup, lens.Width().MM()/lens.Height().MM(), lens.Height()/Length(scale)/leastLarger)
	d.frame(moveBox(window, to))
	d.solidLabels(sc, to, &window, figure)
	marks()
	d.lens(sc, *p.Closeup, window, lens, scale)
	lower.Max.X = lens.Min.X - beside
	return max(lens.Max.Y, d.clearances(lower))
}

// frame draws the border of the part that is shown larger.
func (d *doc) frame(box geometry.Box) {
	d.Stroke(geometry.Rectangle(box), render.Stroke{Width: 0.3, Dash: []Length{1, 0.8}, Color: render.Black})
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
