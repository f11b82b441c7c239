package slipcase

import (
	"fmt"
	"slices"

	"forel/geometry"
)

// Marks where lines of a pattern fall (common practice, no source).
const (
	markLength Length = 5 // of a mark, from the edge of the piece inward
	markApart  Length = 8 // marks no nearer than this
	markOff    Length = 1 // none this near the end of a piece: the edge itself shows the line
)

// patternMarks returns short marks at the edges of a piece, on both ends of each
// line of its pattern: a template hides the pattern, but at its edges marks
// and lines meet. Where lines are close only some are marked, a whole number of
// repeats apart.
func patternMarks(p geometry.Piece) []geometry.Guide {
	r := p.Pattern
	box := p.Outline.Bounds().Grow(-markOff)
	name := func(step Length) (string, Length) {
		n := 1
		for step > 0 && Length(n)*step < markApart {
			n++
		}
		if n == 1 {
			return "line of the pattern", step
		}
		return fmt.Sprintf("line of the pattern, one in %d", n), step * Length(n)
	}
	var out []geometry.Guide
	mark := func(name string, at func(Length) geometry.Point, spans [][2]Length) {
		for _, s := range spans {
			if s[1]-s[0] <= 2*markLength+1 {
				out = append(out, geometry.Guide{Name: name, Path: geometry.Line(at(s[0]), at(s[1]))})
				continue
			}
			out = append(out,
				geometry.Guide{Name: name, Path: geometry.Line(at(s[0]), at(s[0]+markLength))},
				geometry.Guide{Name: name, Path: geometry.Line(at(s[1]-markLength), at(s[1]))})
		}
	}
	around := p.Outline.Flatten(0.01)
	var upright, level string
	upright, r.Across = name(r.Across)
	level, r.Along = name(r.Along)
	xs, ys := r.Lines(box)
	for _, x := range xs {
		mark(upright, func(y Length) geometry.Point { return geometry.Pt(x, y) }, spans(around, x))
	}
	turned := make([]geometry.Point, len(around))
	for i, q := range around {
		turned[i] = geometry.Pt(q.Y, q.X)
	}
	for _, y := range ys {
		mark(level, func(x Length) geometry.Point { return geometry.Pt(x, y) }, spans(turned, y))
	}
	return out
}

// spans returns the stretches of the upright line at x that lie within an
// outline; none where it only touches or runs along an edge.
func spans(around []geometry.Point, x Length) [][2]Length {
	var at []Length
	for i, a := range around {
		b := around[(i+1)%len(around)]
		if (a.X > x) != (b.X > x) {
			at = append(at, a.Y+(b.Y-a.Y)*(x-a.X)/(b.X-a.X))
		}
	}
	slices.Sort(at)
	var out [][2]Length
	for i := 0; i+1 < len(at); i += 2 {
		if at[i+1]-at[i] > 1 {
			out = append(out, [2]Length{at[i], at[i+1]})
		}
	}
	return out
}
