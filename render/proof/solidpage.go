package proof

import (
	"forel/geometry"
	"forel/render"
	"forel/render/scene"
	"forel/render/typeset"
)

// Room on the first page.
const (
	labelsWide Length = 45 // a column of labels beside the case
	lowerMost  Length = 86 // the clearances and the corner of the mouth, as tall as they are drawn
	lowerLeast Length = 58 // and as they must be
	lensMost   Length = 56 // the corner, as wide as it is drawn
)

// leastLarger is how much larger the corner is drawn, at least.
const leastLarger = 2.2

// solidPage draws the case from outside at an angle, a corner of its mouth
// larger, and the clearances.
func (b *book) solidPage() {
	box := b.newPage("The case")
	y := box.Min.Y + typeset.Ascent(render.TitleSize)
	b.Text(render.Text{At: geometry.Pt(box.Min.X, y), String: fit(b.name(), render.TitleSize, true, box.Width()), Size: render.TitleSize, Bold: true, Color: render.Black})
	y = b.paragraph(box, y+1.5, "Proof: the slipcase folded up from its pieces", render.HeadSize, false)
	y = b.paragraph(box, y, capital(b.verdict())+".", render.BodySize, true)
	if len(b.Report.Faces) == 0 {
		b.paragraph(box, y+2, "The boards do not meet, so there is no case to draw.", render.BodySize, false)
		return
	}
	for _, r := range b.remarks() {
		y = b.paragraph(box, y, capital(r)+".", render.BodySize, false)
	}
	low := b.legend(box, box.Max.Y) - 3
	lowerTall := max(lowerLeast, min(lowerMost, 0.55*(low-y-2)))
	figure := geometry.Bx(box.Min.X, y+2, box.Max.X, low-lowerTall)
	lower := geometry.Bx(box.Min.X, low-lowerTall+4, box.Max.X, low)

	sc := solidOf(b.Report, b.faces, b.looks)
	middle := geometry.Bx(figure.Min.X+labelsWide, figure.Min.Y, figure.Max.X-labelsWide, figure.Max.Y)
	table := b.clearanceTable()
	lensWide := min(lensMost, lower.Width()-labelsWide-beside-table.wide())
	lens := geometry.Bx(lower.Max.X-labelsWide-lensWide, lower.Min.Y+8, lower.Max.X-labelsWide, lower.Max.Y)
	to, scale := scene.Fitted(sc.bounds(), middle)
	window := sc.corner(b.Report.Carcass, b.faces, lens.Width().MM()/lens.Height().MM(), lens.Height()/Length(scale)/leastLarger)
	sc.draw(b, b.looks, b.base, to)
	b.frame(moveBox(window, to))
	b.solidLabels(sc, to, window, figure)
	drawMarks(b, b.solidMarks(sc, to, moveBox(sc.bounds(), to)))

	b.lens(sc, window, lens, scale)
	b.clearances(geometry.Bx(lower.Min.X, lower.Min.Y, lens.Min.X-beside, lower.Max.Y), table)
}

// frame draws the border of the part that is shown larger.
func (b *book) frame(box geometry.Box) {
	b.Stroke(geometry.Rectangle(box), render.Stroke{Width: 0.3, Dash: []Length{1, 0.8}, Color: render.Black})
}

// moveBox gives a box of the view on the page.
func moveBox(box geometry.Box, to func(geometry.Point) geometry.Point) geometry.Box {
	p, q := to(box.Min), to(box.Max)
	return geometry.Bx(min(p.X, q.X), min(p.Y, q.Y), max(p.X, q.X), max(p.Y, q.Y))
}

// clearanceTable is what is left between the book and the case: rows of a name and
// numbers, the first the heads.
type clearanceTable [][]string

// beside is what columns and parts of the page are kept apart by.
const (
	beside    Length = 8
	columnGap Length = 3
)

func (b *book) clearanceTable() clearanceTable {
	k := b.Report.Clearance
	num := func(l Length) string { return geometry.FineNumber(l, b.Round.Unit) }
	return clearanceTable{
		{"", "height", "depth", "thickness"},
		{"in the body", num(k.BodyHeight), num(k.BodyWidth), num(k.BodyThickness)},
		{"at the mouth", num(k.MouthHeight), "–", num(k.MouthThickness)},
		{"in its corners", num(k.MouthCorners)},
	}
}

// column gives how wide a column is, with some to spare as everywhere.
func (t clearanceTable) column(i int) (wide Length) {
	for n, row := range t {
		if i < len(row) {
			bold := n > 0 && i > 0
			wide = max(wide, typeset.Width(row[i], render.BodySize, bold)/spare[bold])
		}
	}
	return wide
}

// wide gives the least the table takes.
func (t clearanceTable) wide() (wide Length) {
	for i := range t[0] {
		wide += t.column(i) + columnGap
	}
	return wide - columnGap
}

// clearances sets the table of what is left between the book and the case.
func (b *book) clearances(box geometry.Box, table clearanceTable) {
	unit := b.Round.Unit
	y := b.paragraph(box, box.Min.Y-1.5, "Left between the book and the case", render.BodySize, true)
	y = b.paragraph(box, y, unitName(unit)+", to "+geometry.FineStep(unit), noteSize, false) + 1
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
				b.Text(t)
			}
		}
		if n == 0 || n == len(table)-1 {
			y += 1.4
			b.Stroke(geometry.Line(geometry.Pt(box.Min.X, y), geometry.Pt(box.Max.X, y)), rule)
		}
	}
	b.paragraph(box, y+1, "The mouth is the tightest place: covering is turned in there, and in its corners tabs may lie over each other.", noteSize, false)
}
