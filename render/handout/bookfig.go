package handout

import "forel/render/scene"

// volume gives the faces of a book as a block with covers: from X left to right,
// Y tail to head, Z fore-edge to spine, from a corner.
func (p palette) volume(object string, at scene.Vec, thick, height, width float64) []scene.Face {
	cover := min(2.5, thick/6)
	square := min(2, height/20)
	x, y, z := at.X, at.Y, at.Z
	box := func(a, b scene.Vec, l scene.Look) []scene.Face { return scene.Box(object, a, b, l) }
	out := box(scene.Vec{X: x, Y: y, Z: z}, scene.Vec{X: x + cover, Y: y + height, Z: z + width}, p.cover)
	out = append(out, box(scene.Vec{X: x + thick - cover, Y: y, Z: z}, scene.Vec{X: x + thick, Y: y + height, Z: z + width}, p.cover)...)
	back := box(scene.Vec{X: x + cover, Y: y, Z: z + width - cover}, scene.Vec{X: x + thick - cover, Y: y + height, Z: z + width}, p.cover)
	for i := range back {
		back[i].Name = object + ", spine"
	}
	out = append(out, back...)
	pages := box(scene.Vec{X: x + cover, Y: y + square, Z: z + square}, scene.Vec{X: x + thick - cover, Y: y + height - square, Z: z + width - cover}, p.pages)
	for i := range pages {
		pages[i].Grain = scene.Vec{Z: 1}
		if n := pages[i].Points[0].Z; n == pages[i].Points[1].Z && n == pages[i].Points[2].Z {
			pages[i].Grain = scene.Vec{Y: 1} // the fore-edge
		}
	}
	return append(out, pages...)
}
