package labelled

import (
	"forel/geometry"
	"forel/render"
	"forel/render/shape"
)

// spineMark sets a bold bar and word along the spine edge of a piece that
// could be mistaken for another.
func (l *labeller) spineMark() {
	e := l.piece.Edges[l.piece.Spine]
	word := Line{"SPINE", render.BodySize, true}
	const bar, gap = 2.5, 1.0
	w, h := Block{word}.Size(l.view.Wider)
	from, to := l.view.point(e.From), l.view.point(e.To)
	v, ok := l.verge(from, to)
	if !ok {
		return // it is on another sheet
	}
	turned := v.turned
	box, ok := l.first(v.boxes(w+12, h+bar+gap, loose))
	if !ok {
		if box, ok = l.first(v.boxes(w, h+bar+gap, loose)); !ok {
			l.missed = append(l.missed, "spine mark")
			return
		}
	}
	// The bar lies on the edge's side of the box, the word on the other.
	strip, text := box, box
	switch {
	case turned && from.X < box.Center().X:
		strip.Max.X, text.Min.X = box.Min.X+bar, box.Min.X+bar+gap
	case turned:
		strip.Min.X, text.Max.X = box.Max.X-bar, box.Max.X-bar-gap
	case from.Y < box.Center().Y:
		strip.Max.Y, text.Min.Y = box.Min.Y+bar, box.Min.Y+bar+gap
	default:
		strip.Min.Y, text.Max.Y = box.Max.Y-bar, box.Max.Y-bar-gap
	}
	l.surface.Fill(geometry.Rectangle(strip), l.color())
	Block{word}.Draw(l.surface, text, turned, l.color())
}

// rulings names the lines that are ruled for what nothing else on the piece
// speaks of; where there is no room they stay unnamed.
func (l *labeller) rulings() {
	named := ""
	for _, g := range l.piece.Guides {
		if !g.Named || len(g.Path.Vertices) != 2 || g.Name == named {
			continue
		}
		v, ok := l.verge(l.view.point(g.Path.Vertices[0].Point), l.view.point(g.Path.Vertices[1].Point))
		if ok && l.set(v, Block{{g.Name, render.SmallSize, false}}.ways(), hard) {
			named = g.Name // one of two lines beside each other will do
		}
	}
}

// grain sets an arrow along the grain, or the flutes, with its word.
func (l *labeller) grain() {
	word := Line{l.piece.Material.Direction(), render.NoteSize, false}
	_, h := Block{word}.Size(l.view.Wider)
	upright := l.piece.Grain == geometry.GrainHeight
	const head = 1.4 // half the width of an arrow's head
	room := visible(l.bounds, l.safe)
	// On the piece, be it short; beside it only where it is too narrow.
	for _, on := range []bool{true, false} {
		for _, long := range []geometry.Length{40, 30, 20, 14, 10} {
			w := h + 2*head + 0.6
			dw, dh := long, w
			if upright {
				dw, dh = w, long
			}
			places := within(room, dw, dh)
			if !on {
				places = beside(l.bounds, room.Center(), dw, dh)
			}
			box, ok := l.first(places)
			if !ok {
				continue
			}
			text, from, to := box, geometry.Pt(box.Min.X, box.Max.Y-head), geometry.Pt(box.Max.X, box.Max.Y-head)
			if upright {
				text.Max.X = box.Min.X + h
				from, to = geometry.Pt(box.Max.X-head, box.Min.Y), geometry.Pt(box.Max.X-head, box.Max.Y)
			} else {
				text.Max.Y = box.Min.Y + h
			}
			Block{word}.Draw(l.surface, text, upright, l.color())
			shape.Arrow{Line: l.view.Theme[render.Legend], Long: 2.2 * head, Half: head}.Twin(l.surface, from, to)
			return
		}
	}
	l.missed = append(l.missed, "grain")
}
