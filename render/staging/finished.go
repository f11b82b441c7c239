package staging

import (
	"forel/geometry"
	"forel/geometry/plan"
	"forel/geometry/stage"
	"forel/render"
	"forel/render/scene"
)

// tints are those of the finished case, without hatching: cloth is blue, paper yellow,
// board and card grey.
var tints = Looks{
	stage.Board:      {Tint: render.Color{R: 0xDE, G: 0xD6, B: 0xC8}},
	stage.Card:       {Tint: render.Color{R: 0xDE, G: 0xD6, B: 0xC8}},
	stage.CardInside: {Tint: render.Color{R: 0xF2, G: 0xEE, B: 0xE6}},
	stage.Lining:     {Tint: render.Color{R: 0xF2, G: 0xEE, B: 0xE6}},
	stage.Cloth:      {Tint: render.Color{R: 0xA9, G: 0xCC, B: 0xE6}},
	stage.ClothBack:  {Tint: render.White},
	stage.Paper:      {Tint: render.Color{R: 0xF8, G: 0xE2, B: 0xB3}},
	stage.PaperBack:  {Tint: render.White},
	stage.Cover:      {Tint: render.Color{R: 0xC4, G: 0xC4, B: 0xC4}},
	stage.Pages:      {Tint: render.White},
	stage.Blank:      {Tint: render.White},
}

// Finished draws the finished case into a box as the last figure of its steps shows it, as
// large as fits: to tell one from another, not to measure.
func Finished(s render.Surface, p plan.Plan, box geometry.Box) {
	done := last(p)
	seen := scene.See(tints.Faces(done.Faces), View(done.View))
	to, _ := scene.Fitted(seen.Bounds(), box)
	seen.Draw(s, to, func(string) bool { return false })
}

// last returns the last picture of the steps.
func last(p plan.Plan) (out stage.Picture) {
	for _, s := range p.Steps {
		for _, row := range s.Pictures {
			for _, q := range row {
				out = q
			}
		}
	}
	return out
}
