package onepiece

import (
	"strings"

	"forel/geometry/plan"
	"forel/geometry/slipcase"
)

// PieceName is the name of the one piece.
const PieceName = "case blank"

// Plan gives all that is rendered of the case.
func (c Case) Plan() plan.Plan {
	j := c.Job
	book := plan.Size{Height: j.Book.Height.Largest(), Width: j.Book.Width.Largest(), Thickness: j.Book.Thick()}
	p := plan.Plan{
		Title:     j.Title,
		Kind:      "one-piece slipcase of card",
		Content:   "book",
		Pieces:    c.Pieces,
		Contents:  book,
		Cavity:    c.Cavity,
		Outside:   c.Outside,
		Fit:       plan.Fit{ForeEdge: c.Cavity.Width - book.Width, HeadOrTail: c.Outside.Height - book.Height},
		Mouth:     plan.Mouth{Height: j.Clearance.Height, HeightCorners: j.Clearance.Height, Thickness: j.Clearance.Thickness},
		Materials: []plan.Material{{Name: "card", Thickness: j.Card.Thickness}},
		Proof:     c.Proof.Proof,
		Remarks:   []plan.Remark{plan.Say("width runs across: a side, the spine, the other side; height from head to tail with the flaps")},
	}
	for _, s := range c.Suspects {
		p.Warnings = append(p.Warnings, said(s)+"; "+s.Right)
	}
	if d := j.Book.Taper(); d > 0 {
		p.Remarks = append(p.Remarks, plan.Say("the book is %s thinner at one edge: there it has %s of play", d, d+j.Clearance.Thickness))
	}
	for _, s := range c.Steps() {
		p.Cutting = append(p.Cutting, plan.Say(s))
	}
	return p
}

// said gives what is wrong in words that stand without the key: "the width of
// the book: greater than the height".
func said(p slipcase.Problem) string {
	thing, measure, ok := strings.Cut(p.Key, ".")
	if !ok {
		return p.Wrong
	}
	return "the " + strings.ReplaceAll(measure, "_", " ") + " of the " + thing + ": " + p.Wrong
}
