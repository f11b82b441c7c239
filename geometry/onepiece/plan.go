package onepiece

import "forel/geometry/plan"

// PieceName is the name of the one piece.
const PieceName = "case blank"

// Make works the case out and proves it. An error is of type job.Problems.
func (j *Job) Make() (plan.Plan, error) {
	c, err := Make(*j)
	if err != nil {
		return plan.Plan{}, err
	}
	return c.Plan(), nil
}

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
		Materials: []plan.Material{{Name: "card", Thickness: j.Card.Thickness}},
		Proof:     c.Proof.Proof,
		Remarks:   []plan.Remark{plan.Say("width runs across: a side, the spine, the other side; height from head to tail with the flaps")},
	}
	for _, s := range c.Suspects {
		p.Warnings = append(p.Warnings, s.Sentence())
	}
	if d := j.Book().Taper(); d > 0 {
		p.Remarks = append(p.Remarks, plan.Say("the book is %s thinner at one edge: there it has %s of play", d, d+j.Clearance.Thickness))
	}
	for _, s := range c.Steps() {
		p.Cutting = append(p.Cutting, plan.Say(s))
	}
	return p
}
