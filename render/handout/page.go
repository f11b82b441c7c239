package handout

import (
	"fmt"

	"forel/geometry"
	"forel/geometry/plan"
	"forel/geometry/stage"
	"forel/render"
	"forel/render/layout"
	"forel/render/typeset"
)

// The outer margin for notes, the white before it, the line at the foot.
const (
	mostNotes   Length = 40
	leastColumn Length = 138 // what is written on is no narrower; the rest is for notes
	gutter      Length = 5
	footTall    Length = 7
)

// printable gives what a printer reaches of a page.
func (b *book) printable() geometry.Box {
	return b.Setup.Reach(false)
}

// notesWide gives how wide the margin for notes is.
func (b *book) notesWide() Length {
	return min(mostNotes, b.printable().Width()-gutter-leastColumn)
}

// column gives the part of a page that is written on.
func (b *book) column() geometry.Box {
	box := b.printable()
	box.Max.X -= b.notesWide() + gutter
	box.Max.Y -= footTall
	return box
}

// newPage starts a page with its margin for notes and its foot, and gives the
// part that is written on.
func (b *book) newPage() geometry.Box {
	b.AddPage(b.Setup.Sheet.Width, b.Setup.Sheet.Height)
	all, box := b.printable(), b.column()
	x := all.Max.X - b.notesWide()
	layout.Rule(b, geometry.Pt(x, all.Min.Y), geometry.Pt(x, box.Max.Y))
	b.Text(render.Text{At: geometry.Pt(x+2, all.Min.Y+typeset.Ascent(render.NoteSize)), String: "Notes", Size: render.NoteSize, Color: render.Grey})
	y := all.Max.Y
	layout.Rule(b, geometry.Pt(all.Min.X, y-footTall+2), geometry.Pt(all.Max.X, y-footTall+2))
	y -= typeset.Descent(render.NoteSize)
	left := "Figures, not at true size: cut from the templates, not from this page."
	if b.blank {
		left = "Fill in with a pencil; cut from patterns, not from this page."
	}
	layout.Write(b, geometry.Pt(all.Min.X, y), left, render.NoteSize, false)
	right := fmt.Sprintf("page %d of %d", b.page, b.total)
	if t := oneLine(b.plan.Title); t != "" {
		right += " – " + t
	}
	room := all.Width() - typeset.Width(left, render.NoteSize, false) - 6
	b.Text(render.Text{At: geometry.Pt(all.Max.X, y), String: typeset.Fit(right, render.NoteSize, false, room), Size: render.NoteSize, Align: render.End, Color: render.Black})
	return box
}

// block is something that stays together on a page. Figures in it may be as tall
// as there is room for.
type block struct {
	mark   string // a new section, for the list of contents
	fresh  bool   // starts a page
	list   bool   // starts the list of pieces
	tight  bool   // with no white before it
	rows   int    // of figures
	height func(figure Length) Length
	draw   func(box geometry.Box, figure Length)
	// A head that is repeated where the block is the first of a page.
	headTall Length
	head     func(box geometry.Box)
}

// Heights of a row of figures, and the white between blocks.
const (
	leastFigure Length = 50
	mostFigure  Length = 84
	blockGap    Length = 5
)

// filled is what stands on one page, and how tall a row of its figures is.
type filled struct {
	blocks []block
	figure Length
}

// flow sets blocks one below the other, and on a new page where there is no room;
// what is left of a page goes to its figures.
func (b *book) flow(blocks []block) []filled {
	var out []filled
	room := b.column().Height()
	for len(blocks) > 0 {
		n, rows, used := 0, 0, Length(0)
		for _, k := range blocks {
			h := k.height(leastFigure)
			if n == 0 {
				h += k.headTall
			}
			if n > 0 {
				h += k.gap()
			}
			if n > 0 && (k.fresh || used+h > room) {
				break
			}
			used += h
			n, rows = n+1, rows+k.rows
		}
		figure := leastFigure
		if rows > 0 {
			figure = min(mostFigure, leastFigure+(room-used)/Length(rows))
		}
		out = append(out, filled{blocks[:n], figure})
		blocks = blocks[n:]
	}
	return out
}

// fill draws a page.
func (b *book) fill(f filled) {
	box := b.newPage()
	y := box.Min.Y
	for i, k := range f.blocks {
		if i == 0 && k.head != nil {
			k.head(geometry.Bx(box.Min.X, y, box.Max.X, y+k.headTall))
			y += k.headTall
		}
		if k.mark != "" {
			b.Bookmark(k.mark)
		}
		if i > 0 {
			y += k.gap()
		}
		h := k.height(f.figure)
		k.draw(geometry.Bx(box.Min.X, y, box.Max.X, y+h), f.figure)
		y += h
	}
}

// gap gives the white before a block that is not the first of its page.
func (k block) gap() Length {
	if k.tight {
		return 0
	}
	return blockGap
}

// stepBlock gives a step as a block.
func (b *book) stepBlock(number int, s plan.Step) block {
	title := fmt.Sprintf("%d   %s", number, s.Title)
	text := b.said(s.Text)
	const under = 1.5
	width := b.column().Width()
	words := layout.ParagraphHeight(title, render.HeadSize, true, width) + 0.6
	for _, t := range text {
		words += layout.ParagraphHeight(t, render.BodySize, false, width) + 0.4
	}
	return block{
		rows:   len(s.Pictures),
		height: func(figure Length) Length { return words + Length(len(s.Pictures))*(figure+under) },
		draw: func(box geometry.Box, figure Length) {
			y := layout.Paragraph(b, box, box.Min.Y, title, render.HeadSize, true) + 0.6
			for _, t := range text {
				y = layout.Paragraph(b, box, y, t, render.BodySize, false) + 0.4
			}
			for _, row := range s.Pictures {
				y += under
				b.drawRow(row, geometry.Bx(box.Min.X, y, box.Max.X, y+figure))
				y += figure
			}
		},
	}
}

// drawRow draws one panel, or two side by side.
func (b *book) drawRow(row []stage.Picture, box geometry.Box) {
	if len(row) == 1 {
		b.drawPanel(b.panel(row[0]), box, atBoth)
		return
	}
	mid := box.Center().X
	b.drawPanel(b.panel(row[0]), geometry.Bx(box.Min.X, box.Min.Y, mid-1, box.Max.Y), atLeft)
	b.drawPanel(b.panel(row[1]), geometry.Bx(mid+1, box.Min.Y, box.Max.X, box.Max.Y), atRight)
}

// said writes sentences with their lengths.
func (b *book) said(says []stage.Say) []string {
	out := make([]string, len(says))
	for i, s := range says {
		out[i] = s.In(b.Round.Pretty)
	}
	return out
}
