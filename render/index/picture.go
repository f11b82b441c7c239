package index

import (
	"math"

	"forel/geometry"
	"forel/geometry/plan"
	"forel/geometry/wording"
	"forel/render"
	"forel/render/svg"
)

// PictureName is the file of a case's picture in its folder.
const PictureName = "case.svg"

// The picture's size, and how far the case is seen from the right and from
// above.
const (
	pictureWide geometry.Length = 36
	pictureTall geometry.Length = 44
	aside                       = 28 * math.Pi / 180
	above                       = 20 * math.Pi / 180
)

// Picture draws a case from outside at an angle, its mouth toward the viewer and
// what it is made for in it, as large as fits, with its covering and thumb hole: to
// tell one from another, not to measure.
func Picture(p plan.Plan) []byte {
	s := svg.New(pictureWide, pictureTall, wording.Capital(p.Content)+" in its case", "Not to scale: a picture to tell one case from another.")
	out, in := p.Outside, p.Cavity
	wallX, wallY := (out.Thickness-in.Thickness)/2, (out.Height-in.Height)/2
	at := view(out)
	face := func(fill render.Color, corners ...[3]geometry.Length) {
		points := make([]geometry.Point, len(corners))
		for i, c := range corners {
			points[i] = at(c[0], c[1], c[2])
		}
		s.Fill(geometry.Polygon(points...), fill)
		s.Stroke(geometry.Polygon(points...), render.Stroke{Width: 0.25, Color: render.Black})
	}
	upright := func(fill render.Color, x, y, w, h geometry.Length) {
		face(fill, [3]geometry.Length{x, y, 0}, [3]geometry.Length{x + w, y, 0}, [3]geometry.Length{x + w, y + h, 0}, [3]geometry.Length{x, y + h, 0})
	}
	x, y, z := out.Thickness, out.Height, out.Width
	s.Begin(render.Legend)
	c := coveringOf(p)
	face(c.head.lit(1), [3]geometry.Length{0, y, 0}, [3]geometry.Length{x, y, 0}, [3]geometry.Length{x, y, z}, [3]geometry.Length{0, y, z})
	right := func(fill render.Color, outline []geometry.Point) {
		corners := make([][3]geometry.Length, len(outline))
		for i, q := range outline {
			corners[i] = [3]geometry.Length{x, q.Y, z - q.X}
		}
		face(fill, corners...)
	}
	whole := geometry.Rectangle(geometry.Bx(0, 0, z, y)).Flatten(1)
	if c.hole {
		right(shade(0.35), whole) // the inside, seen through the hole
	}
	right(c.side.lit(sideLight), c.outline(whole))
	if c.panel != nil {
		right(c.paper.lit(sideLight), c.panel(c.outline(whole)))
	}
	upright(c.head.lit(1), 0, 0, x, y)
	upright(shade(0.35), wallX, wallY, in.Thickness, in.Height)
	book := p.Contents
	upright(shade(1), wallX+(in.Thickness-book.Thickness)/2, wallY, book.Thickness, book.Height)
	s.End()
	return s.Bytes()
}

// view returns where a place of a case is seen in the picture: x from the left and
// y from the tail across the mouth, z from the mouth to the spine wall.
func view(out plan.Size) func(x, y, z geometry.Length) geometry.Point {
	flat := func(x, y, z geometry.Length) geometry.Point {
		return geometry.Pt(
			x*geometry.Length(math.Cos(aside))+z*geometry.Length(math.Sin(aside)),
			-y*geometry.Length(math.Cos(above))-(z*geometry.Length(math.Cos(aside))-x*geometry.Length(math.Sin(aside)))*geometry.Length(math.Sin(above)))
	}
	var box geometry.Box
	for i := range 8 {
		on := func(bit int, l geometry.Length) geometry.Length { return l * geometry.Length(i>>bit&1) }
		p := flat(on(0, out.Thickness), on(1, out.Height), on(2, out.Width))
		if i == 0 {
			box = geometry.Box{Min: p, Max: p}
		}
		box.Min = geometry.Pt(min(box.Min.X, p.X), min(box.Min.Y, p.Y))
		box.Max = geometry.Pt(max(box.Max.X, p.X), max(box.Max.Y, p.Y))
	}
	scale := min((pictureWide-2)/box.Width(), (pictureTall-2)/box.Height())
	return func(x, y, z geometry.Length) geometry.Point {
		p := flat(x, y, z).Sub(box.Center())
		return geometry.Pt(pictureWide/2+p.X*scale, pictureTall/2+p.Y*scale)
	}
}

// shade returns a grey, 1 white.
func shade(light float64) render.Color {
	v := uint8(math.Round(255 * light))
	return render.Color{R: v, G: v, B: v}
}
