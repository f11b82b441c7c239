package document

import (
	"forel/geometry"
	"forel/render"
	"forel/render/typeset"
)

// RulersTall is how high the rulers are.
const RulersTall Length = 11

// Rulers draws what a print is checked by, from their upper left corner: 100 mm with
// its marks upward, 4 in with its marks downward, to be measured on the print.
func Rulers(on render.Surface, at geometry.Point) {
	stroke := render.Stroke{Width: 0.25, Color: render.Black}
	for _, r := range []struct {
		down, length, step Length
		whole              int    // a longer mark every so many
		up                 Length // 1 or -1
		name               string
		nameDown           Length
	}{
		{5.5, 100, 5, 2, 1, "100 mm", -1},
		{6.9, 4 * geometry.Inch, geometry.Inch / 4, 4, -1, "4 in", 1 + typeset.Ascent(render.SmallSize)},
	} {
		from := at.Add(geometry.Pt(0, r.down))
		on.Stroke(geometry.Line(from, from.Add(geometry.Pt(r.length, 0))), stroke)
		for i := 0; ; i++ {
			x := r.step * Length(i)
			if x > r.length+1e-6 {
				break
			}
			mark := Length(1.3)
			switch {
			case i == 0 || x.Near(r.length):
				mark = 4
			case i%r.whole == 0:
				mark = 2.4
			}
			on.Stroke(geometry.Line(from.Add(geometry.Pt(x, 0)), from.Add(geometry.Pt(x, -r.up*mark))), stroke)
		}
		Write(on, from.Add(geometry.Pt(r.length+0.8, r.nameDown)), r.name, render.SmallSize, false)
	}
}
