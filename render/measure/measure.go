// Package measure draws the measuring sheet: how a book and its materials are measured, each
// with a picture, and beside it the blanks for what was measured.
package measure

import (
	"cmp"

	"forel/geometry"
	"forel/geometry/measuring"
	"forel/geometry/wording"
	"forel/render"
	"forel/render/document"
	"forel/render/figure"
	"forel/render/typeset"
)

// Length is a distance in millimetres.
type Length = geometry.Length

// Options say how a measuring sheet looks.
type Options struct {
	document.Options
	Both bool // blanks for both units
}

// Document draws the sheet for what is made, such as "a case of boards", under a job's title,
// which may be empty.
func Document(sections []measuring.Section, about, title string, o Options) *document.Document {
	d := &doc{Document: &document.Document{
		Options: o.Options, Title: "Measuring sheet", Running: wording.OneLine(title), TrueSize: true,
		Foot: "Measuring sheet: the pictures are not at true size.",
	}, both: o.Both}
	d.Frame = func(room geometry.Box) geometry.Box {
		room.Max.Y -= document.RulersTall + 1
		document.Rulers(d, geometry.Pt(room.Min.X, room.Max.Y+1))
		return room
	}
	step := "0.5 mm"
	if o.Round.Unit == geometry.IN {
		step = "1/64 in"
	}
	if o.Both {
		step = "0.5 mm or 1/64 in"
	}
	d.Add(d.Opening(cmp.Or(d.Running, d.Title), "What to measure for "+about))
	d.Say("Write each reading of the book down as you take it, to the nearest "+step+". Ring the largest of a row: that one counts, for the case must clear it. "+
		"Beside each row stands the line of the job file that takes it. The rulers at the foot tell whether your printer prints at true size.", render.BodySize, false, 1)
	for _, s := range sections {
		d.Add(d.section(s)...)
	}
	d.Say(sources, render.NoteSize, false, sectionGap)
	return d.Document
}

const sources = `Where this comes from: several readings, the largest kept, to the nearest 0.5 mm: G. Malkin, "Straightforward Slipcases" (2016). ` +
	"How hard to press, and how squares and calipers are held: common practice, no source."

// Drawing returns a picture of measuring as a drawing with its labels.
func Drawing(p measuring.Picture, o document.Options) []byte { return panel(p, o).SVG(p.Title) }

// panel returns a picture as it is drawn.
func panel(p measuring.Picture, o document.Options) figure.Panel {
	return figure.Of(p.Picture, figure.Looks(false), o.Round.Pretty)
}

// doc is the document being made.
type doc struct {
	*document.Document
	both bool
}

// Sizes of a section.
const (
	sectionGap  Length = 4
	rowGap      Length = 1.4
	beside      Length = 150 // so wide a page has words beside a picture, a narrower one above it
	wordsPart          = 0.34
	gutter      Length = 4
	pictureTall Length = 35
	tallPicture Length = 46 // of a book that stands
)

// section returns the blocks of a section: its words with its picture, then its rows.
func (d *doc) section(s measuring.Section) []document.Block {
	out := []document.Block{{Above: sectionGap, Stays: len(s.Blanks) > 0, Draw: func(box geometry.Box) Length { return d.words(s.Picture, box) }}}
	for i, b := range s.Blanks {
		k := document.Block{Above: rowGap, Draw: func(box geometry.Box) Length { return d.row(b, box) }}
		if i > 0 {
			again := d.Paragraph(s.Title+", continued", render.BodySize, true)
			k.Head = func(box geometry.Box) Length { return again.Draw(box) + 1 }
		}
		out = append(out, k)
	}
	return out
}

// words sets what a section says, with its picture.
func (d *doc) words(p measuring.Picture, box geometry.Box) Length {
	set := func(in geometry.Box) Length {
		y := document.Paragraph(d, in, in.Min.Y, p.Title, render.HeadSize, true) + 0.6
		for _, t := range p.Text {
			y = document.Paragraph(d, in, y, t, render.BodySize, false) + 0.6
		}
		return y
	}
	if len(p.Faces) == 0 {
		return set(box)
	}
	tall := pictureTall
	if p.Name == measuring.Thickness {
		tall = tallPicture
	}
	if box.Width() < beside {
		y := set(box) + 1
		panel(p, d.Options).Draw(d, geometry.Bx(box.Min.X, y, box.Max.X, y+tall), figure.AtBoth)
		return y + tall
	}
	left, right := box, box
	left.Max.X = box.Min.X + box.Width()*wordsPart
	right.Min.X = left.Max.X + gutter
	right.Max.Y = right.Min.Y + tall
	panel(p, d.Options).Draw(d, right, figure.AtBoth)
	return max(set(left), right.Max.Y)
}

// Of a row of blanks.
const (
	namesPart        = 0.3
	cellTall  Length = 10
	cellIn    Length = 1 // from a word in a cell to its frame
)

// row sets a row: what is measured and the line of the job file, then its cells.
func (d *doc) row(b measuring.Blank, box geometry.Box) Length {
	names := box
	names.Max.X = box.Min.X + box.Width()*namesPart - 2
	tall := cellTall
	if d.both && b.Unit == "" {
		tall *= 1.6
	}
	below := document.Paragraph(d, names, names.Min.Y-0.6, b.Name, render.BodySize, true)
	below = document.Paragraph(d, names, below-0.8, b.Key, render.SmallSize, false)
	const most = 4 // cells of rows are as wide, whatever they are
	wide := box.Width() * (1 - namesPart) / most
	for i, place := range b.Places {
		x := box.Max.X - wide*Length(most-i)
		cell := geometry.Bx(x, box.Min.Y, x+wide-1.2, box.Min.Y+tall)
		d.cell(cell, place, d.units(b, i+1))
	}
	return max(below, box.Min.Y+tall)
}

// units are those that the nth cell of a row is written in, from 1.
func (d *doc) units(b measuring.Blank, n int) []string {
	switch {
	case n == b.Counts:
		return []string{""}
	case b.Unit != "":
		return []string{b.Unit}
	case d.both:
		return []string{geometry.MM.String(), geometry.IN.String()}
	}
	return []string{d.Round.Unit.String()}
}

// cell draws a cell: where the reading is taken above, its units below each other.
func (d *doc) cell(box geometry.Box, place string, units []string) {
	d.Stroke(geometry.Rectangle(box), render.Stroke{Width: 0.25, Color: render.Black})
	up := typeset.Ascent(render.SmallSize)
	document.Write(d, geometry.Pt(box.Min.X+cellIn, box.Min.Y+cellIn+up), typeset.Fit(place, render.SmallSize, false, box.Width()-2*cellIn), render.SmallSize, false)
	bottom := box.Max.Y
	for i := range units {
		u := units[len(units)-1-i]
		document.WriteEnd(d, geometry.Pt(box.Max.X-cellIn, bottom-cellIn), u, render.SmallSize, false)
		if bottom -= cellTall * 0.6; i < len(units)-1 {
			document.Rule(d, geometry.Pt(box.Min.X, bottom), geometry.Pt(box.Max.X, bottom))
		}
	}
}
