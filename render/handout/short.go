package handout

import (
	"fmt"

	"forel/geometry"
	"forel/geometry/plan"
	"forel/geometry/wording"
	"forel/render"
	"forel/render/document"
	"forel/render/figure"
)

// shortPages is how many pages a short handout has, where the sheet is no smaller than A4 or
// Letter.
const shortPages = 4

// short sets the steps in two columns behind the worksheet, each with one figure as large as
// four pages allow, then the checks and the cautions.
func (d *doc) short() {
	d.Frame = nil
	columns := d.Columns(gutter)
	const most, least, step = 62, 26, 3
	for tall := Length(most); ; tall -= step {
		if tall < least {
			tall = 0
		}
		var on []int
		d.Aside(func() { on = d.Flow(columns, d.shortBlocks(tall, false)...) })
		if d.Count()+(len(on)+1)/2 <= shortPages || tall == 0 {
			d.Flow(columns, d.shortBlocks(tall, true)...)
			return
		}
	}
}

// shortBlocks returns what a short handout has behind its worksheet, with figures so tall,
// drawn or only room for them.
func (d *doc) shortBlocks(tall Length, drawn bool) []document.Block {
	blocks := d.Points("Take care", wording.Cautions())
	blocks[0].Bookmark = "Steps"
	for i, s := range d.plan.Steps {
		blocks = append(blocks, d.shortStep(i+1, s, tall, drawn))
	}
	return append(blocks, d.checks()...)
}

// shortStep returns a step with its last figure, which shows what it comes to.
func (d *doc) shortStep(number int, s plan.Step, tall Length, drawn bool) document.Block {
	return document.Block{Above: 2, Draw: func(box geometry.Box) Length {
		y := document.Paragraph(d, box, box.Min.Y, fmt.Sprintf("%d   %s", number, s.Title), render.BodySize, true) + 0.3
		for _, t := range d.said(s.Text) {
			y = document.Paragraph(d, box, y, t, render.NoteSize, false)
		}
		if tall > 0 && len(s.Pictures) > 0 {
			if drawn {
				row := s.Pictures[len(s.Pictures)-1]
				p := d.panel(row[len(row)-1]).Uncaptioned() // it tells one of several from another
				p.Draw(d, geometry.Bx(box.Min.X, y+1, box.Max.X, y+1+tall), figure.AtBoth)
			}
			y += 1 + tall
		}
		return y
	}}
}
