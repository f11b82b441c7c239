package bench

import (
	"fmt"
	"math"

	"forel/geometry"
	"forel/paper/bench"
	"forel/render"
	"forel/render/typeset"
)

// thinLine joins a number to what it belongs to, where it stands elsewhere.
var thinLine = render.Stroke{Width: 0.15, Color: render.Black}

// dot is the radius of the dot on what a number belongs to.
const dot Length = 0.4

// callouts names what is too small for its number from outside it: a thin line
// leads from a dot on it to the nearest free place.
func (f *figure) callouts(on render.Surface) {
	edge := f.box(geometry.Bx(0, 0, f.sheet.Width, f.sheet.Height))
	for _, q := range f.unnamed {
		text := render.Text{String: fmt.Sprint(q.Number), Size: render.SmallSize, Bold: true, Align: render.Middle, Color: render.Black}
		if !f.call(on, text, false, f.inside(f.box(q.Box)), edge) {
			f.missed = append(f.missed, "piece "+text.String)
		}
	}
	for _, c := range f.unnumbered {
		text := render.Text{String: fmt.Sprint(c.Number), Size: render.SmallSize, Align: render.Middle, Color: render.Black}
		if !f.call(on, text, true, f.anchors(c), edge) {
			f.missed = append(f.missed, "cut "+text.String)
		}
	}
}

// anchors returns points of a cut's line that no other line or word is close to,
// else its middle.
func (f *figure) anchors(c bench.Cut) []geometry.Point {
	from, to := f.at(c.From), f.at(c.To)
	var out []geometry.Point
	for _, part := range []float64{0.5, 0.3, 0.7, 0.15, 0.85} {
		p := from.Add(to.Sub(from).Mul(part))
		near := geometry.Box{Min: p, Max: p}.Grow(dot + 0.1)
		if !f.covered(near) {
			out = append(out, p)
		}
	}
	return append(out, from.Add(to.Sub(from).Mul(0.5)))
}

// inside returns points along the middle of a narrow piece, the middle first.
func (f *figure) inside(b geometry.Box) []geometry.Point {
	var out []geometry.Point
	for _, part := range []float64{0.5, 0.35, 0.65, 0.2, 0.8, 0.1, 0.9} {
		p := geometry.Pt(b.Center().X, b.Min.Y+b.Height()*Length(part))
		if b.Width() > b.Height() {
			p = geometry.Pt(b.Min.X+b.Width()*Length(part), b.Center().Y)
		}
		if !f.covered(geometry.Box{Min: p, Max: p}.Grow(dot + 0.1)) {
			out = append(out, p)
		}
	}
	return out
}

// covered tells whether words stand on a place.
func (f *figure) covered(b geometry.Box) bool {
	for _, t := range f.taken {
		if t.Overlaps(b) {
			return true
		}
	}
	return false
}

// call sets a number at the nearest free place to one of some points.
func (f *figure) call(on render.Surface, text render.Text, boxed bool, anchors []geometry.Point, edge geometry.Box) bool {
	w, h := typeset.Width(text.String, text.Size, text.Bold)*Length(f.wider), typeset.Ascent(text.Size)-0.25
	page := geometry.Bx(edge.Min.X-aroundLeft, edge.Min.Y-aroundTop, edge.Max.X+aroundRight-5, edge.Max.Y+aroundBottom)
	for _, radius := range []Length{2.5, 3.2, 4, 5, 6.5, 8, 10, 12, 15, 18, 22, 26, 30, 36, 42} {
		for _, p := range anchors {
			for n := range 16 {
				sin, cos := math.Sincos((float64(n) + 0.5) * math.Pi / 8)
				centre := p.Add(geometry.Pt(Length(cos)*radius, Length(sin)*radius))
				box := geometry.Bx(centre.X-w/2, centre.Y-h/2, centre.X+w/2, centre.Y+h/2).Grow(tagPad)
				if box.Contains(geometry.Box{Min: p, Max: p}) || !page.Contains(box) || !f.clearFor(box) {
					continue
				}
				end := p.Add(centre.Sub(p).Mul(0.5))
				if clips := geometry.Line(p, centre).Clip(box, 1); len(clips) > 0 {
					end = clips[0].Path.Vertices[0].Point
				}
				if !f.joins(p, end) {
					continue
				}
				thin := segment{p, end}
				on.Stroke(thin.path(), thinLine)
				on.Fill(geometry.Circle(p, dot), render.Black)
				on.Fill(geometry.Rectangle(box), white)
				if boxed {
					on.Stroke(geometry.Rectangle(box), tagEdge)
				}
				text.At = geometry.Pt(centre.X, centre.Y+h/2)
				on.Text(text)
				f.taken = append(f.taken, box, geometry.Box{Min: p, Max: p}.Grow(dot))
				f.leaders = append(f.leaders, thin)
				return true
			}
		}
	}
	return false
}

// clearFor tells whether a number can stand in a box.
func (f *figure) clearFor(box geometry.Box) bool {
	wide := box.Grow(0.25)
	// What was in the way of one place is likely to be in the way of the next.
	if f.inWay.taken < len(f.taken) && f.taken[f.inWay.taken].Overlaps(wide) || f.inWay.line < len(f.lines) && crosses(f.lines[f.inWay.line], wide) {
		return false
	}
	for i, t := range f.taken {
		if t.Overlaps(wide) {
			f.inWay.taken = i
			return false
		}
	}
	for i, l := range f.lines {
		if crosses(l, wide) {
			f.inWay.line = i
			return false
		}
	}
	for _, l := range f.leaders {
		if crosses(l, wide) {
			return false
		}
	}
	return true
}

// joins tells whether a thin line can lead from a point to where it ends.
func (f *figure) joins(p, end geometry.Point) bool {
	thin := segment{p, end}
	for _, t := range f.taken {
		if crosses(thin, t.Grow(0.15)) {
			return false
		}
	}
	for _, l := range f.leaders {
		if meets(l, p, end) {
			return false
		}
	}
	return true
}
