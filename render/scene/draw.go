package scene

import (
	"math"

	"forel/geometry"
	"forel/geometry/polygon"
	"forel/render"
)

// Outlines: of the faces of an object, round all that is seen of it, and round
// one that is to be noticed.
var (
	inner  = render.Stroke{Width: 0.18, Color: render.Black}
	outer  = render.Stroke{Width: 0.32, Color: render.Black}
	bolder = render.Stroke{Width: 0.6, Color: render.Black}
)

// Draw draws what is seen of a line; to takes a place of the view to the surface.
func (d Drawn) Draw(on render.Surface, to func(geometry.Point) geometry.Point) {
	for _, run := range d.Runs {
		points := make([]geometry.Point, len(run))
		for i, p := range run {
			points[i] = to(p)
		}
		on.Stroke(geometry.Line(points...), d.Stroke)
	}
}

// Draw draws what is seen; to takes a place of the view to the surface, and
// bold tells which objects are to be noticed.
func (s Seen) Draw(on render.Surface, to func(geometry.Point) geometry.Point, bold func(object string) bool) {
	moved := make([]polygon.Shape, len(s.Patches))
	for i, p := range s.Patches {
		moved[i] = p.Shape.Moved(to)
		for _, a := range moved[i] {
			on.Fill(a.Path(), dimmed(p.look.Tint, p.light))
			for _, h := range p.look.Hatch {
				h.Angle += p.angle
				h.Draw(on, a, nil)
			}
		}
	}
	for _, l := range s.Lines {
		l.Draw(on, to)
	}
	for _, r := range moved {
		round(on, r, inner)
	}
	for _, o := range s.Objects {
		if !bold(o.Name) {
			round(on, o.Shape.Moved(to), outer)
		}
	}
	for _, o := range s.Objects {
		if bold(o.Name) {
			round(on, o.Shape.Moved(to), bolder)
		}
	}
}

// slim is how broad a part of a thing must be on the page, in mm, for a bold
// outline not to fill it.
const slim = 1.8

// round draws the outline of a shape; of a slim part no bolder than others.
func round(on render.Surface, s polygon.Shape, stroke render.Stroke) {
	for _, a := range s {
		stroke := stroke
		if a.Breadth() < slim {
			stroke.Width = min(stroke.Width, outer.Width)
		}
		for _, ring := range a.Rings {
			on.Stroke(geometry.Polygon(ring...), stroke)
		}
	}
}

// dimmed returns a tint as it is in a light.
func dimmed(c render.Color, light float64) render.Color {
	f := 0.8 + 0.2*light
	dim := func(v uint8) uint8 { return uint8(math.Round(float64(v) * f)) }
	return render.Color{R: dim(c.R), G: dim(c.G), B: dim(c.B)}
}

// Fitted returns how a box of the view is laid as large as it goes into a box of a
// page, where Y runs down, and by how much smaller it is there.
func Fitted(from, into geometry.Box) (to func(geometry.Point) geometry.Point, scale float64) {
	scale = min(into.Width()/from.Width(), into.Height()/from.Height()).MM()
	c, m := from.Center(), into.Center()
	return func(p geometry.Point) geometry.Point {
		d := p.Sub(c).Mul(scale)
		return geometry.Pt(m.X+d.X, m.Y-d.Y)
	}, scale
}
