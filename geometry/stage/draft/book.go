package draft

import (
	"forel/geometry/job"
	"forel/geometry/stage"
)

// Length is a distance in millimetres.
type Length = job.Length

// Book returns the faces of a book as a block with covers: from X left to right,
// Y tail to head, Z fore-edge to spine, from a corner. Its spine is named as
// the object is, with ", spine" after it.
func Book(object string, at stage.Vec, thick, height, width Length) []stage.Face {
	cover := min(2.5, thick/6)
	square := min(2, height/20)
	x, y, z := at.X, at.Y, at.Z
	out := stage.Box(object, stage.Vec{X: x, Y: y, Z: z}, stage.Vec{X: x + cover, Y: y + height, Z: z + width}, stage.Cover)
	out = append(out, stage.Box(object, stage.Vec{X: x + thick - cover, Y: y, Z: z}, stage.Vec{X: x + thick, Y: y + height, Z: z + width}, stage.Cover)...)
	back := stage.Box(object, stage.Vec{X: x + cover, Y: y, Z: z + width - cover}, stage.Vec{X: x + thick - cover, Y: y + height, Z: z + width}, stage.Cover)
	for i := range back {
		back[i].Name = object + ", spine"
	}
	out = append(out, back...)
	pages := stage.Box(object, stage.Vec{X: x + cover, Y: y + square, Z: z + square}, stage.Vec{X: x + thick - cover, Y: y + height - square, Z: z + width - cover}, stage.Pages)
	for i := range pages {
		pages[i].Grain = stage.Vec{Z: 1}
		if n := pages[i].Points[0].Z; n == pages[i].Points[1].Z && n == pages[i].Points[2].Z {
			pages[i].Grain = stage.Vec{Y: 1} // the fore-edge
		}
	}
	return append(out, pages...)
}

// LyingBook returns the faces of a book that lies on its back cover, spine to the left and
// head away, from its lower left corner.
func LyingBook(object string, at stage.Vec, size job.Size) []stage.Face {
	lying := func(v stage.Vec) stage.Vec { return stage.Vec{X: size.Width - v.Z, Y: v.Y, Z: v.X}.Add(at) }
	return stage.Placed(Book(object, stage.Vec{}, size.Thickness, size.Height, size.Width), lying)
}

// MeasuredBook returns the picture of a book with what is measured of it.
func MeasuredBook(s job.Size) stage.Picture {
	here := func(l Length) stage.Say { return stage.Words("here %s", l) }
	return Measures(s.Height, s.Width, s.Thickness, [3]stage.Say{here(s.Height), here(s.Width), here(s.Thickness)})
}

// Measures returns the picture of a book with what is measured of it: its
// height, width and thickness, and words for each.
func Measures(h, w, t Length, words [3]stage.Say) stage.Picture {
	off := 0.05 * max(h, w, t)
	x, y, z := -off, -off, w
	return stage.Picture{
		Faces: Book("book", stage.Vec{}, t, h, w), View: stage.View{Toward: stage.Vec{Z: 1}, Up: stage.Vec{Y: 1}, Yaw: 38, Pitch: 26}, Fresh: []string{"book"},
		Arrows: []stage.Arrow{
			{Path: []stage.Vec{{X: x, Y: 0, Z: z}, {X: x, Y: h, Z: z}}, Twin: true},
			{Path: []stage.Vec{{X: t, Y: y, Z: 0}, {X: t, Y: y, Z: w}}, Twin: true},
			{Path: []stage.Vec{{X: 0, Y: y, Z: z}, {X: t, Y: y, Z: z}}, Twin: true},
		},
		Notes: []stage.Note{
			{Name: stage.Words("H  height"), More: words[0], At: stage.Vec{X: x, Y: h * 0.55, Z: z}},
			{Name: stage.Words("W  width"), More: words[1], At: stage.Vec{X: t, Y: y, Z: w / 2}},
			{Name: stage.Words("T  thickness"), More: words[2], At: stage.Vec{X: t / 2, Y: y, Z: z}},
			{Name: stage.Words("spine"), Spot: "book, spine"}, {Name: stage.Words("head"), At: stage.Vec{X: t / 2, Y: h, Z: w * 0.3}},
		},
	}
}
