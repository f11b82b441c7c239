package handout

import (
	"forel/geometry/plan"
	"forel/geometry/wording"
	"forel/render/document"
	"forel/render/staging"
)

// book is the document being made.
type book struct {
	*document.Document
	plan    plan.Plan
	looks   staging.Looks
	blank   bool   // the empty worksheet
	rowTall Length // of a row of the list of pieces
}

// Booklet returns the handout of a case as a document.
func Booklet(p plan.Plan, o Options) ([]byte, error) { return draw(p, o, false).PDF() }

// Drawings returns the pages of the handout as drawings, to look at.
func Drawings(p plan.Plan, o Options) [][]byte { return draw(p, o, false).Drawings() }

// Worksheet returns the empty worksheet for a case of the plan's kind, to be filled
// in by hand: the rule of every line, and room for its length. Of the plan's
// lengths only those of margins and clearances are shown, as usual ones.
func Worksheet(p plan.Plan, o Options) ([]byte, error) { return draw(p, o, true).PDF() }

// draw draws the document.
func draw(p plan.Plan, o Options, blank bool) *document.Document {
	d := &document.Document{Options: o.Options, Title: "Handout for a " + p.Kind, Foot: "Figures, not at true size: cut from the templates, not from this page."}
	if blank {
		p.Title = ""
		d.Title, d.Foot = "Worksheet for a "+p.Kind, "Fill in with a pencil; cut from patterns, not from this page."
	}
	if d.Running = wording.OneLine(p.Title); d.Running != "" {
		d.Title += ": " + d.Running
	}
	b := &book{Document: d, plan: p, looks: looksOf(o.Tinted), blank: blank}
	d.Frame = b.notes
	b.worksheet()
	switch {
	case blank:
		return d
	case o.Short:
		b.short()
		return d
	}
	b.Flow(nil, append(b.before(), b.drawings()...)...)
	var blocks []document.Block
	for i, st := range b.plan.Steps {
		blocks = append(blocks, b.stepBlocks(i+1, st)...)
	}
	blocks[0].Bookmark = "Steps"
	b.Flow(nil, append(blocks, b.checks()...)...)
	return d
}
