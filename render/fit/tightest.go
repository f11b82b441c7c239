package fit

import (
	"fmt"

	"forel/geometry"
	"forel/geometry/fit"
	"forel/render"
	"forel/render/document"
	"forel/render/svg"
)

// The size of the picture of a gap, for a screen as narrow as a phone's.
const (
	gapPictureWide Length = 100
	gapPictureTall Length = 23
)

// Tightest draws the place most likely to be too tight: what gives room above, what takes
// it below, framed what is left. Numbers are those of its chain, from 1.
func Tightest(r fit.Report, o Options) []byte {
	g := r.Gaps[r.Worst.Gap]
	name := Name(g)
	c := svg.New(gapPictureWide, gapPictureTall, "The tightest place: "+name,
		fmt.Sprintf("What takes room in the %s lies side by side; %s is left. Not to scale, nor in order.", name, geometry.Fine(g.Left(), o.Round.Unit)))
	c.Begin(render.Legend)
	const in = 0.4
	d := &doc{&document.Document{Options: o}, r}
	d.AddPage(gapPictureWide, gapPictureTall)
	d.stack(geometry.Bx(in, in, gapPictureWide-in, gapPictureTall), g, 9, render.BodySize, nil)
	d.Play(c, geometry.Point{})
	c.End()
	return c.Bytes()
}
