package document

import (
	"fmt"

	"forel/geometry"
	"forel/render"
	"forel/render/typeset"
)

// Mark is what stands before each item of a list.
type Mark int

// The marks of lists.
const (
	Number Mark = iota
	Bullet
	ToTick // a box
)

// Indents of the items of lists, in the usual letters and in small ones, and the white below
// each usual one.
const (
	indent      Length = 6
	smallIndent Length = 4
	itemGap     Length = 0.8
	markGap     Length = 1.4 // so near to its text that readers of the file take both for one line
)

// Item sets the nth item of a list, from 0, with its mark, from the top of a box, in the size
// of the body or of notes, and returns where it ends.
func Item(s render.Surface, box geometry.Box, mark Mark, n int, text string, size render.Points) Length {
	in, gap := indent, itemGap
	if size < render.BodySize {
		in, gap = smallIndent, 0
	}
	base := box.Min.Y + typeset.LineHeight(size)
	switch mark {
	case ToTick:
		side := typeset.Ascent(size) * 1.15
		Tick(s, geometry.Pt(box.Min.X, base+0.3), side)
	case Bullet:
		WriteEnd(s, geometry.Pt(box.Min.X+in-markGap, base), "•", size, false)
	default:
		WriteEnd(s, geometry.Pt(box.Min.X+in-markGap, base), fmt.Sprintf("%d.", n+1), size, false)
	}
	box.Min.X += in
	return Paragraph(s, box, box.Min.Y, text, size, false) + gap
}

// Steps returns numbered steps under a heading, together where a page holds them.
func (d *Document) Steps(heading string, steps []string) []Block {
	return d.List(heading, Number, steps)
}

// Points is Steps with a bullet for a number.
func (d *Document) Points(heading string, points []string) []Block {
	return d.List(heading, Bullet, points)
}

// List returns a list under a heading, together where a page holds it.
func (d *Document) List(heading string, mark Mark, texts []string) []Block {
	head := d.Heading(heading)
	draw := head.Draw
	head.Draw = func(box geometry.Box) Length { return draw(box) + itemGap }
	out := []Block{head}
	for i, t := range texts {
		out = append(out, Block{Stays: i < len(texts)-1, Draw: func(box geometry.Box) Length { return Item(d, box, mark, i, t, render.BodySize) }})
	}
	return out
}

// SmallList returns a list in small letters under a heading, which may go on over the page.
func (d *Document) SmallList(heading string, mark Mark, texts []string) []Block {
	head := d.Paragraph(heading, render.BodySize, true).After(2.5)
	head.Stays = true
	out := []Block{head}
	for i, t := range texts {
		out = append(out, Block{Draw: func(box geometry.Box) Length { return Item(d, box, mark, i, t, render.NoteSize) }})
	}
	return out
}
