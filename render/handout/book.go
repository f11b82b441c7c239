package handout

import "forel/render/pdf"

// book is the document being made.
type book struct {
	Options
	Subject
	pages
	palette palette
	blank   bool   // the empty worksheet
	rowTall Length // of a row of the list of pieces
	page    int
	total   int
}

// Booklet gives the handout of a case as a document.
func Booklet(s Subject, o Options) ([]byte, error) {
	title := "Slipcase handout"
	if t := oneLine(s.plan.Title); t != "" {
		title += ": " + t
	}
	doc := pdf.New(title)
	doc.Dated(o.Date)
	if o.Black {
		doc.BlackOnly()
	}
	draw(doc, s, o, false)
	return doc.Bytes()
}

// Worksheet gives the empty worksheet for a case of the subject's kind, to be
// filled in by hand: the rule of every line, and room for its length. Of the
// subject's lengths only those of margins and clearances are shown, as usual
// ones.
func Worksheet(s Subject, o Options) ([]byte, error) {
	doc := pdf.New("Slipcase worksheet: " + s.plan.Kind)
	doc.Dated(o.Date)
	if o.Black {
		doc.BlackOnly()
	}
	draw(doc, s, o, true)
	return doc.Bytes()
}

// draw draws the document.
func draw(on pages, s Subject, o Options, blank bool) {
	if blank {
		s.plan.Title = ""
	}
	b := &book{Options: o, Subject: s, pages: on, palette: paletteOf(o.Tinted), blank: blank}
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
	for i, s := range b.allSteps() {
		k := b.stepBlock(i+1, s)
		if i == 0 {
			k.mark = "Steps"
		}
		blocks = append(blocks, k)
	}
	return append(out, b.flow(append(blocks, b.checks()))...)
}

// allSteps gives the steps of the case, of whatever kind.
func (b *book) allSteps() []step {
	if b.card != nil {
		return b.cardSteps(cardModelOf(*b.card, b.palette))
	}
	return b.steps(modelOf(*b.boards, b.palette))
}
