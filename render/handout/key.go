package handout

import (
	"slices"

	"forel/geometry"
	"forel/geometry/stage"
	"forel/render"
	"forel/render/document"
	"forel/render/scene"
	"forel/render/shape"
	"forel/render/typeset"
)

// drawLooks draws the key to the hatching: what each material looks like.
func (d *doc) drawLooks(box geometry.Box) Length {
	x := box.Min.X
	for _, e := range d.key() {
		if x > box.Min.X && x+11.5+typeset.Width(e.name, render.NoteSize, false) > box.Max.X { // on a narrow page
			x, box.Min.Y = box.Min.X, box.Min.Y+8
		}
		swatch := geometry.Bx(x, box.Min.Y+1, x+10, box.Min.Y+6)
		d.Fill(geometry.Rectangle(swatch), e.look.Tint)
		a := shape.Area{Rings: [][]geometry.Point{geometry.Rectangle(swatch).Flatten(1)}}
		for _, h := range e.look.Hatch {
			for _, l := range h.Lines(a, nil) {
				d.Stroke(l.Path, l.Stroke)
			}
		}
		d.Stroke(geometry.Rectangle(swatch), render.Stroke{Width: 0.25, Color: render.Black})
		document.Write(d, geometry.Pt(x+11.5, box.Min.Y+4.5), e.name, render.NoteSize, false)
		x += 11.5 + typeset.Width(e.name, render.NoteSize, false) + 5
	}
	return box.Min.Y + 8
}

// entry is a line of the key to the hatching.
type entry struct {
	look scene.Look
	name string
}

// key lists the stuffs that are seen in the figures, of which there is something to
// tell apart; the glued backs of all are white.
func (d *doc) key() []entry {
	seen := map[stage.Stuff]bool{}
	for _, s := range d.plan.Steps {
		for _, p := range slices.Concat(s.Pictures...) {
			for _, f := range p.Faces {
				seen[f.Front], seen[f.Back] = true, true
			}
		}
	}
	back := "its glued back"
	if seen[stage.ClothBack] && seen[stage.PaperBack] {
		back = "the glued back of either"
	}
	seen[stage.ClothBack] = seen[stage.ClothBack] || seen[stage.PaperBack] // they look alike
	var out []entry
	for _, e := range []struct {
		stuff stage.Stuff
		name  string
	}{{stage.Card, "blank, outside"}, {stage.CardInside, "inside"}, {stage.Board, "board"}, {stage.Lining, "lining"}, {stage.Cloth, "cloth"}, {stage.Paper, "paper"}, {stage.ClothBack, back}} {
		if seen[e.stuff] {
			out = append(out, entry{d.looks[e.stuff], e.name})
		}
	}
	return out
}
