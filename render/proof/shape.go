package proof

import (
	"forel/geometry"
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
	for _, h := range l.Hatch {
		h.Draw(s, a, keep)
	}
}
