package slipcase

import (
	"fmt"
	"slices"

	"forel/geometry"
	"forel/geometry/plan"
	"forel/geometry/space"
	"forel/geometry/stage"
	"forel/geometry/stage/draft"
)

// boardsLaid returns the figure of the boards as they are cut, seen from
// above, each with its grain.
func (m model) boardsLaid() stage.Picture {
	w, h, d, s := m.w()-2*m.s(), m.h(), m.d(), m.s()
	gap := 0.06 * h
	p := stage.Picture{View: draft.FromAbove()}
	// A label's line ends on the side it comes from, the arrow lies on the other.
	put := func(object, name, piece string, x, y Length, mirrored, fromLeft bool) {
		board := m.pieces[piece]
		wide, deep := board.Size()
		if mirrored {
			board.Outline = board.Outline.FlipX(wide)
		}
		face := stage.Face{Object: object, Name: object, Front: stage.Board, Back: stage.Board, Grain: stage.Vec{Y: 1}}
		for _, q := range board.Outline.Flatten(seenArc) {
			face.Points = append(face.Points, stage.Vec{X: x + q.X, Y: y + q.Y})
		}
		p.Faces = append(p.Faces, face)
		mark, word := Length(0.68), Length(0.25)
		if !fromLeft {
			mark, word = 0.32, 0.75
		}
		arrowAt, wordAt := stage.Vec{X: x + wide*mark, Y: y + deep/2}, stage.Vec{X: x + wide*word, Y: y + deep/2}
		along := stage.Vec{X: min(wide*0.2, 25)}
		if board.Grain == geometry.GrainHeight {
			along = stage.Vec{Y: min(deep*0.3, 25)}
		}
		if object == "spine" {
			arrowAt.X, wordAt = x+wide/2, stage.Vec{X: x + wide/2, Y: y + deep*0.15}
		}
		p.Arrows = append(p.Arrows, stage.Arrow{Path: []stage.Vec{arrowAt.Sub(along), arrowAt.Add(along)}, Twin: true})
		p.Notes = append(p.Notes, stage.Note{Name: plan.Say(name), At: wordAt})
	}
	put("left", "side", "side", 0, 0, true, true)
	put("spine", "spine wall", "spine wall", d+gap, 0, false, false)
	put("right", "other side", "side", d+2*gap+w, 0, false, false)
	put("head", "head wall", "head wall", 0, h+gap, false, true)
	put("tail", "tail wall", "tail wall", d+2*gap+w+s, h+gap, false, false)
	if n := m.job.Dividers(); n > 0 {
		put("divider", "divider", "divider", 2*d+3*gap+w, s, false, false)
		if n > 1 {
			p.Notes[len(p.Notes)-1].More = plan.Say(fmt.Sprint("one of ", n))
		}
	}
	return p
}

// liningFigures returns the figures of a lining being pasted to a side, and of the
// stack in which it dries.
func (m model) liningFigures() []stage.Picture {
	p, ok := m.pieces["side lining"]
	if !ok {
		return nil
	}
	w, h := p.Size()
	bw, bh, b := m.d(), m.h(), m.job.Board.Thickness
	trim := m.job.Lining.Trim
	lift := 0.22 * h
	side := plan.Solid{Stuff: stage.Board, Frame: space.Frame{O: stage.Vec{X: trim, Y: trim, Z: lift + b}, U: toRight, V: toHead}, Outline: m.c.Side, Thick: b}
	paste := stage.Picture{
		Faces: append(side.Block("board"), draft.Flat("lining", 0, 0, 0, w, h, stage.Blank)), View: draft.OnBench(38), Fresh: []string{"lining"},
		Arrows: draft.Down(stage.Vec{Z: lift}, stage.Vec{X: trim + bw*0.92, Y: trim, Z: 0}, stage.Vec{X: trim, Y: trim + bh*0.1, Z: 0}),
		Notes: []stage.Note{
			{Name: plan.Say("board"), Spot: "board"}, {Name: plan.Say("lining"), More: plan.Say("pasted face up"), Spot: "lining"},
		},
		Caption: plan.Say("a: the board into the middle of its lining"),
	}
	g := 0.09 * h
	over := 0.06 * h
	big := func(object string, z Length) []stage.Face {
		return draft.Slab(object, -over, -over, z, bw+2*over, bh+2*over, 0.03*h, stage.Board)
	}
	var stack []stage.Face
	stack = append(stack, big("pressing board", 0)...)
	stack = append(stack, draft.Flat("release paper", 0-over/2, 0-over/2, g, bw+over, bh+over, stage.Blank))
	stack = append(stack, draft.Slab("lined board", 0, 0, 2*g, bw, bh, b, stage.Lining)...)
	stack = append(stack, draft.Flat("release paper 2", 0-over/2, 0-over/2, 3*g, bw+over, bh+over, stage.Blank))
	stack = append(stack, big("pressing board 2", 4*g)...)
	stack = append(stack, draft.Slab("weight", bw*0.22, bh*0.25, 4*g+0.03*h, bw*0.56, bh*0.45, 0.16*h, stage.Cover)...)
	press := stage.Picture{
		Faces: stack, View: draft.OnBench(24), Fresh: []string{"lined board"},
		Notes: []stage.Note{
			{Name: plan.Say("weight"), Spot: "weight"}, {Name: plan.Say("pressing board"), Spot: "pressing board 2"},
			{Name: plan.Say("release paper"), Spot: "release paper 2"}, {Name: plan.Say("the lined board"), Spot: "lined board"},
		},
		Caption: plan.Say("b: dry it flat (drawn apart; closed up in use)"),
	}
	return []stage.Picture{paste, press}
}

// dryFigures returns the figures of a book on a side: where it lies, and what shows
// beyond it.
func (m model) dryFigures() []stage.Picture {
	v := stage.View{Toward: toTail, Up: toRight.Mul(-1), Yaw: -26, Pitch: 50}
	all, thick := m.job.Contents(), m.job.Book().Thick()
	tall, wide := all.Height, all.Width
	in := m.w() - m.s()
	book := draft.Book("book", stage.Vec{X: in - thick, Y: m.h() - tall, Z: m.d() - wide}, thick, tall, wide)
	faces := slices.Concat(m.board("right side"), book)
	fore, tail := m.d()-wide, m.h()-tall
	most := max(fore, tail)
	focus := draft.Corners(stage.Vec{X: in - 2*most, Z: -most * 0.6, Y: -most * 0.6}, stage.Vec{X: m.w(), Z: 3.5 * most, Y: 3.5 * most})
	whole := stage.Picture{
		Faces: faces, View: v, Fresh: []string{"book"},
		Notes: []stage.Note{
			{Name: plan.Say("head"), More: plan.Say("flush"), At: stage.Vec{X: in - thick, Y: m.h(), Z: m.d() * 0.6}},
			{Name: plan.Say("a side"), Spot: "right side"},
		},
		Caption: plan.Say("a: its spine at the mouth edge, its head at the head edge"),
	}
	if len(m.job.Books) == 1 {
		whole.Faces = slices.Concat(faces, m.board("spine wall"))
		whole.Notes = append(whole.Notes, stage.Note{Name: plan.Say("spine wall"), More: plan.Say("%s higher than "+m.job.inCase(), m.w()-2*m.s()-thick), Spot: "spine wall"})
	}
	return []stage.Picture{
		whole,
		{
			Faces: faces, View: v, Fresh: []string{"book"}, Focus: focus,
			Notes: []stage.Note{
				{Name: plan.Say("%s", fore), More: plan.Say("shows past the fore-edge"), At: stage.Vec{X: in, Y: 2.6 * most, Z: fore / 2}},
				{Name: plan.Say("%s", tail), More: plan.Say("shows past the tail"), At: stage.Vec{X: in, Y: tail / 2, Z: 2 * most}},
			},
			Caption: plan.Say("b: the corner at fore-edge and tail, larger"),
		},
	}
}
