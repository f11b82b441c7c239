package handout

import (
	"fmt"

	"forel/geometry"
	"forel/geometry/plan"
	"forel/geometry/wording"
	"forel/render"
	"forel/render/document"
)

// shortPages is how many pages a short handout has, where the sheet is no smaller than A4 or
// Letter.
const shortPages = 4

// short sets the steps in two columns behind the worksheet, each with one figure as large as
// four pages allow, then the checks and the cautions.
func (b *book) short() {
	b.Frame = nil
	var page geometry.Box
	columns := func(n int) geometry.Box {
		if n%2 == 0 {
			page = b.NewPage(false, "")
		}
		half := (page.Width() - gutter) / 2
		x := page.Min.X + Length(n%2)*(half+gutter)
		return geometry.Bx(x, page.Min.Y, x+half, page.Max.Y)
	}
	const most, least, step = 62, 26, 3
	for tall := Length(most); ; tall -= step {
		if tall < least {
			tall = 0
		}
		var on []int
		b.Aside(func() { on = b.Flow(columns, b.shortBlocks(tall, false)...) })
		if b.Count()+(len(on)+1)/2 <= shortPages || tall == 0 {
			b.Flow(columns, b.shortBlocks(tall, true)...)
			return
		}
	}
}

// shortBlocks returns what a short handout has behind its worksheet, with figures so tall,
// drawn or only room for them.
func (b *book) shortBlocks(tall Length, drawn bool) []document.Block {
	blocks := b.Points("Take care", wording.Cautions())
	blocks[0].Bookmark = "Steps"
	for i, s := range b.plan.Steps {
		blocks = append(blocks, b.shortStep(i+1, s, tall, drawn))
	}
	return append(blocks, b.checks()...)
}

// shortStep returns a step with its last figure, which shows what it comes to.
func (b *book) shortStep(number int, s plan.Step, tall Length, drawn bool) document.Block {
	return document.Block{Above: 2, Draw: func(box geometry.Box) Length {
		y := document.Paragraph(b, box, box.Min.Y, fmt.Sprintf("%d   %s", number, s.Title), render.BodySize, true) + 0.3
		for _, t := range b.said(s.Text) {
			y = document.Paragraph(b, box, y, t, render.NoteSize, false)
		}
		if tall > 0 && len(s.Pictures) > 0 {
			if drawn {
				row := s.Pictures[len(s.Pictures)-1]
				p := b.panel(row[len(row)-1])
				p.caption = "" // which tells one of several from another
				b.drawPanel(p, geometry.Bx(box.Min.X, y+1, box.Max.X, y+1+tall), atBoth)
			}
			y += 1 + tall
		}
		return y
	}}
}
