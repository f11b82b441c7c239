package shape

import (
	"slices"

	"forel/geometry"
)

// Taken is what words keep off.
type Taken struct {
	Boxes []geometry.Box
	Lines []geometry.Segment
}

// Free tells whether a box is so far from all boxes, and so far from all lines.
func (t Taken) Free(b geometry.Box, boxes, lines Length) bool {
	apart, wide := b.Grow(boxes), b.Grow(lines)
	return !slices.ContainsFunc(t.Boxes, apart.Overlaps) &&
		!slices.ContainsFunc(t.Lines, func(l geometry.Segment) bool { return wide.Crossed(l.From, l.To) })
}

// Near returns what is so near to any box in a room that it is not Free.
func (t Taken) Near(room geometry.Box, boxes, lines Length) (out Taken) {
	apart, wide := room.Grow(boxes), room.Grow(lines)
	for _, b := range t.Boxes {
		if apart.Overlaps(b) {
			out.Boxes = append(out.Boxes, b)
		}
	}
	for _, l := range t.Lines {
		if wide.Crossed(l.From, l.To) {
			out.Lines = append(out.Lines, l)
		}
	}
	return out
}
