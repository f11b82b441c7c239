package document

import (
	"math"
	"strings"

	"forel/geometry"
	"forel/render"
	"forel/render/typeset"
)

// Write sets one line from its start.
func Write(s render.Surface, at geometry.Point, text string, size render.Points, bold bool) {
	s.Text(render.Text{At: at, String: text, Size: size, Bold: bold, Color: render.Black})
}

// WriteEnd sets one line so that it ends at a place.
func WriteEnd(s render.Surface, at geometry.Point, text string, size render.Points, bold bool) {
	s.Text(render.Text{At: at, String: text, Size: size, Bold: bold, Align: render.End, Color: render.Black})
}

// Leader sets dots on a line from the end of a word to the start of another, which the
// eye and a reader of the file follow from a label to its value.
func Leader(s render.Surface, from, to, y Length, size render.Points) {
	const apart = 0.4 // between the words and the dots
	step := typeset.Width(" .", size, false)
	first := Length(math.Ceil(float64((from+apart)/step))) * step // so that dots of all lines stand below each other
	if n := int((to - apart - first) / step); n > 0 {
		s.Text(render.Text{At: geometry.Pt(first, y), String: strings.Repeat(" .", n), Size: size, Color: render.Grey})
	}
}

// Paragraph sets text below y within a box's sides and returns where it ends.
func Paragraph(s render.Surface, box geometry.Box, y Length, text string, size render.Points, bold bool) Length {
	for _, l := range typeset.Break(text, size, bold, box.Width()) {
		y += typeset.LineHeight(size)
		Write(s, geometry.Pt(box.Min.X, y), l, size, bold)
	}
	return y + typeset.Descent(size)
}

// ParagraphHeight returns how tall a paragraph is.
func ParagraphHeight(text string, size render.Points, bold bool, width Length) Length {
	return Length(len(typeset.Break(text, size, bold, width)))*typeset.LineHeight(size) + typeset.Descent(size)
}

// Rule draws a thin line that parts one thing from another.
func Rule(s render.Surface, from, to geometry.Point) {
	s.Stroke(geometry.Line(from, to), render.Stroke{Width: 0.15, Color: render.Grey})
}

// Tick draws a box to tick, its lower left corner at a place.
func Tick(s render.Surface, at geometry.Point, side Length) {
	s.Stroke(geometry.Rectangle(geometry.Bx(at.X, at.Y-side, at.X+side, at.Y)), render.Stroke{Width: 0.25, Color: render.Black})
}
