package handout

import (
	"forel/geometry/plan"
	"forel/geometry/wording"
	"forel/geometry/work"
	"forel/render/document"
	"forel/render/figure"
	"forel/render/staging"
)

// doc is the document being made.
type doc struct {
	*document.Document
	plan  plan.Plan
	looks staging.Looks
	takes work.Times
	blank bool // the empty worksheet
	tight bool // four pages are to do
}

// Document draws the handout of a case.
func Document(p plan.Plan, o Options) *document.Document { return draw(p, o, false) }

// Worksheet draws the empty worksheet for a case of the plan's kind, to be filled
// in by hand: the rule of every line, and room for its length. Of the plan's
// lengths only those of margins and clearances are shown, as usual ones.
func Worksheet(p plan.Plan, o Options) *document.Document { return draw(p, o, true) }

// draw draws the document.
func draw(p plan.Plan, o Options, blank bool) *document.Document {
	pages := &document.Document{Options: o.Options, Title: "Handout for a " + p.Kind, Foot: "Figures, not at true size: cut from the templates, not from this page."}
	if blank {
		p.Title = ""
		pages.Title, pages.Foot = "Worksheet for a "+p.Kind, "Fill in with a pencil; cut from templates, not from this page."
	}
	pages.Running = wording.OneLine(p.Title)
	d := &doc{Document: pages, plan: p, looks: figure.Looks(o.Tinted), takes: o.times(), blank: blank, tight: o.Short && !blank}
	if !o.Short || blank { // there is room for notes
		pages.Frame = d.notes
	}
	d.worksheet()
	switch {
	case blank:
		return pages
	case o.Short:
		d.short()
		return pages
	}
	d.Flow(nil, append(d.before(), d.drawings()...)...)
	var blocks []document.Block
	for i, st := range d.plan.Steps {
		blocks = append(blocks, d.stepBlocks(i+1, st)...)
	}
	blocks[0].Bookmark = "Steps"
	d.Flow(nil, append(blocks, d.checks()...)...)
	return pages
}
