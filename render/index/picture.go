package index

import (
	"forel/geometry"
	"forel/geometry/plan"
	"forel/geometry/wording"
	"forel/render"
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

// Picture draws the finished case as the last figure of its steps shows it, as
// large as fits: to tell one from another, not to measure.
func Picture(p plan.Plan) []byte {
	s := svg.New(pictureWide, pictureTall, wording.Capital(p.Content)+" in its case", "Not to scale: a picture to tell one case from another.")
	s.Begin(render.Legend)
	staging.Finished(s, p, geometry.Bx(0, 0, pictureWide, pictureTall).Grow(-2))
	s.End()
	return s.Bytes()
}
