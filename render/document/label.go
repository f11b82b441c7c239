package document

import (
	"forel/geometry"
	"forel/render"
)

// White of a label: round what is on it, and between labels.
const (
	labelInset Length = 3
	labelApart Length = 4
)

// Labels sets so many labels in two columns, a frame round each to cut along. draw draws the
// nth, from 0, from the top of the room within its frame, and returns where it ends.
func (d *Document) Labels(count int, draw func(n int, in geometry.Box) Length) {
	blocks := make([]Block, count)
	for i := range blocks {
		blocks[i] = Block{Above: labelApart, Draw: func(box geometry.Box) Length {
			y := draw(i, geometry.Bx(box.Min.X+labelInset, box.Min.Y+labelInset-1, box.Max.X-labelInset, box.Max.Y)) + labelInset - 1
			d.Stroke(geometry.Rectangle(geometry.Bx(box.Min.X, box.Min.Y, box.Max.X, y)), render.Stroke{Width: 0.25, Color: render.Black})
			return y
		}}
	}
	d.Flow(d.Columns(labelApart, geometry.Box{}), blocks...)
}
