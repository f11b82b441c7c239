package fit

import (
	"fmt"
	"slices"

	"forel/geometry"
	"forel/geometry/fit"
	"forel/geometry/wording"
	"forel/render"
	"forel/render/document"
)

// doc is the document being made.
type doc struct {
	*document.Document
	report fit.Report
}

// Document draws the report: the verdict, a page for each dimension, what can be off,
// the checks at the bench, and the paper strips at true size.
func Document(r fit.Report, o Options) *document.Document {
	d := &doc{&document.Document{Options: o, Title: "Fit", Running: wording.Titled(r.Title, r.Kind), TrueSize: true,
		Foot: "Figures, not at true size, but for the paper strips."}, r}
	d.summary()
	d.plots()
	d.Break()
	// The checks have a page of their own where that leaves none half empty.
	checks := d.checks()
	if len(d.Try(nil, checks...)) == 1 && d.Page.Lowest() > d.Room(false).Center().Y {
		d.Flow(nil, checks...)
	} else {
		d.FlowOn(8, checks...)
	}
	d.strips()
	return d.Document
}

// onPage is how many dimensions a table of errors has room for on a page.
const onPage = 3

// summary tells how it fits, and what can be off.
func (d *doc) summary() {
	r, u := d.report, d.Round.Unit
	opening := d.Opening(d.Running, "How the "+r.Kind+" will fit its "+r.Content)
	opening.Bookmark = "How it fits"
	d.Add(opening)
	for i, l := range Verdict(r, u) {
		d.Say(wording.Sentence(l), render.BodySize, i != 1, 1.5)
	}
	table := func(head, bookmark string, rows [][]string) {
		if len(rows) > 1 {
			t := d.Table(head, tableOf(rows))
			t[0].Bookmark = bookmark
			d.Add(t...)
		}
	}
	table("What is left beyond the "+r.Content+" ("+u.String()+")", "", gapRows(r, u))
	for _, w := range r.WhatIf {
		table("What if the "+w.Material+" is really another, cut sizes as drawn ("+u.String()+")", "", whatIfRows(r, w, u))
	}
	table("What can be done, each by itself, the least effort first", "", mendRows(r, u))
	head := "What can be off (" + u.String() + ")"
	for dims := range slices.Chunk(tightestOf(r), onPage) { // of one thing in another, a table each
		table(head, head, errorRows(r, u, dims))
		head = "What can be off (" + u.String() + "), continued"
	}
	d.Say("Plus or minus, how far each moves the tightest place of a dimension from end to end, and its part of the variance there.", render.NoteSize, false, 1)
	d.Notes(notes(r, u)...)
}

// plots draws each dimension: how likely its clearances are, and the chain of its
// tightest place.
func (d *doc) plots() {
	for _, dim := range d.report.Chain.Dimensions {
		gaps := shown(d.report, dim.Name)
		d.Add(document.Block{Above: 8, Bookmark: "Fit in " + dim.Name,
			Draw:    func(box geometry.Box) Length { return d.named(box, gaps) },
			Figures: []func(geometry.Box){func(box geometry.Box) { d.curves(box, gaps, dim.Tight) }}},
			document.Block{Above: 4, Draw: func(box geometry.Box) Length { return d.chain(box, gaps[len(gaps)-1]) }})
	}
}

// checks are the checks at the bench with a box to tick each.
func (d *doc) checks() []document.Block {
	const head = "Checks at the bench"
	first := d.Heading(head)
	first.Bookmark = head
	again := d.Heading(head + ", continued").Draw
	about := d.Paragraph("In this order, each at its step of the handout and of the templates' order of work. Once it is glued little can be mended: a check that fails before costs a sheet of paper or a strip of board, after it a case.", render.BodySize, false)
	about.Stays = true
	blocks := []document.Block{first, about}
	for _, c := range d.report.Checks() {
		blocks = append(blocks, document.Block{Above: 3, Head: again, Draw: func(box geometry.Box) Length {
			return document.Check(d, box, fmt.Sprintf("Step %d: %s", c.Step, c.Name), wording.Sentence(c.When), c, thin(d.Round))
		}})
	}
	care := d.Paragraph("Take care. "+wording.Careful(wording.Knife, wording.Adhesive, wording.Machine), render.NoteSize, false)
	return append(blocks, care.After(3))
}
