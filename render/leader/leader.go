// Package leader sets labels in a column beside a drawing, each with a line to
// the place it speaks of; no two lines cross.
package leader

import (
	"cmp"
	"slices"

	"forel/geometry"
	"forel/render"
	"forel/render/typeset"
)

// Label is words beside a drawing with a line to the place they speak of.
type Label struct {
	Name   string   // bold
	Notes  []string // below it
	Size   render.Points
	Anchor geometry.Point
	top    Length // where Arrange put it
}

// Length is a distance in millimetres.
type Length = geometry.Length

const noteSize = render.NoteSize

// line is how a leader looks.
var line = render.Stroke{Width: 0.15, Color: render.Black}

// Height returns the room a label takes.
func (l Label) Height() Length {
	return typeset.LineHeight(l.Size) + Length(len(l.Notes))*typeset.LineHeight(noteSize)
}

// Port returns where the line meets the words.
func (l Label) Port(x Length) geometry.Point {
	return geometry.Pt(x, l.top+typeset.LineHeight(l.Size)-typeset.Ascent(l.Size)/2)
}

// Column is a strip beside a drawing in which labels stand. Its edge is the
// side toward the drawing.
type Column struct {
	Edge        Length
	Leftward    bool // words end at the edge and lines come from the right
	Top, Bottom Length
	Gap         Length // between labels
}

// leastGap is what labels that have little room are kept apart by.
const leastGap Length = 0.5

// Fit returns what has room in a column of labels in the order of their weight: where
// there is too little they stand closer, then the last go without their notes,
// then the last are left out.
func (c Column) Fit(labels []Label) (Column, []Label) {
	out := slices.Clone(labels)
	over := func() Length {
		tall := -c.Gap
		for _, l := range out {
			tall += l.Height() + c.Gap
		}
		return tall - (c.Bottom - c.Top)
	}
	if o := over(); o > 0 && len(out) > 1 {
		c.Gap = max(min(c.Gap, leastGap), c.Gap-o/Length(len(out)-1))
	}
	for i := len(out) - 1; i >= 0 && over() > hair; i-- {
		out[i].Notes = nil
	}
	for len(out) > 0 && over() > hair {
		out = out[:len(out)-1]
	}
	return c, out
}

// hair is less than any length that matters.
const hair Length = 1e-6

// Arrange puts labels into a column as near as it can to the places they speak
// of, so that no two lines cross: two that do change places, which makes both
// together shorter, until none is left.
func (c Column) Arrange(labels []Label) []Label {
	out := slices.Clone(labels)
	slices.SortStableFunc(out, func(a, b Label) int { return cmp.Compare(a.Anchor.Y, b.Anchor.Y) })
	c.spread(out)
	for range len(out) * len(out) * len(out) {
		i, k, ok := c.crossing(out)
		if !ok {
			break
		}
		out[i], out[k] = out[k], out[i]
		c.spread(out)
	}
	return out
}

// spread sets each label's top in their order: near its anchor, but below the
// one before it and within the column.
func (c Column) spread(labels []Label) {
	y := c.Top
	for i := range labels {
		l := &labels[i]
		l.top = max(y, l.Anchor.Y-l.Height()/2)
		y = l.top + l.Height() + c.Gap
	}
	y = c.Bottom
	for i := len(labels) - 1; i >= 0; i-- {
		l := &labels[i]
		l.top = min(l.top, y-l.Height())
		y = l.top - c.Gap
	}
}

// crossing finds two labels whose lines cross.
func (c Column) crossing(labels []Label) (int, int, bool) {
	for i, a := range labels {
		for k := i + 1; k < len(labels); k++ {
			b := labels[k]
			if Cross(a.Anchor, a.Port(c.Edge), b.Anchor, b.Port(c.Edge)) {
				return i, k, true
			}
		}
	}
	return 0, 0, false
}

// Cross tells whether two lines cross between their ends.
func Cross(a, b, c, d geometry.Point) bool {
	turn := func(p, q, r geometry.Point) Length {
		return (q.X-p.X)*(r.Y-p.Y) - (q.Y-p.Y)*(r.X-p.X)
	}
	return turn(a, b, c)*turn(a, b, d) < 0 && turn(c, d, a)*turn(c, d, b) < 0
}

// Texts returns the words of a label in a column.
func (c Column) Texts(l Label) []render.Text {
	align, x := render.Start, c.Edge+0.8
	if c.Leftward {
		align, x = render.End, c.Edge-0.8
	}
	y := l.top + typeset.LineHeight(l.Size)
	out := []render.Text{{At: geometry.Pt(x, y), String: l.Name, Size: l.Size, Bold: true, Align: align, Color: render.Black}}
	for _, n := range l.Notes {
		y += typeset.LineHeight(noteSize)
		out = append(out, render.Text{At: geometry.Pt(x, y), String: n, Size: noteSize, Align: align, Color: render.Black})
	}
	return out
}

// Draw draws labels that were arranged, with their lines.
func (c Column) Draw(s render.Surface, labels []Label) {
	for _, l := range labels {
		s.Stroke(geometry.Line(l.Anchor, l.Port(c.Edge)), line)
		s.Fill(geometry.Circle(l.Anchor, 0.55), render.Black)
	}
	for _, l := range labels {
		for _, t := range c.Texts(l) {
			s.Text(t)
		}
	}
}

// TwoSides shares labels between a column on the left and one on the right, by
// where their places lie, so that no line of one side crosses one of the other.
// Each side has them in the order they were in.
func TwoSides(labels []Label) (left, right []Label) {
	sorted := make([]int, len(labels))
	for i := range sorted {
		sorted[i] = i
	}
	slices.SortStableFunc(sorted, func(a, b int) int { return cmp.Compare(labels[a].Anchor.X, labels[b].Anchor.X) })
	rightward := make([]bool, len(labels))
	for _, i := range sorted[len(sorted)/2:] {
		rightward[i] = true
	}
	for i, l := range labels {
		if rightward[i] {
			right = append(right, l)
		} else {
			left = append(left, l)
		}
	}
	return left, right
}
