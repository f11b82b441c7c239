package proof

import (
	"forel/geometry"
	"forel/render"
	"forel/render/typeset"
)

// legend sets what the patterns mean so that it ends at y, and gives where it
// starts.
func (b *book) legend(box geometry.Box, y Length) Length {
	type entry struct {
		draw func(swatch geometry.Box)
		text string
	}
	swatch := func(l look) func(geometry.Box) {
		return func(at geometry.Box) {
			path := geometry.Rectangle(at)
			b.Fill(path, l.tint)
			a := area{Rings: [][]geometry.Point{path.Flatten(1)}}
			l.shade(b, a, nil)
			border := l.line
			if border.Width == 0 {
				border = innerEdge
			}
			b.Stroke(path, border)
		}
	}
	var entries []entry
	for _, name := range b.looks.order {
		entries = append(entries, entry{swatch(b.looks.pieces[name]), name})
	}
	if b.Lining == LinedBefore || b.Lining == LinedAfter && len(b.Report.Dividers) > 0 {
		entries = append(entries, entry{swatch(b.looks.lining), b.looks.lining.name})
	}
	if b.Lining != LinedBefore || b.MayShow || !b.Report.Sound() {
		name := "board"
		if b.caption != nil { // a case of card has none
			name = "gap between parts"
		}
		entries = append(entries, entry{swatch(b.looks.board), name})
	}
	if b.tucks() {
		entries = append(entries, entry{func(at geometry.Box) {
			b.Stroke(geometry.Line(geometry.Pt(at.Min.X, at.Center().Y), geometry.Pt(at.Max.X, at.Center().Y)), render.Stroke{Width: 0.4, Dash: tuckDash, Color: render.Blue})
		}, "edge of what is tucked into a corner"})
	}
	if !b.Report.Sound() {
		entries = append(entries, entry{func(at geometry.Box) { b.Stroke(geometry.Rectangle(at.Grow(-0.5)), faultLine) }, "fault, with its number"})
	}

	const wide, tall, gap Length = 10, 5, 2
	row := tall + 2
	type set struct{ x, row Length }
	places := make([]set, len(entries))
	x, n := box.Min.X, Length(0)
	for i, e := range entries {
		w := wide + gap + typeset.Width(e.text, noteSize, false) + 6
		if x > box.Min.X && x+w-6 > box.Max.X {
			x, n = box.Min.X, n+1
		}
		places[i] = set{x, n}
		x += w
	}
	top := y - (n+1)*row
	for i, e := range entries {
		at := geometry.Bx(places[i].x, top+places[i].row*row+1, places[i].x+wide, top+places[i].row*row+1+tall)
		e.draw(at)
		b.Text(render.Text{At: geometry.Pt(at.Max.X+gap, at.Center().Y+typeset.Ascent(noteSize)/2), String: e.text, Size: noteSize, Color: render.Black})
	}
	return top
}

// tucks tells whether anything is tucked into a corner.
func (b *book) tucks() bool {
	for _, f := range allFaces(b.Report) {
		for _, l := range f.Layers {
			if l.Tucked {
				return true
			}
		}
	}
	return false
}
