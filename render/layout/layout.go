// Package layout sets words on a page: paragraphs, numbered steps, rules.
package layout

import (
	"fmt"

	"forel/geometry"
	"forel/render"
	"forel/render/typeset"
)

// Length is a distance in millimetres.
type Length = geometry.Length

// gap is the white below a step.
const gap Length = 0.8

// Write sets one line from its start.
func Write(s render.Surface, at geometry.Point, text string, size render.Points, bold bool) {
	s.Text(render.Text{At: at, String: text, Size: size, Bold: bold, Color: render.Black})
}

// Paragraph sets text below y within a box's sides and gives where it ends.
func Paragraph(s render.Surface, box geometry.Box, y Length, text string, size render.Points, bold bool) Length {
	for _, l := range typeset.Break(text, size, bold, box.Width()) {
		y += typeset.LineHeight(size)
		Write(s, geometry.Pt(box.Min.X, y), l, size, bold)
	}
	return y + typeset.Descent(size)
}

// ParagraphHeight gives how tall a paragraph is.
func ParagraphHeight(text string, size render.Points, bold bool, width Length) Length {
	return Length(len(typeset.Break(text, size, bold, width)))*typeset.LineHeight(size) + typeset.Descent(size)
}

// ParagraphUp sets text so that it ends at the bottom of a box, and gives where
// it starts.
func ParagraphUp(s render.Surface, box geometry.Box, text string, size render.Points) Length {
	top := box.Max.Y - ParagraphHeight(text, size, false, box.Width())
	Paragraph(s, box, top, text, size, false)
	return top
}

// Steps sets numbered steps under a heading, from the top of a box, and gives
// where they end.
func Steps(s render.Surface, box geometry.Box, heading string, steps []string) Length {
	return StepsFrom(s, box, heading, 1, steps)
}

// StepsFrom is Steps whose first has another number.
func StepsFrom(s render.Surface, box geometry.Box, heading string, first int, steps []string) Length {
	marks := make([]string, len(steps))
	for i := range steps {
		marks[i] = fmt.Sprintf("%d.", first+i)
	}
	return list(s, box, heading, marks, steps)
}

// Points sets points of a list under a heading, like Steps.
func Points(s render.Surface, box geometry.Box, heading string, points []string) Length {
	marks := make([]string, len(points))
	for i := range points {
		marks[i] = "•"
	}
	return list(s, box, heading, marks, points)
}

// indent is how far a step stands in.
const indent Length = 5

func list(s render.Surface, box geometry.Box, heading string, marks, texts []string) Length {
	y := box.Min.Y
	if heading != "" {
		y = Paragraph(s, box, y, heading, render.HeadSize, true) + gap
	}
	for i, t := range texts {
		Write(s, geometry.Pt(box.Min.X, y+typeset.LineHeight(render.BodySize)), marks[i], render.BodySize, false)
		y = Paragraph(s, geometry.Bx(box.Min.X+indent, y, box.Max.X, box.Max.Y), y, t, render.BodySize, false) + gap
	}
	return y
}

// StepsHeight gives how tall Steps or Points are.
func StepsHeight(heading string, texts []string, width Length) Length {
	var h Length
	if heading != "" {
		h = ParagraphHeight(heading, render.HeadSize, true, width) + gap
	}
	for _, t := range texts {
		h += ParagraphHeight(t, render.BodySize, false, width-indent) + gap
	}
	return h
}

// Rule draws a thin line that parts one thing from another.
func Rule(s render.Surface, from, to geometry.Point) {
	s.Stroke(geometry.Line(from, to), render.Stroke{Width: 0.15, Color: render.Grey})
}

// Title sets the head of a document at the top of a box: its name, shortened to
// fit, what it is, and a rule. It gives where it ends.
func Title(s render.Surface, box geometry.Box, name, about string) Length {
	y := box.Min.Y + typeset.Ascent(render.TitleSize)
	Write(s, geometry.Pt(box.Min.X, y), typeset.Fit(name, render.TitleSize, true, box.Width()), render.TitleSize, true)
	y = Paragraph(s, box, y+1.5, about, render.HeadSize, false)
	y += 2
	Rule(s, geometry.Pt(box.Min.X, y), geometry.Pt(box.Max.X, y))
	return y
}
