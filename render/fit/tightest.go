package fit

import (
	"fmt"
	"strings"

	"forel/geometry"
	"forel/geometry/fit"
	"forel/render"
	"forel/render/svg"
	"forel/render/typeset"
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
	p := pen{c, o}
	const high, in = 9, 0.4
	box := geometry.Bx(in, in, gapPictureWide-in, gapPictureTall)
	given := geometry.Bx(box.Min.X, box.Min.Y, box.Max.X, box.Min.Y+high)
	p.Fill(geometry.Rectangle(given), pale)
	var gives []string
	for i, l := range g.Chain {
		if l.Counts > 0 {
			gives = append(gives, fmt.Sprint(i+1))
		}
	}
	p.cell(given, strings.Join(gives, " + "), false)
	x := box.Min.X
	for _, l := range section(g, box.Width()) {
		b := geometry.Bx(x, given.Max.Y+1, x+l.wide, given.Max.Y+1+high)
		switch {
		case l.number == 0:
			p.Fill(geometry.Rectangle(b), white)
			p.hatchGap(b)
			p.cell(b, geometry.Fine(g.Left(), o.Round.Unit), true)
		default:
			p.cell(b, l.name(), false)
		}
		x += l.wide
	}
	c.End()
	return c.Bytes()
}

// cell frames words in a box.
func (p pen) cell(b geometry.Box, words string, bold bool) {
	if !bold {
		p.box(b, edge)
	}
	p.words(b.Center().X, b.Max.Y-3.2, typeset.Fit(words, render.BodySize, bold, b.Width()*spare), render.BodySize, render.Middle, bold)
}
