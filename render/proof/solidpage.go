package proof

import (
	"forel/geometry"
	"forel/render"
	"forel/render/typeset"
)

// Room on the first page.
const (
	labelsWide Length = 45 // a column of labels beside the case
	lowerTall  Length = 86 // the clearances and the corner of the mouth
	lensWide   Length = 56
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
	figure := geometry.Bx(box.Min.X, y+2, box.Max.X, low-lowerTall)
	lower := geometry.Bx(box.Min.X, low-lowerTall+4, box.Max.X, low)

	sc := sceneOf(b.Report, b.faces)
	middle := geometry.Bx(figure.Min.X+labelsWide, figure.Min.Y, figure.Max.X-labelsWide, figure.Max.Y)
	lens := geometry.Bx(lower.Max.X-labelsWide-lensWide, lower.Min.Y+8, lower.Max.X-labelsWide, lower.Max.Y)
	to, scale := fitted(sc.bounds(), middle)
	window := sc.corner(b.Report.Carcass, b.faces, lens.Width().MM()/lens.Height().MM(), lens.Height()/Length(scale)/leastLarger)
	sc.draw(b, b.looks, b.base, to)
	b.frame(moveBox(window, to))
	b.solidLabels(sc, to, window, figure)
	drawMarks(b, b.solidMarks(sc, to, moveBox(sc.bounds(), to)))

	b.lens(sc, window, lens, scale)
	b.clearances(geometry.Bx(lower.Min.X, lower.Min.Y, lens.Min.X-8, lower.Max.Y))
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

// clearances sets the table of what is left between the book and the case.
func (b *book) clearances(box geometry.Box) {
	k, unit := b.Report.Clearance, b.Round.Unit
	y := b.paragraph(box, box.Min.Y-1.5, "Left between the book and the case", render.BodySize, true)
	y = b.paragraph(box, y, unitName(unit)+", to "+geometry.FineStep(unit), noteSize, false) + 1
	right := []Length{box.Max.X - 36, box.Max.X - 19, box.Max.X}
	row := func(name string, bold bool, cells ...string) {
		y += typeset.LineHeight(render.BodySize) + 1
		if name != "" {
			b.Text(render.Text{At: geometry.Pt(box.Min.X, y), String: name, Size: render.BodySize, Color: render.Black})
		}
		for i, c := range cells {
			b.Text(render.Text{At: geometry.Pt(right[i], y), String: c, Size: render.BodySize, Bold: bold, Align: render.End, Color: render.Black})
		}
	}
	num := func(l Length) string { return geometry.FineNumber(l, unit) }
	row("", false, "height", "depth", "thickness")
	y += 1.4
	b.Stroke(geometry.Line(geometry.Pt(box.Min.X, y), geometry.Pt(box.Max.X, y)), rule)
	row("in the body", true, num(k.BodyHeight), num(k.BodyWidth), num(k.BodyThickness))
	row("at the mouth", true, num(k.MouthHeight), "–", num(k.MouthThickness))
	row("in its corners", true, num(k.MouthCorners))
	y += 1.4
	b.Stroke(geometry.Line(geometry.Pt(box.Min.X, y), geometry.Pt(box.Max.X, y)), rule)
	b.paragraph(box, y+1, "The mouth is the tightest place: covering is turned in there, and in its corners tabs may lie over each other.", noteSize, false)
}
