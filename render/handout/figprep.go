package handout

import (
	"slices"

	"forel/render/scene"
)

// measures gives the figure of a book with what is measured of it.
func (p palette) measures(size [3]float64, words [3]string) panel {
	h, w, t := size[0], size[1], size[2]
	off := 0.05 * max(h, w, t)
	x, y, z := -off, -off, w
	return panel{
		faces: p.volume("book", scene.Vec{}, t, h, w), view: scene.Turned(toMouth, toHead, 38, 26), fresh: []string{"book"},
		arrows: []arrow{
			{path: []scene.Vec{{X: x, Y: 0, Z: z}, {X: x, Y: h, Z: z}}, twin: true},
			{path: []scene.Vec{{X: t, Y: y, Z: 0}, {X: t, Y: y, Z: w}}, twin: true},
			{path: []scene.Vec{{X: 0, Y: y, Z: z}, {X: t, Y: y, Z: z}}, twin: true},
		},
		notes: []note{
			{name: "H  height", more: words[0], at: scene.Vec{X: x, Y: h * 0.55, Z: z}},
			{name: "W  width", more: words[1], at: scene.Vec{X: t, Y: y, Z: w / 2}},
			{name: "T  thickness", more: words[2], at: scene.Vec{X: t / 2, Y: y, Z: z}},
			{name: "spine", spot: "book, spine"}, {name: "head", at: scene.Vec{X: t / 2, Y: h, Z: w * 0.3}},
		},
	}
}

// flatView looks straight down on a bench: X to the right, Y away, Z up.
func flatView() scene.View { return scene.From(scene.Vec{Z: 1}, scene.Vec{Y: 1}) }

// benchView looks down at a bench at an angle.
func benchView() scene.View { return scene.Turned(toTail, toMouth, 22, 38) }

// slab gives a block on a bench.
func slab(object string, x, y, z, wide, deep, thick float64, l scene.Look) []scene.Face {
	return scene.Box(object, scene.Vec{X: x, Y: y, Z: z}, scene.Vec{X: x + wide, Y: y + deep, Z: z + thick}, l)
}

// sheetOn gives a flat sheet on a bench.
func sheetOn(object string, x, y, z, wide, deep float64, l scene.Look) scene.Face {
	return scene.Face{Object: object, Name: object, Front: l, Back: &l, Grain: scene.Vec{Y: 1}, Points: []scene.Vec{
		{X: x, Y: y, Z: z}, {X: x + wide, Y: y, Z: z}, {X: x + wide, Y: y + deep, Z: z}, {X: x, Y: y + deep, Z: z},
	}}
}

// boardsLaid gives the figure of the five boards as they are cut, seen from
// above, each with its grain.
func (m model) boardsLaid() panel {
	w, h, d, s := m.w()-2*m.s(), m.h(), m.d(), m.s()
	gap := 0.06 * h
	p := panel{view: flatView()}
	// A label's line ends on the side it comes from, the arrow lies on the other.
	put := func(object, name string, x, y, wide, deep float64, upright, fromLeft bool) {
		p.faces = append(p.faces, sheetOn(object, x, y, 0, wide, deep, m.palette.board))
		mark, word := 0.68, 0.25
		if !fromLeft {
			mark, word = 0.32, 0.75
		}
		arrowAt, wordAt := scene.Vec{X: x + wide*mark, Y: y + deep/2}, scene.Vec{X: x + wide*word, Y: y + deep/2}
		along := scene.Vec{X: min(wide*0.2, 25)}
		if upright {
			along = scene.Vec{Y: min(deep*0.3, 25)}
		}
		if object == "spine" {
			arrowAt.X, wordAt = x+wide/2, scene.Vec{X: x + wide/2, Y: y + deep*0.15}
		}
		p.arrows = append(p.arrows, arrow{path: []scene.Vec{arrowAt.Sub(along), arrowAt.Add(along)}, twin: true})
		p.notes = append(p.notes, note{name: name, at: wordAt})
	}
	put("left", "side", 0, 0, d, h, true, true)
	put("spine", "spine wall", d+gap, 0, w, h, true, false)
	put("right", "other side", d+2*gap+w, 0, d, h, true, false)
	put("head", "head wall", 0, h+gap, d-s, w, false, true)
	put("tail", "tail wall", d+2*gap+w+s, h+gap, d-s, w, false, false)
	outline := func(object string, mirror float64) {
		for i := range p.faces {
			if p.faces[i].Object != object {
				continue
			}
			x := p.faces[i].Points[0].X
			var pts []scene.Vec
			for _, q := range m.c.Side {
				px := q.X.MM()
				if mirror < 0 {
					px = d - px
				}
				pts = append(pts, scene.Vec{X: x + px, Y: q.Y.MM()})
			}
			if mirror < 0 {
				slices.Reverse(pts)
			}
			p.faces[i].Points = pts
		}
	}
	outline("left", -1)
	outline("right", 1)
	return p
}

// liningFigures gives the figures of a lining being pasted to a side, and of the
// stack in which it dries.
func (m model) liningFigures() []panel {
	p, ok := m.pieces["side lining"]
	if !ok {
		return nil
	}
	lw, lh := p.Size()
	w, h := lw.MM(), lh.MM()
	bw, bh, b := m.d(), m.h(), m.job.Board.Thickness.MM()
	trim := m.job.Lining.Trim.MM()
	lift := 0.22 * h
	board := scene.Moved(m.flatSide(b), scene.Vec{X: trim, Y: trim, Z: lift})
	paste := panel{
		faces: append(board, sheetOn("lining", 0, 0, 0, w, h, scene.Look{Tint: white})), view: benchView(), fresh: []string{"lining"},
		arrows: down(scene.Vec{Z: lift}, scene.Vec{X: trim + bw*0.92, Y: trim, Z: 0}, scene.Vec{X: trim, Y: trim + bh*0.1, Z: 0}),
		notes: []note{
			{name: "board", spot: "board"}, {name: "lining", more: "pasted face up", spot: "lining"},
		},
		caption: "a: the board into the middle of its lining",
	}
	g := 0.09 * h
	over := 0.06 * h
	big := func(object string, z float64) []scene.Face {
		return slab(object, -over, -over, z, bw+2*over, bh+2*over, 0.03*h, m.palette.board)
	}
	var stack []scene.Face
	stack = append(stack, big("pressing board", 0)...)
	stack = append(stack, sheetOn("release paper", 0-over/2, 0-over/2, g, bw+over, bh+over, scene.Look{Tint: white}))
	stack = append(stack, slab("lined board", 0, 0, 2*g, bw, bh, b, m.lining)...)
	stack = append(stack, sheetOn("release paper 2", 0-over/2, 0-over/2, 3*g, bw+over, bh+over, scene.Look{Tint: white}))
	stack = append(stack, big("pressing board 2", 4*g)...)
	stack = append(stack, slab("weight", bw*0.22, bh*0.25, 4*g+0.03*h, bw*0.56, bh*0.45, 0.16*h, m.cover)...)
	press := panel{
		faces: stack, view: scene.Turned(toTail, toMouth, 22, 24), fresh: []string{"lined board"},
		notes: []note{
			{name: "weight", spot: "weight"}, {name: "pressing board", spot: "pressing board 2"},
			{name: "release paper", spot: "release paper 2"}, {name: "the lined board", spot: "lined board"},
		},
		caption: "b: dry it flat (drawn apart; closed up in use)",
	}
	return []panel{paste, press}
}

// flatSide gives a side lying on a bench, its back up, with its thumb hole.
func (m model) flatSide(thick float64) []scene.Face {
	var outline []scene.Vec
	for _, q := range m.c.Side {
		outline = append(outline, scene.Vec{X: q.X.MM(), Y: q.Y.MM(), Z: thick})
	}
	return scene.Block("board", outline, scene.Vec{Z: -thick}, m.palette.board, m.palette.board, m.palette.board)
}

// dryFigures gives the figures of a book on a side: where it lies, and what shows
// beyond it.
func (m model) dryFigures(foreEdge, end string) []panel {
	v := scene.Turned(toTail, toRight.Mul(-1), -26, 50)
	tall, wide, thick := m.contents()
	in := m.w() - m.s()
	book := m.volume("book", scene.Vec{X: in - thick, Y: m.h() - tall, Z: m.d() - wide}, thick, tall, wide)
	faces := slices.Concat(m.board("right side"), book)
	fore, tail := m.d()-wide, m.h()-tall
	most := max(fore, tail)
	focus := boxCorners(scene.Vec{X: in - 2*most, Z: -most * 0.6, Y: -most * 0.6}, scene.Vec{X: m.w(), Z: 3.5 * most, Y: 3.5 * most})
	return []panel{
		{
			faces: faces, view: v, fresh: []string{"book"},
			notes: []note{
				{name: "flush", more: "with the head", at: scene.Vec{X: in - thick, Y: m.h(), Z: m.d() * 0.6}},
				{name: "a side", spot: "right side"},
			},
			caption: "a: flush with the spine and the head",
		},
		{
			faces: faces, view: v, fresh: []string{"book"}, focus: focus,
			notes: []note{
				{name: foreEdge, more: "shows at the fore-edge", at: scene.Vec{X: in, Y: 2.6 * most, Z: fore / 2}},
				{name: end, more: "shows at the tail", at: scene.Vec{X: in, Y: tail / 2, Z: 2 * most}},
			},
			caption: "b: the corner at fore-edge and tail, larger",
		},
	}
}

// boxCorners gives the corners of a box.
func boxCorners(a, b scene.Vec) []scene.Vec {
	var out []scene.Vec
	for _, x := range []float64{a.X, b.X} {
		for _, y := range []float64{a.Y, b.Y} {
			for _, z := range []float64{a.Z, b.Z} {
				out = append(out, scene.Vec{X: x, Y: y, Z: z})
			}
		}
	}
	return out
}
