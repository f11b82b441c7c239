package handout

import (
	"forel/geometry/plan"
	"forel/render/pdf"
	"forel/render/staging"
)

// book is the document being made.
type book struct {
	Options
	plan plan.Plan
	pages
	looks   staging.Looks
	blank   bool   // the empty worksheet
	rowTall Length // of a row of the list of pieces
	page    int
	total   int
}

// Booklet gives the handout of a case as a document.
func Booklet(p plan.Plan, o Options) ([]byte, error) {
	title := "Handout for a " + p.Kind
	if t := oneLine(p.Title); t != "" {
		title += ": " + t
	}
	doc := pdf.New(title)
	doc.Dated(o.Date)
	if o.Black {
		doc.BlackOnly()
	}
	draw(doc, p, o, false)
	return doc.Bytes()
}

// Worksheet gives the empty worksheet for a case of the plan's kind, to be filled
// in by hand: the rule of every line, and room for its length. Of the plan's
// lengths only those of margins and clearances are shown, as usual ones.
func Worksheet(p plan.Plan, o Options) ([]byte, error) {
	doc := pdf.New("Worksheet for a " + p.Kind)
	doc.Dated(o.Date)
	if o.Black {
		doc.BlackOnly()
	}
	draw(doc, p, o, true)
	return doc.Bytes()
}

// draw draws the document.
func draw(on pages, p plan.Plan, o Options, blank bool) {
	if blank {
		p.Title = ""
	}
	b := &book{Options: o, plan: p, pages: on, looks: looksOf(o.Tinted), blank: blank}
	all := b.all()
	b.total = len(all)
	for i, f := range all {
		b.page = i + 1
		b.fill(f)
	}
}

// all lays out every page.
func (b *book) all() []filled {
	out := b.worksheetPages()
	if b.blank {
		return out
	}
	out = append(out, b.flow(append(b.before(), b.drawings()...))...)
	var blocks []block
	for i, s := range b.plan.Steps {
		k := b.stepBlock(i+1, s)
		if i == 0 {
			k.mark = "Steps"
		}
		blocks = append(blocks, k)
	}
	return append(out, b.flow(append(blocks, b.checks()))...)
}
