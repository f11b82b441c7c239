package bench

import (
	"fmt"

	"forel/geometry"
	"forel/paper/bench"
	"forel/render"
	"forel/render/typeset"
)

// shopping draws the shopping list, what is left over, and what is to be said.
func (b *book) shopping() {
	box := b.upright("Shopping list")
	head := "Shopping list and bench plan"
	y := paragraph(b, box, box.Min.Y-1.5, typeset.Fit(titles(b.plan), render.TitleSize, true, box.Width()), render.TitleSize, true)
	y = paragraph(b, box, y, head, render.HeadSize, false) + 1
	columns, rows := shoppingTable(b.plan, b.Round)
	box, y = b.flow(table{columns: columns, rows: rows, tick: true, flex: map[int]bool{0: true, 2: true, 3: true}, bold: map[int]bool{1: true}}, box, y, head)
	if t := totalLine(b.plan); t != "" {
		y = paragraph(b, box, y+1, capital(t), render.BodySize, true)
	}
	say := func(text string, size render.Points, bold bool, gap Length) {
		if y+gap+tall(text, size, box.Width()) > box.Max.Y {
			box = b.upright("")
			y = box.Min.Y - 1.2
		}
		y = paragraph(b, box, y+gap, text, size, bold)
	}
	say("Work", render.HeadSize, true, 3)
	for _, g := range b.plan.Groups {
		say(capital(summary(g, b.Round))+".", render.BodySize, false, 0.6)
		if o := offcuts(g, b.Round); o != "" {
			say("Offcuts worth keeping – "+o+".", noteSize, false, 0)
		}
	}
	if len(b.plan.Jobs) > 1 {
		say("Cases", render.HeadSize, true, 3)
		names := ""
		for i, j := range b.plan.Jobs {
			if i > 0 {
				names += "; "
			}
			names += fmt.Sprintf("%d %s", i+1, oneLine(j.Title()))
		}
		say(names+".", noteSize, false, 0.6)
	}
	say("How to read the plan", render.HeadSize, true, 3)
	for _, s := range []string{
		"Every cut runs from edge to edge of the part it is made in. First trim the left and the upper edge of each sheet, the second square to the first, and lay these to the fence.",
		"The fence stands at the measure given, and what lies between fence and blade is what the cut gives. Cuts at one setting follow each other, on several sheets: set the fence once. Write its number on every piece as it falls, and on every strip its name.",
		"In the drawings a boxed number is a cut, in the order of the list; a bold number is a piece; hatched is an offcut worth keeping, grey is waste. Sizes are width × height as the sheet lies.",
	} {
		say(s, render.BodySize, false, 0.8)
	}
	for i, r := range remarks(b.plan, b.Round, b.Round.Pretty) {
		gap := Length(0.4)
		if i == 0 {
			gap = 2
		}
		say(capital(r)+".", noteSize, false, gap)
	}
	say(cautions, noteSize, true, 3)
}

// cutPages draws the order of the cuts of every group, one below the other.
func (b *book) cutPages() {
	box := b.upright("Order of the cuts")
	y := paragraph(b, box, box.Min.Y-1.2, cautions, noteSize, true) + 1
	const least = 30 // of a list, at the bottom of a page
	for i, g := range b.plan.Groups {
		head := "Order of the cuts: " + label(g, b.Round)
		if i > 0 && y+least > box.Max.Y {
			box = b.upright(head)
			y = box.Min.Y - 1.2
		} else {
			b.Bookmark(head)
		}
		y = paragraph(b, box, y+1, head, render.HeadSize, true) + 0.5
		columns, rows := cutTable(b.plan, g, b.Round)
		t := table{columns: columns, rows: rows, tick: true, flex: map[int]bool{5: true, 6: true}, bold: map[int]bool{2: true}, rules: map[int]bool{}}
		for i, c := range g.Cuts {
			if i > 0 && (c.Setting != g.Cuts[i-1].Setting || c.Kind != g.Cuts[i-1].Kind && c.Setting == 0) {
				t.rules[i] = true
			}
		}
		box, y = b.flow(t, box, y, head)
		y += 4
	}
}

// sheetPages draws a sheet, and the rest of its list of pieces where that is
// long.
func (b *book) sheetPages(g bench.Group, i int) {
	f := newFigure(b.plan, g, i, b.Options)
	w, h := f.page()
	head := f.head()
	room := b.newPage(w, h, head)
	split := f.split(room)
	y := split.bottom
	if b.total > 0 { // else pages are counted
		y = f.draw(b, room, split)
	}
	f.legend(b, geometry.Bx(room.Min.X, y, room.Max.X, room.Max.Y), f.rows[:split.rows], split.across)
	for from := split.rows; from < len(f.rows); {
		room = b.newPage(w, h, "")
		y := paragraph(b, room, room.Min.Y-1.2, head+", list of pieces", render.HeadSize, true) + 1
		to := min(len(f.rows), from+int((room.Max.Y-y-1)/rowHeight)*split.across)
		f.legend(b, geometry.Bx(room.Min.X, y, room.Max.X, room.Max.Y), f.rows[from:to], split.across)
		from = to
	}
	b.missed = append(b.missed, f.missed...)
}
