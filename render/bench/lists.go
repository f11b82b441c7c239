package bench

import (
	"fmt"
	"strings"

	"forel/geometry"
	"forel/geometry/wording"
	"forel/paper/bench"
	"forel/render"
	"forel/render/document"
)

// shopping draws the shopping list, what is left over, and what is to be said.
func (d *doc) shopping() {
	const head = "Shopping list and bench plan"
	opening := d.Opening(titles(d.plan), head)
	opening.Bookmark = "Shopping list"
	d.Add(opening)
	d.Add(d.Table("", shoppingTable(d.plan, d.Round))...)
	if t := totalLine(d.plan); t != "" {
		d.Say(wording.Capital(t), render.BodySize, true, 1)
	}
	d.Add(d.Heading("Work"))
	for _, g := range d.plan.Groups {
		d.Say(wording.Sentence(summary(g, d.Round)), render.BodySize, false, 0.6)
		if o := offcuts(g, d.Round); o != "" {
			d.Say("Offcuts worth keeping – "+o+".", noteSize, false, 0)
		}
	}
	if len(d.plan.Jobs) > 1 {
		d.Add(d.Heading("Cases"))
		var names []string
		for i, j := range d.plan.Jobs {
			names = append(names, fmt.Sprintf("%d %s", i+1, wording.OneLine(j.Title())))
		}
		d.Say(strings.Join(names, "; ")+".", noteSize, false, 0.6)
	}
	d.Add(d.Heading("How to read the plan"))
	for _, s := range []string{
		"Every cut runs from edge to edge of the part it is made in. First trim the left and the upper edge of each sheet, the second square to the first, and lay these to the fence.",
		"The fence stands at the measure given, and what lies between fence and blade is what the cut gives. Cuts at one setting follow each other, on several sheets: set the fence once. Write its number on every piece as it falls, and on every strip its name.",
		"In the drawings a boxed number is a cut, in the order of the list; a bold number is a piece; hatched is an offcut worth keeping, grey is waste. Sizes are width × height as the sheet lies.",
	} {
		d.Say(s, render.BodySize, false, 0.8)
	}
	d.Say(cautions, noteSize, true, 2) // before the small print, which may go on over the page
	d.Notes(remarks(d.plan, d.Round, d.Round.Pretty)...)
	d.Break()
}

// cutPages draws the order of the cuts of every group, one below the other.
func (d *doc) cutPages() {
	first := d.Paragraph(cautions, noteSize, true)
	first.Bookmark = "Order of the cuts"
	d.Add(first)
	for _, g := range d.plan.Groups {
		head := "Order of the cuts: " + label(g, d.Round)
		cuts := cutTable(d.plan, g, d.Round)
		cuts.Apart = func(i int) bool {
			return i > 0 && (g.Cuts[i].Setting != g.Cuts[i-1].Setting || g.Cuts[i].Kind != g.Cuts[i-1].Kind && g.Cuts[i].Setting == 0)
		}
		table := d.Table(head, cuts)
		table[0].Bookmark = head
		table[0].Above = 5
		d.Add(table...)
	}
}

// sheetPages draws a sheet, and below it the list of its pieces, which has pages of its
// own where it is long.
func sheetPages(d *document.Document, p bench.Plan, g bench.Group, i int) *figure {
	f := newFigure(p, g, i, d)
	list := d.Table("", f.list())
	sheet := document.Block{Bookmark: f.head(), Draw: func(box geometry.Box) Length {
		var tall Length
		d.Aside(func() { tall = document.Below(box, list...) - box.Min.Y + 4 })
		if tall < 0.4*box.Height() {
			box.Max.Y -= tall
		}
		return f.draw(d, box)
	}}
	list[0].Above = 2
	list[0].Head = func(box geometry.Box) Length { return d.Heading(f.head()+", list of pieces").Draw(box) + 1 }
	d.Flow(func(int) geometry.Box { return d.NewPage(f.lying, "") }, append([]document.Block{sheet}, list...)...)
	return f
}
