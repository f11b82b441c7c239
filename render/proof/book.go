package proof

import (
	"fmt"

	"forel/geometry"
	"forel/render"
	"forel/render/typeset"
)

// book is the document being made.
type book struct {
	Options
	Subject
	*Drawing // its last page is drawn on
	faces    []face
	looks    looks
	base     look                  // of a face inside where nothing is turned in
	pageOf   map[geometry.Face]int // on which a face is drawn flat
	caption  func(face) string     // says what lies on a face, where that is not covering
}

// Draw draws the case from outside at an angle, what is wrong if anything is,
// then every face flat, and a table of them.
func Draw(s Subject, o Options) *Drawing {
	b := &book{
		Options: o, Subject: s, Drawing: newDrawing(s, o.Setup.Sheet), faces: study(s.Report),
		looks: looksOf(s), pageOf: map[geometry.Face]int{},
	}
	b.base = s.inside(b.looks)
	first := 2 + b.countFaultPages()
	for i, sp := range b.spreads() {
		for _, row := range sp.rows {
			for _, face := range row.names {
				if _, ok := faceOf(b.faces, face); ok {
					b.pageOf[face] = first + i
				}
			}
		}
	}
	b.solidPage()
	if !s.Report.Sound() {
		b.faultPages()
	}
	if len(b.faces) > 0 {
		b.facePages()
	}
	b.feet()
	return b.Drawing
}

// quiet gives the same document drawn apart, to measure with.
func (b *book) quiet() *book {
	q := *b
	q.Drawing = newDrawing(b.Subject, b.Setup.Sheet)
	q.AddPage("")
	return &q
}

func (b *book) countFaultPages() int {
	if b.Report.Sound() {
		return 0
	}
	q := b.quiet()
	q.faultPages()
	return q.Pages() - 1
}

// foot is the height of the line at the bottom of a page.
const foot Length = 6

// room gives what of a page can be drawn on, above its foot.
func (b *book) room() geometry.Box {
	sheet, m := b.Setup.Sheet, b.Setup.Margin
	return geometry.Bx(m, m, sheet.Width-m, sheet.Height-m-foot)
}

// newPage starts a page and gives the room on it.
func (b *book) newPage(bookmark string) geometry.Box {
	b.AddPage(bookmark)
	return b.room()
}

// feet draws the foot of every page.
func (b *book) feet() {
	box := b.room()
	y := box.Max.Y + foot - typeset.Descent(noteSize)
	for i := range b.pages {
		b.turnTo(i)
		b.Stroke(geometry.Line(geometry.Pt(box.Min.X, box.Max.Y+1.4), geometry.Pt(box.Max.X, box.Max.Y+1.4)), rule)
		left := "Figures, not at true size: do not cut from this page."
		b.Text(render.Text{At: geometry.Pt(box.Min.X, y), String: left, Size: noteSize, Color: render.Black})
		right := fmt.Sprintf("page %d of %d – %s", i+1, b.Pages(), b.name())
		room := box.Width() - typeset.Width(left, noteSize, false) - 8
		b.Text(render.Text{At: geometry.Pt(box.Max.X, y), String: fit(right, noteSize, false, room), Size: noteSize, Align: render.End, Color: render.Black})
	}
}

// heading sets a head with an explanation at the top of a page and gives where
// it ends.
func (b *book) heading(box geometry.Box, head, text string) Length {
	y := b.paragraph(box, box.Min.Y-1.2, head, render.HeadSize, true)
	return b.paragraph(box, y, text, render.BodySize, false) + 2
}

// paragraph sets text below y within a box's sides and gives where it ends.
func (b *book) paragraph(box geometry.Box, y Length, text string, size render.Points, bold bool) Length {
	for _, l := range wrapped(text, size, bold, box.Width()) {
		y += typeset.LineHeight(size)
		b.Text(render.Text{At: geometry.Pt(box.Min.X, y), String: l, Size: size, Bold: bold, Color: render.Black})
	}
	return y + typeset.Descent(size)
}
