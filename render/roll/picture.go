package roll

import (
	"forel/geometry"
	"forel/geometry/plan"
	"forel/render"
	"forel/render/scene"
	"forel/render/svg"
)

// PictureName is the file of a case's picture in its folder.
const PictureName = "case.svg"

// The picture's size, for lines as thick as in other figures not to crowd its walls (an
// index shows it smaller), and how far the case is seen from the right and from
// above, in degrees.
const (
	pictureWide geometry.Length = 72
	pictureTall geometry.Length = 88
	aside                       = 28
	above                       = 20
)

// Picture draws a case from outside at an angle, its mouth toward the viewer and
// what it is made for in it, as large as fits, with its covering and thumb hole: to
// tell one from another, not to measure.
func Picture(p plan.Plan) []byte {
	s := svg.New(pictureWide, pictureTall, capital(p.Content)+" in its case", "Not to scale: a picture to tell one case from another.")
	seen := scene.See(facesOf(p), scene.Turned(scene.Vec{Z: 1}, scene.Vec{Y: 1}, aside, above))
	to, _ := scene.Fitted(seen.Bounds(), geometry.Bx(0, 0, pictureWide, pictureTall).Grow(-2))
	s.Begin(render.Legend)
	seen.Draw(s, to, func(string) bool { return false })
	s.End()
	return s.Bytes()
}

// facesOf returns what is seen of a case: X runs from the left and Y from the tail
// across the mouth, Z from the spine wall to the mouth.
func facesOf(p plan.Plan) []scene.Face {
	out, in, book := p.Outside, p.Cavity, p.Contents
	x, y, z := out.Thickness, out.Height, out.Width
	c := coveringOf(p)
	var faces []scene.Face
	// Of what lies in one plane each lies on those before it.
	face := func(object string, fill render.Color, outline []geometry.Point, at func(geometry.Point) scene.Vec) {
		look := scene.Look{Tint: fill}
		f := scene.Face{Object: object, Layer: len(faces), Front: look, Back: &look}
		for _, q := range outline {
			f.Points = append(f.Points, at(q))
		}
		faces = append(faces, f)
	}
	vec := func(x, y, z geometry.Length) scene.Vec { return scene.Vec{X: x.MM(), Y: y.MM(), Z: z.MM()} }
	head := func(q geometry.Point) scene.Vec { return vec(q.X, y, q.Y) }
	side := func(q geometry.Point) scene.Vec { return vec(x, q.Y, q.X) }
	mouth := func(q geometry.Point) scene.Vec { return vec(q.X, q.Y, z) }
	box := func(x, y, wide, high geometry.Length) []geometry.Point {
		return geometry.Rectangle(geometry.Bx(x, y, x+wide, y+high)).Flatten(1)
	}
	wallX, wallY := (x-in.Thickness)/2, (y-in.Height)/2
	whole := box(0, 0, z, y)
	face("head", c.head, box(0, 0, x, z), head)
	if c.hole {
		face("inside", dark, whole, side) // seen through the hole
	}
	face("side", c.side, c.outline(whole), side)
	if c.panel != nil {
		face("paper", c.paper, c.panel(c.outline(whole)), side)
	}
	face("mouth", c.head, box(0, 0, x, y), mouth)
	face("cavity", dark, box(wallX, wallY, in.Thickness, in.Height), mouth)
	face("book", white, box(wallX+(in.Thickness-book.Thickness)/2, wallY, book.Thickness, book.Height), mouth)
	return faces
}
