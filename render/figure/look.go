package figure

import (
	"forel/geometry"
	"forel/geometry/polygon"
	"forel/geometry/stage"
	"forel/render"
	"forel/render/scene"
	"forel/render/shape"
	"forel/render/staging"
)

func grey(v uint8) render.Color { return render.Color{R: v, G: v, B: v} }

// Swatch returns what draws a sample of a look into a box, with a border round it.
func Swatch(on render.Surface, look scene.Look, border render.Stroke) func(geometry.Box) {
	return func(box geometry.Box) {
		path := geometry.Rectangle(box)
		on.Fill(path, look.Tint)
		for _, h := range look.Hatch {
			h.Draw(on, polygon.Box(box)[0], nil)
		}
		on.Stroke(path, border)
	}
}

// Looks returns how stuffs are drawn, in greys or with tints of colour beneath the
// same hatching. They differ in hatching first, so that a poor print in black alone
// can be read; tints are light.
func Looks(tinted bool) staging.Looks {
	thin := render.Stroke{Width: 0.12, Color: grey(70)}
	dots := render.Stroke{Width: 0.3, Dash: []Length{0.3, 1.5}, Color: grey(70)}
	dashes := render.Stroke{Width: 0.12, Dash: []Length{1.6, 1.6}, Color: grey(90)}
	edges := render.Stroke{Width: 0.08, Color: grey(110)} // of pages
	hatch := func(angle float64, gap Length, s render.Stroke) []shape.Hatch {
		return []shape.Hatch{{Angle: angle, Gap: gap, Stroke: s}}
	}
	looks := staging.Looks{
		stage.Board:      {Tint: grey(222)},
		stage.Lining:     {Tint: grey(246), Hatch: hatch(0, 1.7, dashes)},
		stage.Cloth:      {Tint: grey(240), Hatch: hatch(45, 1.2, thin)},
		stage.ClothBack:  {Tint: render.White},
		stage.Paper:      {Tint: grey(250), Hatch: hatch(0, 1.4, dots)},
		stage.PaperBack:  {Tint: render.White},
		stage.Card:       {Tint: grey(228)},
		stage.CardInside: {Tint: grey(250)},
		stage.Cover:      {Tint: grey(196)},
		stage.Pages:      {Tint: render.White, Hatch: hatch(0, 0.7, edges)},
		stage.Blank:      {Tint: render.White},
	}
	if !tinted {
		return looks
	}
	for stuff, tint := range map[stage.Stuff]render.Color{
		stage.Board:  {R: 0xDE, G: 0xD6, B: 0xC8},
		stage.Lining: {R: 0xE6, G: 0xF4, B: 0xEF},
		stage.Cloth:  {R: 0xD9, G: 0xEC, B: 0xF8},
		stage.Paper:  {R: 0xFB, G: 0xEE, B: 0xD5},
		stage.Card:   {R: 0xE6, G: 0xDF, B: 0xD2},
	} {
		look := looks[stuff]
		look.Tint = tint
		looks[stuff] = look
	}
	return looks
}
