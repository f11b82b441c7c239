package fit

import (
	"fmt"
	"math"
	"strings"

	"forel/geometry"
	"forel/geometry/fit"
	"forel/render"
	"forel/render/document"
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
				left = append(left, layer{number: n})
			}
			if l.Counts < -1.5 {
				for range each {
					right = append([]layer{{number: n}}, right...)
				}
			}
		}
	}
	layers := Length(len(left) + len(right))
	// Many layers leave half of the width to the books.
	each := min(layerWide, (wide-gapWide)/2/max(1, layers))
	rest := wide - gapWide - each*layers
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
func (d *doc) chain(box geometry.Box, g fit.Gap) Length {
	u := d.Round.Unit
	box.Min.Y = d.paragraph(box, box.Min.Y, "The chain of "+Name(g), render.BodySize, true) + 1.2
	y := d.stack(box, g, 7, render.NoteSize, func(i int) string {
		l := g.Chain[i]
		if l.Counts > 0 {
			return fmt.Sprintf("%d. %s %s", i+1, l.Name, geometry.Fine(l.Length, u))
		}
		return fmt.Sprintf("%d. %s", i+1, geometry.Fine(l.Length, u))
	})
	d.words(box.Max.X, y+3.2, "not to scale, nor in order; framed: the clearance that is left", render.SmallSize, render.End, false)
	rows := chainRows(g, u, "length", u.String(), func(i int) string { return fmt.Sprintf("%d. %s", i+1, g.Chain[i].Name) })
	return document.Below(geometry.Bx(box.Min.X, y+4.5, box.Min.X+min(box.Width(), 130), box.Max.Y), d.Table("", tableOf(rows))...)
}

// stack draws what gives room and below it what takes it, each so high, and returns where
// it ends. told is what is said of a link that is not of a layer's width; nil: its number.
func (d *doc) stack(box geometry.Box, g fit.Gap, high Length, size render.Points, told func(link int) string) Length {
	if told == nil {
		told = func(i int) string { return fmt.Sprint(i + 1) }
	}
	cell := func(b geometry.Box, text string, bold bool) {
		at := b.Center().Y + typeset.Ascent(size)/2
		d.words(b.Center().X, at, typeset.Fit(text, size, bold, d.Writable(b.Width())), size, render.Middle, bold)
	}
	given := geometry.Bx(box.Min.X, box.Min.Y, box.Max.X, box.Min.Y+high)
	d.Fill(geometry.Rectangle(given), pale)
	d.box(given, edge)
	var gives []string
	for i, l := range g.Chain {
		if l.Counts > 0 {
			gives = append(gives, told(i))
		}
	}
	cell(given, strings.Join(gives, " + "), false)
	x, y := box.Min.X, given.Max.Y+1
	for _, l := range section(g, box.Width()) {
		b := geometry.Bx(x, y, x+l.wide, y+high)
		x += l.wide
		if l.number == 0 {
			frame := edge
			frame.Width = 0.7
			d.Fill(geometry.Rectangle(b), white)
			d.box(b.Grow(-0.35), frame)
			cell(b, geometry.Fine(g.Left(), d.Round.Unit), true)
			continue
		}
		d.box(b, edge)
		text := l.name()
		if full := told(max(0, l.number-1)); l.book && typeset.Width(full, size, false) <= d.Writable(b.Width()) {
			text = full
		}
		cell(b, text, false)
	}
	return y + high
}
