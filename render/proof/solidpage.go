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
	labelsWide Length = 45  // a column of labels beside the case
	lowerMost  Length = 86  // the clearances and the corner of the mouth, as tall as they are drawn
	lowerLeast Length = 58  // and as they must be
	lensMost   Length = 56  // the corner, as wide as it is drawn
	tableMost  Length = 110 // the clearances by themselves, as wide as they are drawn
)

// leastLarger is how much larger the corner is drawn, at least.
const leastLarger = 2.2

// solidPage draws the case from outside at an angle, a corner of it larger, and
// the clearances.
func (d *doc) solidPage() {
	p := d.Proof
	box := d.NewPage(false, "The case")
	y := box.Min.Y + typeset.Ascent(render.TitleSize)
	document.Write(d, geometry.Pt(box.Min.X, y), fit(name(d.Plan), render.TitleSize, true, box.Width()), render.TitleSize, true)
	y = d.paragraph(box, y+1.5, "Proof: the "+d.Kind+" folded up from "+from(d.Plan), render.HeadSize, false)
	y = d.paragraph(box, y, wording.Sentence(Verdict(p)), render.BodySize, true)
	if len(p.Faces) == 0 {
		d.paragraph(box, y+2, "The pieces do not fit together, so there is no case to draw.", render.BodySize, false)
		return
	}
	for _, r := range p.Remarks {
		y = d.paragraph(box, y, wording.Sentence(r), render.BodySize, false)
	}
	low := d.legend(box, box.Max.Y) - 3
	table := clearanceTable(clearanceRows(p.Clearances, "", "–", d.Round.Unit))
	left := geometry.Bx(box.Min.X, 0, box.Min.X+min(box.Width(), tableMost), 0)
	lensWide := min(lensMost, box.Width()-labelsWide-beside-table.wide())
	if p.Closeup != nil {
		left.Max.X = box.Max.X - labelsWide - lensWide - beside
	}
	lowerTall := lowerLeast
	d.Aside(func() { lowerTall = max(lowerTall, d.clearances(left, table)+6) })
	if p.Closeup != nil && lowerTall < lowerMost {
		lowerTall = max(lowerTall, min(lowerMost, 0.55*(low-y-2)))
	}
	figure := geometry.Bx(box.Min.X, y+2, box.Max.X, low-lowerTall)
	lower := geometry.Bx(box.Min.X, low-lowerTall+4, box.Max.X, low)

	sc := sightOf(p, d.faces, d.looks)
	middle := geometry.Bx(figure.Min.X+labelsWide, figure.Min.Y, figure.Max.X-labelsWide, figure.Max.Y)
	to, scale := scene.Fitted(sc.bounds(), middle)
	sc.draw(d, d.looks, to)
	left.Min.Y, left.Max.Y = lower.Min.Y, lower.Max.Y
	if p.Closeup == nil {
		d.solidLabels(sc, to, nil, figure)
		drawMarks(d, d.solidMarks(sc, to, moveBox(sc.bounds(), to)))
		d.clearances(left, table)
		return
	}
	lens := geometry.Bx(lower.Max.X-labelsWide-lensWide, lower.Min.Y+8, lower.Max.X-labelsWide, lower.Max.Y)
	window := sc.corner(*p.Closeup, lens.Width().MM()/lens.Height().MM(), lens.Height()/Length(scale)/leastLarger)
	d.frame(moveBox(window, to))
	d.solidLabels(sc, to, &window, figure)
	drawMarks(d, d.solidMarks(sc, to, moveBox(sc.bounds(), to)))
	d.lens(sc, *p.Closeup, window, lens, scale)
	d.clearances(left, table)
}

// frame draws the border of the part that is shown larger.
func (d *doc) frame(box geometry.Box) {
	d.Stroke(geometry.Rectangle(box), render.Stroke{Width: 0.3, Dash: []Length{1, 0.8}, Color: render.Black})
}

// moveBox returns a box of the view on the page.
func moveBox(box geometry.Box, to func(geometry.Point) geometry.Point) geometry.Box {
	return geometry.Around(to(box.Min), to(box.Max))
}

// clearanceTable is what is left between the book and the case: rows of a name and
// numbers, the first the heads.
type clearanceTable [][]string

// beside is what columns and parts of the page are kept apart by.
const (
	beside    Length = 8
	columnGap Length = 3
)

// column returns how wide a column is, with some to spare as everywhere.
func (t clearanceTable) column(i int) (wide Length) {
	for n, row := range t {
		if i < len(row) {
			bold := n > 0 && i > 0
			wide = max(wide, typeset.Width(row[i], render.BodySize, bold)/spare[bold])
		}
	}
	return wide
}

// wide returns the least the table takes.
func (t clearanceTable) wide() (wide Length) {
	for i := range t[0] {
		wide += t.column(i) + columnGap
	}
	return wide - columnGap
}

// clearances sets the table of what is left between the book and the case, and what
// the case measures, and returns where it ends.
func (d *doc) clearances(box geometry.Box, table clearanceTable) Length {
	unit := d.Round.Unit
	y := d.paragraph(box, box.Min.Y-1.5, "Left between the book and the case", render.BodySize, true)
	y = d.paragraph(box, y, unitName(unit)+", to "+geometry.FineStep(unit), noteSize, false) + 1
	right := make([]Length, len(table[0])) // edges of the columns, as far apart as in a usual page
	at := box.Max.X
	for i := len(right) - 1; i > 0; i-- {
		right[i] = at
		at -= max(table.column(i)+columnGap, min(17, (box.Width()-table.column(0))/3))
	}
	for n, row := range table {
		y += typeset.LineHeight(render.BodySize) + 1
		for i, cell := range row {
			t := render.Text{At: geometry.Pt(box.Min.X, y), String: cell, Size: render.BodySize, Bold: n > 0 && i > 0, Color: render.Black}
			if i > 0 {
				t.At.X, t.Align = right[i], render.End
			}
			if cell != "" {
				d.Text(t)
			}
		}
		if n == 0 || n == len(table)-1 {
			y += 1.4
			d.Stroke(geometry.Line(geometry.Pt(box.Min.X, y), geometry.Pt(box.Max.X, y)), rule)
		}
	}
	y++
	if d.Proof.Tightest != "" {
		y = d.paragraph(box, y, d.Proof.Tightest, noteSize, false)
	}
	for _, f := range d.Proof.Folded {
		y = d.paragraph(box, y, wording.Sentence(folded(f, d.Round)), render.BodySize, false)
	}
	return y
}
