package templates

import (
	"cmp"
	"slices"
	"sync"

	"forel/geometry"
	"forel/render"
	"forel/render/shape"
	"forel/render/typeset"
)

// How far from its mark a name is looked for, and in what steps.
const (
	markSteps                 = 21 // each way
	markStep  geometry.Length = 0.75
	markFar                   = markSteps * markStep
)

// aboutMark is a grid of places about a mark, the nearest first.
var aboutMark = sync.OnceValue(func() (out []geometry.Point) {
	for i := -markSteps; i <= markSteps; i++ {
		for k := -markSteps; k <= markSteps; k++ {
			out = append(out, geometry.Pt(geometry.Length(i)*markStep, geometry.Length(k)*markStep))
		}
	}
	slices.SortStableFunc(out, func(a, b geometry.Point) int {
		return cmp.Compare(a.X*a.X+a.Y*a.Y, b.X*b.X+b.Y*b.Y)
	})
	return out
})

// markName sets a mark's name at the nearest place about the mark where it
// touches nothing, level or turned, on what stays of the sheet if it can; with
// less white about it rather than none. It stands nearer to its own mark than to
// any other of those given. Where there is no such place it is not set: what is
// written along the join still tells which sheets meet there.
func markName(name string, at geometry.Point, core, window geometry.Box, off shape.Taken, others []geometry.Point) (render.Text, bool) {
	off = off.Near(geometry.Around(at).Grow(markFar+10), 0, 0)
	up := (typeset.Ascent(render.SmallSize) - typeset.Descent(render.SmallSize)) / 2
	for _, white := range []geometry.Length{0.5, 0.15} {
		for _, within := range []geometry.Box{core, window} {
			for _, turned := range []bool{false, true} {
				for _, step := range aboutMark() {
					t := render.Text{String: name, Size: render.SmallSize, Bold: true, Color: render.Black, At: at.Add(step), Align: render.Middle, Turned: turned}
					if turned {
						t.At.X += up
					} else {
						t.At.Y += up
					}
					box := typeset.Box(t)
					mid := box.Center()
					if within.Contains(box) && window.Contains(box.Grow(white)) && off.Free(box, white/2, white) &&
						!slices.ContainsFunc(others, func(o geometry.Point) bool { return o.Distance(mid) <= at.Distance(mid)+1 }) {
						return t, true
					}
				}
			}
		}
	}
	return render.Text{}, false
}
