package handout

import (
	"forel/geometry"
	"forel/render"
	"forel/render/document"
	"forel/render/scene"
	"forel/render/shape"
	"forel/render/typeset"
)

// drawLooks draws the key to the hatching: what each material looks like.
func (b *book) drawLooks(box geometry.Box) Length {
	p := b.palette
	type entry struct {
		look scene.Look
		name string
	}
	entries := []entry{{p.card.face, "card, outside"}, {p.card.back, "inside"}}
	if b.boards != nil {
		entries = []entry{{p.board, "board"}}
		if b.boards.Job.Lining.Thickness > 0 {
			entries = append(entries, entry{p.lining, "lining"})
		}
		used := map[geometry.Material]bool{}
		for _, q := range b.plan.Pieces {
			used[q.Material] = true
		}
		if used[geometry.Cloth] {
			entries = append(entries, entry{p.cloth.face, "cloth"})
		}
		if used[geometry.Paper] {
			entries = append(entries, entry{p.paper.face, "paper"})
		}
		back := "its glued back"
		if used[geometry.Cloth] && used[geometry.Paper] {
			back = "the glued back of either"
		}
		entries = append(entries, entry{p.cloth.back, back})
	}
	x := box.Min.X
	for _, e := range entries {
		swatch := geometry.Bx(x, box.Min.Y+1, x+10, box.Min.Y+6)
		b.Fill(geometry.Rectangle(swatch), e.look.Tint)
		a := shape.Area{Rings: [][]geometry.Point{geometry.Rectangle(swatch).Flatten(1)}}
		for _, h := range e.look.Hatch {
			for _, l := range h.Lines(a, nil) {
				b.Stroke(l.Path, l.Stroke)
			}
		}
		b.Stroke(geometry.Rectangle(swatch), render.Stroke{Width: 0.25, Color: render.Black})
		document.Write(b, geometry.Pt(x+11.5, box.Min.Y+4.5), e.name, render.NoteSize, false)
		x += 11.5 + typeset.Width(e.name, render.NoteSize, false) + 5
	}
	return box.Min.Y + 8
}
