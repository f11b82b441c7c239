package bench

import (
	"fmt"

	"forel/geometry"
	"forel/paper/bench"
	"forel/render"
	"forel/render/typeset"
)

// cutNumbers sets the number of every cut, in a box: beyond the end of a line
// that runs to the edge of the sheet, else on the line, clear of all words and
// of every other line.
func (f *figure) cutNumbers(on render.Surface) {
	edge := f.box(geometry.Bx(0, 0, f.sheet.Width, f.sheet.Height))
	for i, c := range f.cuts {
		own := f.lines[4+i]
		placed := false
		for _, t := range f.tags(c, edge) {
			if !f.free(t, own, edge) {
				continue
			}
			if t.outside {
				if t.far {
					on.Stroke(geometry.Line(t.from, t.to), thinLine)
					f.leaders = append(f.leaders, segment{t.from, t.to})
				}
			}
			on.Fill(geometry.Rectangle(t.box), white)
			on.Stroke(geometry.Rectangle(t.box), tagEdge)
			on.Text(t.text)
			f.taken = append(f.taken, t.box)
			placed = true
			break
		}
		if !placed {
			f.unnumbered = append(f.unnumbered, c)
		}
	}
}

// tag is a number of a cut at a place where it could stand.
type tag struct {
	text     render.Text
	box      geometry.Box
	outside  bool
	far      bool // joined to its line by a thin one
	from, to geometry.Point
}

// tagEdge is the box round a cut's number.
var tagEdge = render.Stroke{Width: 0.12, Color: render.Vermilion}

const (
	tagPad Length = 0.35
	tagOff Length = 0.8 // from the sheet's edge
)

func (f *figure) newTag(number int, centre geometry.Point, turned bool) tag {
	t := tag{text: render.Text{String: fmt.Sprint(number), Size: render.SmallSize, Align: render.Middle, Turned: turned, Color: render.Black}}
	w, h := typeset.Width(t.text.String, render.SmallSize, false)*Length(f.wider), typeset.Ascent(render.SmallSize)-0.25
	if turned {
		t.text.At = geometry.Pt(centre.X+h/2, centre.Y)
		w, h = h, w
	} else {
		t.text.At = geometry.Pt(centre.X, centre.Y+h/2)
	}
	t.box = geometry.Bx(centre.X-w/2, centre.Y-h/2, centre.X+w/2, centre.Y+h/2).Grow(tagPad)
	return t
}

// tags returns the places for a cut's number, the best first.
func (f *figure) tags(c bench.Cut, edge geometry.Box) []tag {
	from, to := f.at(c.From), f.at(c.To)
	var out, inside []tag
	for _, turned := range []bool{false, true} {
		for _, part := range []float64{0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.12, 0.88, 0.06, 0.94, 0.03, 0.97} {
			inside = append(inside, f.newTag(c.Number, from.Add(to.Sub(from).Mul(part)), turned))
		}
	}
	ends := [2]bool{from.Y-edge.Min.Y < 0.05, edge.Max.Y-to.Y < 0.05} // runs to the upper edge, to the lower
	if !c.AlongY {
		ends = [2]bool{from.X-edge.Min.X < 0.05, edge.Max.X-to.X < 0.05}
	}
	for tier := range 3 {
		for n, runs := range ends {
			if !runs {
				continue
			}
			for _, aside := range []Length{0, 2.2, -2.2, 4.4, -4.4} {
				if aside != 0 && tier == 0 {
					continue
				}
				t := f.beyond(c, edge, n, tier, aside)
				out = append(out, t)
			}
		}
	}
	if ends[0] && ends[1] || c.Kind == bench.Square {
		return append(out, inside...)
	}
	return append(inside, out...)
}

// beyond returns a place outside the sheet, at the first or the second end of a
// cut's line, some tiers away and so far aside.
func (f *figure) beyond(c bench.Cut, edge geometry.Box, end, tier int, aside Length) tag {
	probe := f.newTag(c.Number, geometry.Pt(0, 0), false).box
	from, to := f.at(c.From), f.at(c.To)
	var tip, centre geometry.Point
	if c.AlongY {
		away := tagOff + probe.Height()/2 + Length(tier)*(probe.Height()+0.5)
		tip, centre = geometry.Pt(from.X, edge.Min.Y), geometry.Pt(from.X+aside, edge.Min.Y-away)
		if end == 1 {
			tip, centre = geometry.Pt(to.X, edge.Max.Y), geometry.Pt(to.X+aside, edge.Max.Y+away)
		}
	} else {
		away := tagOff + probe.Width()/2 + Length(tier)*(probe.Width()+0.5)
		tip, centre = geometry.Pt(edge.Min.X, from.Y), geometry.Pt(edge.Min.X-away, from.Y+aside)
		if end == 1 {
			tip, centre = geometry.Pt(edge.Max.X, to.Y), geometry.Pt(edge.Max.X+away, to.Y+aside)
		}
	}
	t := f.newTag(c.Number, centre, false)
	t.outside, t.far = true, tier > 0 || aside != 0
	t.from, t.to = tip, tip
	switch { // the thin line ends at the box
	case c.AlongY && end == 0:
		t.to = geometry.Pt(centre.X, t.box.Max.Y)
	case c.AlongY:
		t.to = geometry.Pt(centre.X, t.box.Min.Y)
	case end == 0:
		t.to = geometry.Pt(t.box.Max.X, centre.Y)
	default:
		t.to = geometry.Pt(t.box.Min.X, centre.Y)
	}
	return t
}

// free tells whether a number can stand at a place.
func (f *figure) free(t tag, own segment, edge geometry.Box) bool {
	box := t.box.Grow(0.25)
	if t.outside {
		around := geometry.Bx(edge.Min.X-aroundLeft, edge.Min.Y-aroundTop, edge.Max.X+aroundRight-5, edge.Max.Y+aroundBottom)
		if !around.Contains(box) {
			return false
		}
	} else {
		if !edge.Contains(box) {
			return false
		}
		l := own.bounds() // the number stands on its own line, not past its ends
		if l.Height() < 1e-9 && (box.Min.X < l.Min.X || box.Max.X > l.Max.X) || l.Height() >= 1e-9 && (box.Min.Y < l.Min.Y || box.Max.Y > l.Max.Y) {
			return false
		}
	}
	for _, b := range f.taken {
		if b.Overlaps(box) {
			return false
		}
	}
	for _, l := range f.lines {
		if l == own {
			continue
		}
		if crosses(l, box) {
			return false
		}
	}
	for _, l := range f.leaders {
		if crosses(l, box) || t.far && meets(l, t.from, t.to) {
			return false
		}
	}
	if t.far {
		thin := segment{t.from, t.to}
		for _, b := range f.taken {
			if crosses(thin, b.Grow(0.2)) {
				return false
			}
		}
	}
	return true
}
