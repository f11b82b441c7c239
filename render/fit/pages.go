package fit

import (
	"fmt"
	"strings"

	"forel/geometry"
	"forel/geometry/fit"
	"forel/geometry/plan"
	"forel/render"
	"forel/render/pdf"
	"forel/render/typeset"
)

// pages is a surface with pages; the last one is drawn on.
type pages interface {
	render.Surface
	AddPage(width, height geometry.Length)
	Bookmark(title string)
}

// book is the document being made.
type book struct {
	pen
	pages  pages
	report fit.Report
	page   int
	total  int
}

// PDF gives the document: the verdict, a page for each dimension, what can be
// off, the checks at the bench, and the paper strips at true size.
func PDF(r fit.Report, o Options) ([]byte, error) {
	doc := pdf.New("Fit: " + title(r))
	doc.PrintedOn(o.Setup)
	doc.Dated(o.Date)
	if o.Black {
		doc.BlackOnly()
	}
	draw(doc, r, o)
	return doc.Bytes()
}

// draw draws the document on pages.
func draw(on pages, r fit.Report, o Options) {
	trial := &book{pen: pen{render.Discard{}, o}, pages: render.Discard{}, report: r}
	trial.all()
	b := &book{pen: pen{on, o}, pages: on, report: r, total: trial.page}
	b.all()
}

func (b *book) all() {
	b.summary()
	for _, dim := range b.report.Dimensions {
		d := dim.Name
		box := b.newPage("Fit in "+d, false)
		if b.heightOf(func(q *book) Length { return q.plot(box, b.report, d) }) <= box.Max.Y {
			b.plot(box, b.report, d)
			continue
		}
		b.likely(box, b.report, d)
		gaps := shown(b.report, d)
		b.chain(b.newPage("The chain in "+d, false), gaps[tightest(gaps)])
	}
	b.benchPages()
	b.strips()
}

// footHigh is what the foot of a page takes.
const footHigh Length = 6

// newPage starts a page, upright or lying, and gives what may be printed on it.
func (b *book) newPage(bookmark string, lying bool) geometry.Box {
	b.page++
	lying = lying && b.Setup.Sheet.Width != b.Setup.Sheet.Height // nothing would tell that a square sheet does
	b.pages.AddPage(b.Setup.Size(lying))
	b.pages.Bookmark(bookmark)
	room := b.Setup.Printable(lying)
	foot := fmt.Sprintf("fit – %s – page %d of %d", title(b.report), b.page, b.total)
	if !b.Setup.Measured.True() {
		foot += " – " + b.Setup.Measured.String()
	}
	b.words(room.Min.X, room.Max.Y-typeset.Descent(render.SmallSize), typeset.Fit(foot, render.SmallSize, false, room.Width()), render.SmallSize, render.Start, false)
	room.Max.Y -= footHigh
	return room
}

// summary is the first page.
func (b *book) summary() {
	r, u := b.report, b.Round.Unit
	box := b.newPage("How it fits", false)
	y := box.Min.Y + typeset.Ascent(render.TitleSize)
	b.words(box.Min.X, y, typeset.Fit(title(r), render.TitleSize, true, box.Width()), render.TitleSize, render.Start, true)
	y = b.paragraph(box, y+1.5, "How the "+r.Kind+" will fit its "+r.Content, render.HeadSize, false) + 2
	b.line(box.Min.X, y, box.Max.X, y, rule)
	for i, l := range verdict(r, u) {
		y = b.paragraph(box, y+1, capital(l)+".", render.BodySize, i != 1) + 0.5
	}
	box, y = b.listed(box, y, "What is left beyond the "+r.Content+" ("+u.String()+")", "What is left", gapRows(r, u))
	if len(r.WhatIf) > 0 {
		box, y = b.listed(box, y, "What if the "+r.WhatIf[0].Material+" is really another, cut sizes as drawn ("+u.String()+")", "What if the "+r.WhatIf[0].Material+" is another", whatIfRows(r, u))
	}
	if len(r.Mends) > 0 {
		box, y = b.listed(box, y, "What can be done, each by itself, the least effort first", "What can be done", mendRows(r, u))
	}
	if b.heightOf(func(q *book) Length { return q.errors(box, y) }) > box.Max.Y {
		box = b.newPage("What can be off", false)
		y = box.Min.Y - 3
	}
	b.errors(box, y)
}

// listed sets a table under a head below y, on further pages what of it has no room,
// and gives the page it ends on and where.
func (b *book) listed(box geometry.Box, y Length, head, bookmark string, rows [][]string) (geometry.Box, Length) {
	set := func(q *book, y Length, rows [][]string) Length {
		return q.table(box, q.paragraph(box, y+3, head, render.HeadSize, true)+0.5, rows, render.NoteSize)
	}
	fits := func(y Length, n int) bool {
		return b.heightOf(func(q *book) Length { return set(q, y, rows[:n]) }) <= box.Max.Y
	}
	if top := b.Setup.Printable(false).Min.Y - 3; !fits(y, len(rows)) {
		if fits(top, len(rows)) || !fits(y, min(len(rows), 6)) {
			box, y = b.newPage(bookmark, false), top
		}
		for !fits(y, len(rows)) {
			n := len(rows) - 1
			for n > 2 && !fits(y, n) {
				n--
			}
			set(b, y, rows[:n])
			rows = append([][]string{rows[0]}, rows[n:]...)
			box, y = b.newPage(bookmark, false), top
			head = strings.TrimSuffix(head, ", continued") + ", continued"
			if len(rows) <= 2 {
				break
			}
		}
	}
	return box, set(b, y, rows)
}

// errors sets the table of what can be off, and the notes to all tables.
func (b *book) errors(box geometry.Box, y Length) Length {
	u := b.Round.Unit
	y = b.paragraph(box, y+3, "What can be off ("+u.String()+")", render.HeadSize, true)
	y = b.paragraph(box, y, "How far each moves the tightest place of a dimension from end to end, and its part of the variance there.", render.NoteSize, false)
	y = b.table(box, y+0.5, errorRows(b.report, u), render.NoteSize)
	for _, n := range notes(b.report, u) {
		y = b.paragraph(box, y+1, capital(n)+".", render.NoteSize, false)
	}
	return y
}

// heightOf gives what drawing something gives, without drawing it.
func (b *book) heightOf(do func(*book) Length) Length {
	q := *b
	q.Surface, q.pages = render.Discard{}, render.Discard{}
	return do(&q)
}

// benchPages are the checks with a box to tick each.
func (b *book) benchPages() {
	const head = "Checks at the bench"
	box := b.newPage(head, false)
	y := b.paragraph(box, box.Min.Y, head, render.HeadSize, true)
	y = b.paragraph(box, y, "In this order. Once it is glued little can be mended: a check that fails before costs a sheet of paper or a strip of board, after it a case.", render.BodySize, false) + 1
	for i, c := range b.report.Checks {
		if b.heightOf(func(q *book) Length { return q.check(box, y, i, c) }) > box.Max.Y {
			box = b.newPage(head, false)
			y = b.paragraph(box, box.Min.Y, head+", continued", render.HeadSize, true)
		}
		y = b.check(box, y, i, c)
	}
	const care = "Take care: knives cut people: sharp blade, heavy straightedge, fingers behind its edge, several light passes. Adhesives: read the label, air the room. " +
		"Laser or drag knife: read the maker's manual, never put chlorinated plastics (PVC, some coated cloths) under a laser, never leave one running alone, use extraction. Local rules and trained people come first."
	if b.heightOf(func(q *book) Length { return q.paragraph(box, y+2, care, render.NoteSize, false) }) > box.Max.Y {
		box = b.newPage(head, false)
		y = box.Min.Y
	}
	b.paragraph(box, y+2, care, render.NoteSize, false)
}

// check sets one check and gives where it ends.
func (b *book) check(box geometry.Box, y Length, i int, c plan.Check) Length {
	write := thin(b.Round)
	y += 3
	tick := geometry.Bx(box.Min.X, y+0.6, box.Min.X+4, y+4.6)
	b.box(tick, edge)
	in := geometry.Bx(box.Min.X+7, y, box.Max.X, box.Max.Y)
	y = b.paragraph(in, y, fmt.Sprintf("%d. %s", i+1, capital(c.Name)), render.BodySize, true)
	y = b.paragraph(in, y, capital(c.When)+".", render.NoteSize, false)
	for _, s := range c.See {
		b.words(in.Min.X, y+typeset.LineHeight(render.BodySize), "–", render.BodySize, render.Start, false)
		y = b.paragraph(geometry.Bx(in.Min.X+4, y, in.Max.X, in.Max.Y), y, capital(s.In(write))+".", render.BodySize, false) + 0.3
	}
	return b.paragraph(in, y, "If not: "+c.Fails.In(write)+".", render.BodySize, false)
}
