package document

import (
	"forel/geometry"
	"forel/render"
	"forel/render/typeset"
)

// Sample is something that is drawn in a key, and what it means.
type Sample struct {
	Draw func(box geometry.Box)
	Text string
}

// Key sets samples of a size with their words, as many beside each other as have room, from
// the top of a box, and returns where they end.
func Key(on render.Surface, box geometry.Box, wide, tall Length, samples []Sample) Length {
	const size = render.NoteSize
	const gap, apart Length = 2, 6 // to the words, and to the next sample
	row := max(typeset.LineHeight(size), tall+2)
	x, y := box.Min.X, box.Min.Y+row/2
	for _, s := range samples {
		w := wide + gap + typeset.Width(s.Text, size, false)
		if x > box.Min.X && x+w > box.Max.X {
			x, y = box.Min.X, y+row
		}
		s.Draw(geometry.Bx(x, y-tall/2, x+wide, y+tall/2))
		Write(on, geometry.Pt(x+wide+gap, y+typeset.Ascent(size)/2), s.Text, size, false)
		x += w + apart
	}
	return y + row/2
}
