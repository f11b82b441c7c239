package gauge

import (
	"fmt"

	"forel/geometry"
	"forel/render"
	"forel/render/typeset"
)

// rule is a line graduated on both sides: millimetres above it or on its left,
// inches below it or on its right.
type rule struct {
	from         geometry.Point
	down         bool
	unit         geometry.Unit
	mm, inches   Length // how far each side goes
	toMM, toInch Length // how far it is measured
}

// The lines of a rule: not too fine for a poor print, nor so broad that their
// middle is hard to see.
var (
	lineStroke = render.Stroke{Width: 0.25, Color: render.Black}
	tickStroke = render.Stroke{Width: 0.22, Color: render.Black}
)

// The longest ticks: at the numbers, and where measuring starts and ends.
const (
	numbered Length = 4.5
	measured Length = 7
	pointed  Length = 9.2 // as measured, of a rule down the page, whose numbers lie along the ticks
)

// at returns the place so far along the rule and so far to the side of it, the
// millimetre side for positive.
func (r rule) at(along, side Length) geometry.Point {
	if r.down {
		return r.from.Add(geometry.Pt(-side, along))
	}
	return r.from.Add(geometry.Pt(along, -side))
}

// mark returns how long the ticks are that measuring starts and ends at.
func (r rule) mark() Length {
	if r.down {
		return pointed
	}
	return measured
}

func (r rule) draw(on render.Surface) {
	on.Stroke(geometry.Line(r.at(0, 0), r.at(max(r.mm, r.inches), 0)), lineStroke)
	r.side(on, +1, r.mm, r.toMM, 1, []int{10, 5}, "mm", func(n int) string { return fmt.Sprint(n) })
	r.side(on, -1, r.inches, r.toInch, geometry.Inch/8, []int{8, 4, 2}, "in", func(n int) string { return fmt.Sprint(n / 8) })
}

// side draws one side's ticks, a step apart: the longest every so many, the next
// every fewer. Numbers stand at the longest; where measuring ends they are bold.
func (r rule) side(on render.Surface, way, length, to, step Length, every []int, unit string, number func(int) string) {
	for n := 0; ; n++ {
		along := step * Length(n)
		if along > length+1e-6 {
			break
		}
		tick := Length(1.6)
		for i, e := range every {
			if n%e == 0 {
				tick = numbered - 1.2*Length(i)
				break
			}
		}
		end := n == 0 || along.Near(to)
		if end {
			tick = r.mark()
		}
		on.Stroke(geometry.Line(r.at(along, 0), r.at(along, way*tick)), tickStroke)
		if n%every[0] == 0 {
			text := number(n)
			if n == 0 {
				text = unit
			}
			r.number(on, text, along, way, length, end)
		}
	}
	if to > 0 {
		for _, e := range []struct{ at, toward Length }{{0, 1}, {to, -1}} { // arrow heads, inward
			on.Fill(geometry.Polygon(r.at(e.at, way*r.mark()), r.at(e.at+e.toward*2.2, way*(r.mark()-0.9)), r.at(e.at, way*(r.mark()-1.8))), render.Black)
		}
	}
}

// number sets a number beside its tick. At the two ends of measuring the tick is
// longer than the number is far, and the number stands within.
func (r rule) number(on render.Surface, text string, along, way, length Length, end bool) {
	size := render.NoteSize
	up, wide := typeset.Ascent(size), typeset.Width(text, size, end)
	t := render.Text{String: text, Size: size, Bold: end, Color: render.Black}
	const gap = 0.6
	if r.down {
		// Numbers stand level at the ends of their ticks.
		t.At = r.at(along, way*(numbered+gap))
		t.At.Y += up / 2
		if t.Align = render.End; way < 0 {
			t.Align = render.Start
		}
		if end { // below the first mark, above the last, short of the arrow
			t.At = r.at(along, way*2.6).Add(geometry.Pt(0, up+gap))
			if along > 0 {
				t.At.Y = r.at(along, 0).Y - gap
			}
		}
	} else {
		t.At = r.at(along, way*(numbered+gap))
		if way < 0 {
			t.At.Y += up
		}
		t.Align = render.Middle
		if end { // inward of the mark
			t.Align, t.At.X = render.Start, t.At.X+gap+1.8
			if along > 0 {
				t.Align, t.At.X = render.End, t.At.X-2*(gap+1.8)
			}
		} else if over := t.At.X + wide/2 - r.at(length, 0).X; over > 0 {
			t.Align, t.At.X = render.End, r.at(length, 0).X
		}
	}
	on.Text(t)
}
