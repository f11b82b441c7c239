package proof

import (
	"cmp"
	"slices"

	"forel/geometry"
	"forel/render"
	"forel/render/typeset"
)

// label is words beside a drawing with a line to the place they speak of.
type label struct {
	name   string   // bold
	notes  []string // below it
	size   render.Points
	anchor geometry.Point
	top    Length // where arrange put it
}

const noteSize = render.NoteSize

func (l label) height() Length {
	return typeset.LineHeight(l.size) + Length(len(l.notes))*typeset.LineHeight(noteSize)
}

// port gives where the line meets the words.
func (l label) port(x Length) geometry.Point {
	return geometry.Pt(x, l.top+typeset.LineHeight(l.size)-typeset.Ascent(l.size)/2)
}

// column is a strip beside a drawing in which labels stand. Its edge is the
// side toward the drawing.
type column struct {
	edge        Length
	leftward    bool // words end at the edge and lines come from the right
	top, bottom Length
	gap         Length // between labels
}

// arrange puts labels into a column as near as it can to the places they speak
// of, so that no two lines cross: two that do change places, which makes both
// together shorter, until none is left.
func (c column) arrange(labels []label) []label {
	out := slices.Clone(labels)
	slices.SortStableFunc(out, func(a, b label) int { return cmp.Compare(a.anchor.Y, b.anchor.Y) })
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
func (c column) spread(labels []label) {
	y := c.top
	for i := range labels {
		l := &labels[i]
		l.top = max(y, l.anchor.Y-l.height()/2)
		y = l.top + l.height() + c.gap
	}
	y = c.bottom
	for i := len(labels) - 1; i >= 0; i-- {
		l := &labels[i]
		l.top = min(l.top, y-l.height())
		y = l.top - c.gap
	}
}

// crossing finds two labels whose lines cross.
func (c column) crossing(labels []label) (int, int, bool) {
	for i, a := range labels {
		for k := i + 1; k < len(labels); k++ {
			b := labels[k]
			if linesCross(a.anchor, a.port(c.edge), b.anchor, b.port(c.edge)) {
				return i, k, true
			}
		}
	}
	return 0, 0, false
}

// linesCross tells whether two lines cross between their ends.
func linesCross(a, b, c, d geometry.Point) bool {
	turn := func(p, q, r geometry.Point) Length {
		return (q.X-p.X)*(r.Y-p.Y) - (q.Y-p.Y)*(r.X-p.X)
	}
	return turn(a, b, c)*turn(a, b, d) < 0 && turn(c, d, a)*turn(c, d, b) < 0
}

// texts gives the words of a label in a column.
func (c column) texts(l label) []render.Text {
	align, x := render.Start, c.edge+0.8
	if c.leftward {
		align, x = render.End, c.edge-0.8
	}
	y := l.top + typeset.LineHeight(l.size)
	out := []render.Text{{At: geometry.Pt(x, y), String: l.name, Size: l.size, Bold: true, Align: align, Color: render.Black}}
	for _, n := range l.notes {
		y += typeset.LineHeight(noteSize)
		out = append(out, render.Text{At: geometry.Pt(x, y), String: n, Size: noteSize, Align: align, Color: render.Black})
	}
	return out
}

// draw draws labels that were arranged, with their lines.
func (c column) draw(s render.Surface, labels []label) {
	for _, l := range labels {
		s.Stroke(geometry.Line(l.anchor, l.port(c.edge)), leaderLine)
		s.Fill(geometry.Circle(l.anchor, 0.55), render.Black)
	}
	for _, l := range labels {
		for _, t := range c.texts(l) {
			s.Text(t)
		}
	}
}

// twoSides shares labels between a column on the left and one on the right, by
// where their places lie, so that no line of one side crosses one of the other.
func twoSides(labels []label) (left, right []label) {
	sorted := slices.Clone(labels)
	slices.SortStableFunc(sorted, func(a, b label) int { return cmp.Compare(a.anchor.X, b.anchor.X) })
	n := len(sorted) / 2
	return sorted[:n], sorted[n:]
}
