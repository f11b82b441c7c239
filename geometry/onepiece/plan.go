package onepiece

import (
	"forel/geometry"
	"forel/geometry/plan"
)

// PieceName is the name of the one piece.
const PieceName = "case blank"

// Named lists the keys for what its material is called.
var Named = []plan.Named{{Key: "card.name", Material: geometry.Card}, {Key: "card.name", Material: geometry.Corrugated}}

// Plan returns all that is rendered of the case.
func (c Case) Plan() plan.Plan {
	j := c.Job
	book := j.Book().Size()
	p := plan.Plan{
		Title:     j.Title,
		Kind:      "one-piece slipcase of " + j.Card.name(),
		Content:   "book",
		Pieces:    c.Pieces,
		Shows:     "the case seen from its mouth: bare " + j.Card.name() + ", without a covering",
		Proof:     c.Proof.Proof,
		Materials: []plan.Material{{Of: j.Card.material(), Thickness: j.Card.Thickness, Grammage: j.Card.Grammage, Fitted: true}},
		Runs:      "width runs across both sides and the spine, height from head to tail with the flaps",
		Tools:     j.Card.tools(),
		Worksheet: c.worksheet(),
		Steps:     c.steps(),
		Finished:  c.care(),
		Chain:     j.Chain(),
		Gauges:    j.gauges(),
		Load:      j.load(),
		Warnings:  j.suspects().Sentences(),
	}
	if j.Wears != "" {
		p.Content += " in its " + j.Wears
	}
	if d := j.Book().Taper(); d > 0 {
		p.Remarks = append(p.Remarks, plan.Say("the book is %s thinner at one edge: there it has %s of play", d, d+j.Clearance.Thickness))
	}
	if j.Card.Kind == Corrugated {
		p.Remarks = append(p.Remarks, plan.Say("the flutes run from head to tail in both sides and the spine, so that these stand up to weight; the folds at head and tail lie across them, those beside the spine along them"))
	}
	p.Remarks = append(p.Remarks, plan.Say("left and right are as you look into the mouth with the head up"))
	p.Facts = []plan.Fact{
		plan.SizeFact(plan.Contents, p.Content, "wide", book),
		plan.SizeFact("cavity", "room inside", "deep", j.Cavity()),
		plan.SizeFact(plan.Outside, "outside", "deep", j.Outside()),
		{
			Key: "mouth_clearance", Name: "left at the mouth", Text: "height %s (in the corners %s), thickness %s",
			Parts: []plan.Part{{Key: "height", Length: j.Clearance.Height}, {Key: "height_corners", Length: j.Clearance.Height}, {Key: "thickness", Length: j.Clearance.Thickness}},
		},
		{
			Key: "fit_check", Name: "fit check, the book on the left side of the blank, its spine at the mouth edge", Text: "%s from its fore-edge to the spine score, %s to spare between head score and tail score",
			Parts: []plan.Part{{Key: "fore_edge", Length: j.Scored().Width - book.Width}, {Key: "head_or_tail", Length: j.Scored().Height - book.Height}},
		},
	}
	return p
}
