package bench

import (
	"fmt"
	"math"
	"slices"

	"forel/geometry"
	"forel/paper/bench"
	"forel/render"
	"forel/render/leader"
	"forel/render/typeset"
)

// Lines of the numbers: one joins a number to what it belongs to, where it stands
// elsewhere; the other is the box round a cut's number.
var (
	thinLine = render.Stroke{Width: 0.15, Color: render.Black}
	tagEdge  = render.Stroke{Width: 0.12, Color: render.Vermilion}
)

const (
	dot    Length = 0.4  // the radius of the dot on what a number belongs to
	tagPad Length = 0.35 // within the box of a number
	tagOff Length = 0.8  // from the sheet's edge
)

// tag is a number at a place where it could stand.
type tag struct {
	text  render.Text
	box   geometry.Box
	boxed bool // of a cut
}

func (f *figure) tag(number int, centre geometry.Point, turned, cut bool) tag {
	t := tag{render.Text{String: fmt.Sprint(number), Size: render.SmallSize, Bold: !cut, Align: render.Middle, Turned: turned, Color: render.Black}, geometry.Box{}, cut}
	w, h := typeset.Width(t.text.String, t.text.Size, t.text.Bold)*Length(f.wider), typeset.Ascent(t.text.Size)-0.25
	if turned {
		t.text.At = geometry.Pt(centre.X+h/2, centre.Y)
		w, h = h, w
	} else {
		t.text.At = geometry.Pt(centre.X, centre.Y+h/2)
	}
	t.box = geometry.Bx(centre.X-w/2, centre.Y-h/2, centre.X+w/2, centre.Y+h/2).Grow(tagPad)
	return t
}

// set draws a number at its place.
func (f *figure) set(on render.Surface, t tag) {
	on.Fill(geometry.Rectangle(t.box), white)
	if t.boxed {
		on.Stroke(geometry.Rectangle(t.box), tagEdge)
	}
	on.Text(t.text)
	f.words.Boxes = append(f.words.Boxes, t.box)
}

// cutNumbers sets the number of every cut, in a box: beyond the end of a line that runs to
// the edge of the sheet, else on the line, clear of all words and of every other line; else
// where a thin line leads to it.
func (f *figure) cutNumbers(on render.Surface) {
	edge := f.box(geometry.Bx(0, 0, f.sheet.Width, f.sheet.Height))
	var left []bench.Cut
next:
	for i, c := range f.cuts {
		own := 4 + i // after the edges of the sheet
		for _, t := range f.places(c, edge) {
			if f.free(t.box, own) {
				f.set(on, t)
				continue next
			}
		}
		left = append(left, c)
	}
	// What is too small for its number is named from outside it.
	for _, q := range f.unnamed {
		if !f.call(on, q.Number, false, along(f.middle(q.Box)), edge) {
			f.missed = append(f.missed, fmt.Sprintf("piece %d", q.Number))
		}
	}
	for _, c := range left {
		if !f.call(on, c.Number, true, along(f.at(c.From), f.at(c.To)), edge) {
			f.missed = append(f.missed, fmt.Sprintf("cut %d", c.Number))
		}
	}
}

// places returns the places for a cut's number, the best first.
func (f *figure) places(c bench.Cut, edge geometry.Box) []tag {
	from, to := f.at(c.From), f.at(c.To)
	line := geometry.Around(from, to)
	var on, beyond []tag
	for _, turned := range []bool{false, true} {
		for _, part := range []float64{0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.12, 0.88, 0.06, 0.94, 0.03, 0.97} {
			t := f.tag(c.Number, from.Add(to.Sub(from).Mul(part)), turned, true)
			past := t.box.Min.Y < line.Min.Y || t.box.Max.Y > line.Max.Y // the ends of the line
			if !c.AlongY {
				past = t.box.Min.X < line.Min.X || t.box.Max.X > line.Max.X
			}
			if !past && edge.Contains(t.box) {
				on = append(on, t)
			}
		}
	}
	for _, ends := range [][2]geometry.Point{{to, from}, {from, to}} {
		tip := ends[1]
		way := tip.Sub(ends[0]).Mul(1 / max(1e-9, tip.Distance(ends[0]).MM()))
		past := tip.Add(way.Mul(0.1))
		if edge.Grow(0.05).Contains(geometry.Box{Min: past, Max: past}) {
			continue
		}
		t := f.tag(c.Number, tip, false, true)
		off := tagOff + t.box.Width()/2*way.X.Abs() + t.box.Height()/2*way.Y.Abs()
		beyond = append(beyond, f.tag(c.Number, tip.Add(way.Mul(off.MM())), false, true))
	}
	if len(beyond) == 2 || c.Kind == bench.Square {
		return append(beyond, on...)
	}
	return append(on, beyond...)
}

// middle returns the ends of the line along the middle of a narrow piece.
func (f *figure) middle(b geometry.Box) (from, to geometry.Point) {
	b = f.box(b)
	if b.Width() > b.Height() {
		return geometry.Pt(b.Min.X, b.Center().Y), geometry.Pt(b.Max.X, b.Center().Y)
	}
	return geometry.Pt(b.Center().X, b.Min.Y), geometry.Pt(b.Center().X, b.Max.Y)
}

// along returns places on a line, the middle first.
func along(from, to geometry.Point) (out []geometry.Point) {
	for _, part := range []float64{0.5, 0.35, 0.65, 0.2, 0.8, 0.1, 0.9} {
		out = append(out, from.Add(to.Sub(from).Mul(part)))
	}
	return out
}

// call sets a number at the nearest free place to one of some points, with a thin line
// from a dot there.
func (f *figure) call(on render.Surface, number int, cut bool, anchors []geometry.Point, edge geometry.Box) bool {
	page := geometry.Bx(edge.Min.X-aroundLeft, edge.Min.Y-aroundTop, edge.Max.X+aroundRight-5, edge.Max.Y+aroundBottom-missedTall)
	for _, radius := range []Length{2.5, 3.2, 4, 5, 6.5, 8, 10, 12, 15, 18, 22, 26, 30, 36, 42} {
		for _, p := range anchors {
			spot := geometry.Around(p).Grow(dot)
			if !f.words.Free(spot, 0, 0) {
				continue
			}
			for n := range 16 {
				sin, cos := math.Sincos((float64(n) + 0.5) * math.Pi / 8)
				centre := p.Add(geometry.Pt(Length(cos)*radius, Length(sin)*radius))
				t := f.tag(number, centre, false, cut)
				if t.box.Contains(geometry.Around(p)) || !page.Contains(t.box) || !f.free(t.box, -1) {
					continue
				}
				end := p.Add(centre.Sub(p).Mul(0.5))
				if clips := geometry.Line(p, centre).Clip(t.box, 1); len(clips) > 0 {
					end = clips[0].Path.Vertices[0].Point
				}
				if !f.joins(p, end) {
					continue
				}
				on.Stroke(geometry.Line(p, end), thinLine)
				on.Fill(geometry.Circle(p, dot), render.Black)
				f.set(on, t)
				f.words.Boxes = append(f.words.Boxes, spot)
				f.words.Lines = append(f.words.Lines, geometry.Segment{From: p, To: end})
				return true
			}
		}
	}
	return false
}

// free tells whether a number can stand in a box, on no line but its own.
func (f *figure) free(box geometry.Box, own int) bool {
	wide := box.Grow(0.25)
	for i, l := range f.lines {
		if i != own && wide.Crossed(l.From, l.To) {
			return false
		}
	}
	return f.words.Free(wide, 0, 0)
}

// joins tells whether a thin line can lead from a point to where it ends.
func (f *figure) joins(p, end geometry.Point) bool {
	return !slices.ContainsFunc(f.words.Boxes, func(b geometry.Box) bool { return b.Grow(0.15).Crossed(p, end) }) &&
		!slices.ContainsFunc(f.words.Lines, func(l geometry.Segment) bool { return leader.Cross(l.From, l.To, p, end) })
}
