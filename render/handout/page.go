package handout

import (
	"fmt"

	"forel/geometry"
	"forel/geometry/plan"
	"forel/geometry/stage"
	"forel/render"
	"forel/render/document"
	"forel/render/figure"
	"forel/render/typeset"
)

// The outer margin for notes and the white before it, and the white between blocks.
const (
	mostNotes   Length = 40
	leastNotes  Length = 15
	leastColumn Length = 138 // what is written on is no narrower; the rest is for notes
	gutter      Length = 5
	blockGap    Length = 5
)

// notes draws the margin for notes of a page, where it has room for one, and returns what is
// written on.
func (d *doc) notes(all geometry.Box) geometry.Box {
	wide := min(mostNotes, all.Width()-gutter-leastColumn)
	if wide < leastNotes {
		return all
	}
	x := all.Max.X - wide
	document.Rule(d, geometry.Pt(x, all.Min.Y), geometry.Pt(x, all.Max.Y))
	d.Text(render.Text{At: geometry.Pt(x+2, all.Min.Y+typeset.Ascent(render.NoteSize)), String: "Notes", Size: render.NoteSize, Color: render.Grey})
	all.Max.X = x - gutter
	return all
}

// stepBlocks returns a step as blocks: its words with its figures below, then each
// of its checks.
func (d *doc) stepBlocks(number int, s plan.Step) []document.Block {
	k := document.Block{Above: blockGap, Stays: len(s.Checks) > 0, Draw: func(box geometry.Box) Length {
		y := document.Paragraph(d, box, box.Min.Y, fmt.Sprintf("%d   %s", number, s.Title), render.HeadSize, true) + 0.6
		for _, t := range d.said(s.Text) {
			y = document.Paragraph(d, box, y, t, render.BodySize, false) + 0.4
		}
		if t := d.timeOf(s); t != "" {
			y = document.Paragraph(d, box, y, "Time: "+t+".", render.NoteSize, false) + 0.4
		}
		return y
	}}
	for _, row := range s.Pictures {
		k.Figures = append(k.Figures, func(box geometry.Box) { d.drawRow(row, box) })
	}
	out := []document.Block{k}
	for i, c := range s.Checks {
		out = append(out, document.Block{Above: 1.5, Stays: i < len(s.Checks)-1, Draw: func(box geometry.Box) Length {
			return document.Check(d, box, "Check: "+c.Name, "", c, d.Round.Pretty)
		}})
	}
	return out
}

// panel returns a picture as it is drawn.
func (d *doc) panel(p stage.Picture) figure.Panel { return figure.Of(p, d.looks, d.Round.Pretty) }

// drawRow draws one panel, or two side by side.
func (d *doc) drawRow(row []stage.Picture, box geometry.Box) {
	if len(row) == 1 {
		d.panel(row[0]).Draw(d, box, figure.AtBoth)
		return
	}
	mid := box.Center().X
	d.panel(row[0]).Draw(d, geometry.Bx(box.Min.X, box.Min.Y, mid-1, box.Max.Y), figure.AtLeft)
	d.panel(row[1]).Draw(d, geometry.Bx(mid+1, box.Min.Y, box.Max.X, box.Max.Y), figure.AtRight)
}

// said writes sentences with their lengths.
func (d *doc) said(says []stage.Say) []string {
	out := make([]string, len(says))
	for i, s := range says {
		out[i] = s.In(d.Round.Pretty)
	}
	return out
}
