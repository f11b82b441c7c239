package fit

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"forel/geometry"
	"forel/geometry/fit"
	"forel/render"
	"forel/render/typeset"
)

// layer is one length of a chain as it lies in a section through the case.
type layer struct {
	number int // of its row in the table; 0 for the clearance
	to     int // of the last row, where it stands for several; else 0
	book   bool
	wide   Length
}

// name is its number, or those of all that it stands for.
func (l layer) name() string {
	if l.to > 0 {
		return fmt.Sprintf("%d–%d", l.number, l.to)
	}
	return fmt.Sprint(l.number)
}

// How wide layers are drawn: not to scale, since cloth would not be seen.
const (
	layerWide Length = 7.5
	gapWide   Length = 20
	// numberWide is what a number of two digits takes.
	numberWide Length = 5
)

// section lays the links that take room side by side, as they lie across the
// case: what counts twice on both sides of the book, the clearance beside the
// book.
func section(g fit.Gap, wide Length) []layer {
	var left, middle, right []layer
	for i, l := range g.Chain {
		n := i + 1
		switch {
		case l.Counts > 0:
		case l.Book:
			middle = append(middle, layer{number: n, book: true})
		default:
			each := max(1, int(math.Round(-l.Counts/2)))
			for range each {
				left = append(left, layer{number: n, wide: layerWide})
			}
			if l.Counts < -1.5 {
				for range each {
					right = append([]layer{{number: n, wide: layerWide}}, right...)
				}
			}
		}
	}
	layers := append(slices.Clone(left), right...)
	// Many layers leave half of the width to the books.
	each := min(layerWide, (wide-gapWide)/2/Length(max(1, len(layers))))
	rest := wide - gapWide - each*Length(len(layers))
	left, right = layersOf(left, each), layersOf(right, each)
	for i := range middle {
		middle[i].wide = rest / Length(len(middle))
	}
	out := append(left, middle...)
	out = append(out, layer{wide: gapWide})
	return append(out, right...)
}

// layersOf returns layers of a width; where that is too little for their numbers, all of
// them as one.
func layersOf(layers []layer, wide Length) []layer {
	for i := range layers {
		layers[i].wide = wide
	}
	if wide >= numberWide || len(layers) < 2 {
		return layers
	}
	last := layers[len(layers)-1].number
	return []layer{{number: layers[0].number, to: last, wide: wide * Length(len(layers))}}
}

// chain draws a chain of dimensions as a labelled stack: what gives room above,
// what takes it below and the clearance that is left; then the lengths. It returns
// where it ends.
func (p pen) chain(box geometry.Box, g fit.Gap) Length {
	u := p.Round.Unit
	y := p.paragraph(box, box.Min.Y, "The chain of "+Name(g), render.BodySize, true) + 1.2
	const high = 7
	given := geometry.Bx(box.Min.X, y, box.Max.X, y+high)
	p.Fill(geometry.Rectangle(given), pale)
	p.box(given, edge)
	var gives []string
	for i, l := range g.Chain {
		if l.Counts > 0 {
			gives = append(gives, fmt.Sprintf("%d. %s %s", i+1, l.Name, geometry.Fine(l.Length, u)))
		}
	}
	p.words(given.Center().X, given.Max.Y-2.3, typeset.Fit(strings.Join(gives, " + "), render.NoteSize, false, given.Width()*spare), render.NoteSize, render.Middle, false)
	y += high + 1
	x := box.Min.X
	for _, l := range section(g, box.Width()) {
		b := geometry.Bx(x, y, x+l.wide, y+high)
		text := l.name()
		bold := false
		switch {
		case l.number == 0:
			text, bold = geometry.Fine(g.Left(), u), true
			p.hatchGap(b)
		case l.book:
			link := g.Chain[l.number-1]
			full := fmt.Sprintf("%d. %s", l.number, geometry.Fine(link.Length, u))
			p.box(b, edge)
			switch {
			case typeset.Width(full, render.NoteSize, false) <= (b.Width()-2*breakWide)*spare:
				text = full
				p.brk(b)
			case typeset.Width(full, render.NoteSize, false) <= b.Width()*spare:
				text = full
			}
		default:
			p.box(b, edge)
		}
		p.words(b.Center().X, b.Max.Y-2.3, typeset.Fit(text, render.NoteSize, bold, b.Width()), render.NoteSize, render.Middle, bold)
		x += l.wide
	}
	y += high
	p.words(box.Max.X, y+3.2, "not to scale, nor in order; framed: the clearance that is left", render.SmallSize, render.End, false)
	rows := [][]string{{"length", u.String(), "counts", "sum"}}
	sums := g.Sums()
	for i, l := range g.Chain {
		rows = append(rows, []string{fmt.Sprintf("%d. %s", i+1, l.Name), geometry.FineNumber(l.Length, u), counts(l.Counts), geometry.FineNumber(sums[i], u)})
	}
	return tableOf(rows).Draw(p, geometry.Bx(box.Min.X, y+4.5, box.Min.X+min(box.Width(), 130), box.Max.Y))
}

// hatchGap draws the clearance: a bold frame.
func (p pen) hatchGap(b geometry.Box) {
	s := edge
	s.Width = 0.7
	p.box(b.Grow(-0.35), s)
}

// breakWide is what the end of a length that is cut short takes.
const breakWide Length = 10

// brk draws a broken line near the end of a length that is drawn cut short.
func (p pen) brk(b geometry.Box) {
	x, q := b.Max.X-9, b.Height()/4
	for _, dx := range []Length{0, 1.4} {
		p.Stroke(geometry.Line(geometry.Pt(x+dx, b.Max.Y), geometry.Pt(x+dx+1.6, b.Max.Y-1.5*q), geometry.Pt(x+dx-0.6, b.Max.Y-2.5*q), geometry.Pt(x+dx+1, b.Min.Y)), rule)
	}
}
