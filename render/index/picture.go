package index

import (
	"forel/geometry"
	"forel/geometry/plan"
	"forel/geometry/stage"
	"forel/geometry/wording"
	"forel/render"
	"forel/render/scene"
	"forel/render/staging"
	"forel/render/svg"
)

// PictureName is the file of a case's picture in its folder.
const PictureName = "case.svg"

// The picture's size, for lines as thick as in other figures not to crowd its walls; an
// index shows it smaller.
const (
	pictureWide geometry.Length = 72
	pictureTall geometry.Length = 88
)

// looks are the tints of the picture, without hatching: cloth is blue, paper yellow,
// board and card grey.
var looks = staging.Looks{
	stage.Board:      {Tint: render.Color{R: 0xDE, G: 0xD6, B: 0xC8}},
	stage.Card:       {Tint: render.Color{R: 0xDE, G: 0xD6, B: 0xC8}},
	stage.CardInside: {Tint: render.Color{R: 0xF2, G: 0xEE, B: 0xE6}},
	stage.Lining:     {Tint: render.Color{R: 0xF2, G: 0xEE, B: 0xE6}},
	stage.Cloth:      {Tint: render.Color{R: 0xA9, G: 0xCC, B: 0xE6}},
	stage.ClothBack:  {Tint: white},
	stage.Paper:      {Tint: render.Color{R: 0xF8, G: 0xE2, B: 0xB3}},
	stage.PaperBack:  {Tint: white},
	stage.Cover:      {Tint: render.Color{R: 0xC4, G: 0xC4, B: 0xC4}},
	stage.Pages:      {Tint: white},
	stage.Blank:      {Tint: white},
}

var white = render.Color{R: 255, G: 255, B: 255}

// Picture draws the finished case as the last figure of its steps shows it, as
// large as fits: to tell one from another, not to measure.
func Picture(p plan.Plan) []byte {
	s := svg.New(pictureWide, pictureTall, wording.Capital(p.Content)+" in its case", "Not to scale: a picture to tell one case from another.")
	done := last(p)
	seen := scene.See(looks.Faces(done.Faces), staging.View(done.View))
	to, _ := scene.Fitted(seen.Bounds(), geometry.Bx(0, 0, pictureWide, pictureTall).Grow(-2))
	s.Begin(render.Legend)
	seen.Draw(s, to, func(string) bool { return false })
	s.End()
	return s.Bytes()
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
