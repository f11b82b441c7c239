package onepiece

import "forel/geometry/plan"

// PieceName is the name of the one piece.
const PieceName = "case blank"

// Plan gives all that is rendered of the case.
func (c Case) Plan() plan.Plan {
	j := c.Job
	book := j.contents()
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
		Proof:     c.Proof.Proof,
		Materials: []plan.Material{{Name: "card", Thickness: j.Card.Thickness, Fitted: true}},
		Runs:      "width runs across both sides and the spine, height from head to tail with the flaps",
		Tools:     tools(),
		Worksheet: c.worksheet(),
		Steps:     c.steps(),
		Finished:  c.care(),
		Chain:     j.chain(),
		Gauges:    j.gauges(),
		Load:      j.load(),
	}
	for _, s := range c.Suspects {
		p.Warnings = append(p.Warnings, s.Sentence())
	}
	if d := j.Book().Taper(); d > 0 {
		p.Remarks = append(p.Remarks, plan.Say("the book is %s thinner at one edge: there it has %s of play", d, d+j.Clearance.Thickness))
	}
	p.Remarks = append(p.Remarks, plan.Say("left and right are as you look into the mouth with the head up"))
	p.Facts = []plan.Fact{
		plan.SizeFact("contents", p.Content, "wide", p.Contents),
		plan.SizeFact("cavity", "room inside", "deep", c.Cavity),
		plan.SizeFact("outside", "outside", "deep", c.Outside),
		{
			Key: "mouth_clearance", Name: "left at the mouth", Text: "height %s (in the corners %s), thickness %s",
			Parts: []plan.Part{{Key: "height", Length: p.Mouth.Height}, {Key: "height_corners", Length: p.Mouth.HeightCorners}, {Key: "thickness", Length: p.Mouth.Thickness}},
		},
		{
			Key: "fit_check", Name: "fit check, a side beyond the book", Text: "%s at the fore-edge, %s at head or tail",
			Parts: []plan.Part{{Key: "fore_edge", Length: p.Fit.ForeEdge}, {Key: "head_or_tail", Length: p.Fit.HeadOrTail}},
		},
	}
	return p
}
