package handout

import (
	"forel/geometry/wording"
	"forel/render/document"
)

// book is the document being made.
type book struct {
	*document.Document
	Subject
	palette palette
	blank   bool   // the empty worksheet
	rowTall Length // of a row of the list of pieces
}

// Booklet returns the handout of a case as a document.
func Booklet(s Subject, o Options) ([]byte, error) { return draw(s, o, false).PDF() }

// Worksheet returns the empty worksheet for a case of the subject's kind, to be
// filled in by hand: the rule of every line, and room for its length. Of the
// subject's lengths only those of margins and clearances are shown, as usual
// ones.
func Worksheet(s Subject, o Options) ([]byte, error) { return draw(s, o, true).PDF() }

// draw draws the document.
func draw(s Subject, o Options, blank bool) *document.Document {
	d := &document.Document{Options: o.Options, Title: "Slipcase handout", Foot: "Figures, not at true size: cut from the templates, not from this page."}
	if blank {
		s.plan.Title = ""
		d.Title, d.Foot = "Slipcase worksheet: "+s.plan.Kind, "Fill in with a pencil; cut from patterns, not from this page."
	}
	if d.Running = wording.OneLine(s.plan.Title); d.Running != "" {
		d.Title += ": " + d.Running
	}
	b := &book{Document: d, Subject: s, palette: paletteOf(o.Tinted), blank: blank}
	d.Frame = b.notes
	b.worksheet()
	if blank {
		return d
	}
	b.Flow(nil, append(b.before(), b.drawings()...)...)
	var blocks []document.Block
	for i, st := range b.allSteps() {
		blocks = append(blocks, b.stepBlock(i+1, st))
	}
	blocks[0].Bookmark = "Steps"
	b.Flow(nil, append(blocks, b.checks()...)...)
	return d
}

// allSteps returns the steps of the case, of whatever kind.
func (b *book) allSteps() []step {
	if b.card != nil {
		return b.cardSteps(cardModelOf(*b.card, b.palette))
	}
	return b.steps(modelOf(*b.boards, b.palette))
}
