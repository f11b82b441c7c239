package proof

import (
	"forel/geometry"
	"forel/geometry/foldup"
	"forel/geometry/polygon"
	"forel/render"
	"forel/render/leader"
	"forel/render/shape"
)

// What the pictures are made of.
type (
	area   = polygon.Area
	taken  = shape.Taken
	hatch  = shape.Hatch
	label  = leader.Label
	column = leader.Column
)

const (
	sliver   = shape.Sliver
	noteSize = render.NoteSize
)

// meet and without leave out what is no broader than rounding; what can't be
// worked out is not drawn.
func meet(a, b polygon.Shape) polygon.Shape {
	s, _ := polygon.Meet(a, b)
	return s.Broader(sliver)
}

func without(a, b polygon.Shape) polygon.Shape {
	s, _ := polygon.Without(a, b)
	return s.Broader(sliver)
}

// shade draws the hatching of a look over an area, kept off some boxes.
func (l look) shade(s render.Surface, a area, keep []geometry.Box) {
	for _, h := range l.hatch {
		for _, line := range h.Lines(a, keep) {
			s.Stroke(line.Path, line.Stroke)
		}
	}
}

// holeOf returns the outline of the thumb hole, as a part of a side, nil where
// there is none.
func holeOf(c foldup.Carcass) []geometry.Point {
	if len(c.Side) <= 4 {
		return nil
	}
	for _, a := range without(polygon.Box(geometry.Bx(0, 0, c.Depth, c.Height)), polygon.Of(c.Side)) {
		return a.Rings[0]
	}
	return nil
}

// faceShape returns the outline of a face in its own coordinates: the whole of
// its extent but for a thumb hole.
func faceShape(c foldup.Carcass, hole []geometry.Point, f foldup.FaceReport) polygon.Shape {
	whole := polygon.Box(f.Extent)
	if hole == nil {
		return whole
	}
	switch f.Face {
	case geometry.LeftOutside, geometry.RightOutside, geometry.LeftInside, geometry.RightInside:
		return without(whole, polygon.Of(hole))
	case geometry.LeftMouth, geometry.RightMouth:
		gap := f.Extent
		gap.Min.Y, gap.Max.Y = gap.Max.Y, gap.Min.Y
		for _, p := range hole {
			if p.X.Near(c.Depth) {
				gap.Min.Y, gap.Max.Y = min(gap.Min.Y, p.Y), max(gap.Max.Y, p.Y)
			}
		}
		return without(whole, polygon.Box(gap))
	}
	return whole
}
