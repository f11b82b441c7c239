package handout

import (
	"forel/render"
	"forel/render/scene"
	"forel/render/shape"
)

// palette is how materials are drawn. They differ in hatching first, so that a
// poor print in black alone can be read; tints are light.
type palette struct {
	board, lining, cover, pages scene.Look
	cloth, paper, card          sheetLook
}

// sheetLook is a material seen from its face, and from the back, where it is
// glued; of card from outside and from inside.
type sheetLook struct{ face, back scene.Look }

func grey(v uint8) render.Color { return render.Color{R: v, G: v, B: v} }

var white = grey(255)

// paletteOf gives the looks, in greys or with tints of colour beneath the same
// hatching.
func paletteOf(tinted bool) palette {
	thin := render.Stroke{Width: 0.12, Color: grey(70)}
	dots := render.Stroke{Width: 0.3, Dash: []Length{0.3, 1.5}, Color: grey(70)}
	dashes := render.Stroke{Width: 0.12, Dash: []Length{1.6, 1.6}, Color: grey(90)}
	p := palette{
		board:  scene.Look{Tint: grey(222)},
		lining: scene.Look{Tint: grey(246), Hatch: []shape.Hatch{{Angle: 0, Gap: 1.7, Stroke: dashes}}},
		cover:  scene.Look{Tint: grey(196)},
		pages:  scene.Look{Tint: white, Hatch: []shape.Hatch{{Angle: 0, Gap: 0.7, Stroke: render.Stroke{Width: 0.08, Color: grey(110)}}}},
		cloth: sheetLook{
			face: scene.Look{Tint: grey(240), Hatch: []shape.Hatch{{Angle: 45, Gap: 1.2, Stroke: thin}}},
			back: scene.Look{Tint: white},
		},
		paper: sheetLook{
			face: scene.Look{Tint: grey(250), Hatch: []shape.Hatch{{Angle: 0, Gap: 1.4, Stroke: dots}}},
			back: scene.Look{Tint: white},
		},
		card: sheetLook{face: scene.Look{Tint: grey(228)}, back: scene.Look{Tint: grey(250)}},
	}
	if tinted {
		p.board.Tint = render.Color{R: 0xDE, G: 0xD6, B: 0xC8}
		p.lining.Tint = render.Color{R: 0xE6, G: 0xF4, B: 0xEF}
		p.cloth.face.Tint = render.Color{R: 0xD9, G: 0xEC, B: 0xF8}
		p.paper.face.Tint = render.Color{R: 0xFB, G: 0xEE, B: 0xD5}
		p.card.face.Tint = render.Color{R: 0xE6, G: 0xDF, B: 0xD2}
	}
	return p
}

// plain gives a look without its hatching: what is not new in a figure.
func plain(l scene.Look) scene.Look {
	l.Hatch = nil
	return l
}
