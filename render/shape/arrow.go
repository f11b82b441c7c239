package shape

import (
	"forel/geometry"
	"forel/render"
	"forel/render/typeset"
)

// Arrow is how an arrow looks.
type Arrow struct {
	Line       render.Stroke
	Long, Half Length // of its head: how long, and half as wide as this
}

// Thin is an arrow for figures.
var Thin = Arrow{render.Stroke{Width: 0.2, Color: render.Black}, 1.7, 1.7 * 0.33}

// Head draws the head of an arrow that comes from a place.
func (a Arrow) Head(on render.Surface, tip, from geometry.Point) {
	if far := tip.Distance(from); far > 0 {
		a.heads(on, tip.Sub(from).Mul(1/far.MM()), tip)
	}
}

// Twin draws an arrow with a head at both ends, since grain has no sense.
func (a Arrow) Twin(on render.Surface, p, q geometry.Point) {
	on.Stroke(geometry.Line(p, q), a.Line)
	a.heads(on, p.Sub(q).Mul(1/p.Distance(q).MM()), p, q)
}

// heads draws a head at each of some tips in turn, one looking a way of length one, the
// next about.
func (a Arrow) heads(on render.Surface, way geometry.Point, tips ...geometry.Point) {
	across := geometry.Pt(way.Y, -way.X).Mul(a.Half.MM())
	for _, tip := range tips {
		base := tip.Sub(way.Mul(a.Long.MM()))
		on.Fill(geometry.Polygon(tip, base.Add(across), base.Sub(across)), a.Line.Color)
		way = way.Mul(-1)
	}
}

// alongGrain is the arrow that has the word for the grain in its middle.
var alongGrain = Arrow{render.Stroke{Width: 0.25, Color: render.Black}, 2.2, 0.7}

// GrainArm is how long the arrow of the grain is on each side of its word, where there is room.
const GrainArm Length = 8

// GrainLong returns how long the arrow of the grain is with its word between its arms.
func GrainLong(word string, arm Length) Length {
	return 2*arm + typeset.Width(word, render.NoteSize, false)
}

// Grain draws the arrow of the grain, or the flutes, with its word in the middle.
func Grain(on render.Surface, middle geometry.Point, upright bool, word string, arm Length) {
	way, down := geometry.Pt(1, 0), geometry.Pt(0, 1)
	if upright {
		way, down = geometry.Pt(0, 1), geometry.Pt(1, 0)
	}
	half := GrainLong(word, arm) / 2
	for _, side := range []float64{-1, 1} {
		from, tip := middle.Add(way.Mul(side*(half-arm+1).MM())), middle.Add(way.Mul(side*half.MM()))
		on.Stroke(geometry.Line(from, tip), alongGrain.Line)
		alongGrain.Head(on, tip, from)
	}
	base := middle.Add(down.Mul((typeset.Ascent(render.NoteSize)/2 - 0.3).MM()))
	on.Text(render.Text{At: base, String: word, Size: render.NoteSize, Align: render.Middle, Turned: upright, Color: render.Black})
}
