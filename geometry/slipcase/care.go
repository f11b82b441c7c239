package slipcase

import (
	"forel/geometry"
	"forel/geometry/plan"
	"forel/geometry/stage"
	"forel/geometry/wording"
)

// tools lists what to lay ready.
func (c Case) tools() []string {
	glue := "bookbinder's glue (a dispersion, such as PVA) for board; paste, or paste with glue, for paper"
	for _, p := range c.Pieces {
		if p.Material == geometry.Cloth {
			glue = "bookbinder's glue (a dispersion, such as PVA) for board and cloth; paste, or paste with glue, for paper"
		}
	}
	return append(plan.Tools("bone folder; brushes for glue and paste; damp cloth", glue),
		"a back-stop: a straight block with a true right angle, or two boards clamped at one")
}

// care returns what to check of the finished case, and what to do when a check
// fails (common practice, no source).
func (c Case) care() plan.Care {
	j, mouth := c.Job, c.Stands.Mouth()
	what, spine, each := wording.Capital(j.Whose(0))+" goes", "Its spine lies flush with the mouth, or a hair within.", ""
	sticks := wording.Capital(j.Whose(0)) + " sticks"
	if len(j.Books) > 1 {
		what, spine = "The books go", "The spine of the deepest lies flush with the mouth, or a hair within."
		sticks = "A book sticks"
		if j.Dividers() > 0 {
			each = " for each"
		}
	}
	shows, lifts := "No board shows, no glue shows, no edge is loose.", "Cloth or paper lifts"
	switch j.Covering {
	case SidesOnly:
		shows, lifts = "The papers lie evenly, no glue shows, no edge is loose.", "Paper lifts"
	case AllPaper:
		lifts = "Paper lifts"
	case AllCloth:
		lifts = "Cloth lifts"
	}
	return plan.Care{
		Good: []stage.Say{
			plan.Say(what+" in without force: at the mouth, the tightest place, there is %s of play in height and %s in thickness"+each+".", mouth.Height, mouth.Thickness),
			j.limits().Sentence(),
			plan.Say(spine),
			plan.Say("Corners are square: both diagonals of a side are the same length."),
			plan.Say(shows),
			plan.Say("Inside, no tab or turn-in stands up where " + j.inCase() + " would catch it."),
		},
		Bad: []stage.Say{
			plan.Say(sticks + " all the way: the case is too small. Measure the room inside and compare it with the worksheet: a wrong reading, a thicker board than measured, or a scaled print. The boards must be cut again."),
			plan.Say("It sticks only at the mouth: covering is turned in there. Let it dry fully, rub the turn-ins down hard with a folder, pare a thick corner."),
			plan.Say("It is too loose: line the inside with one more paper, on one side only at first."),
			plan.Say("A side is hollow: it dried without a weight. Damp the hollow face lightly and dry it again between boards."),
			plan.Say(lifts + ": it had too little adhesive at the edge. Lift it, paste or glue it again, rub it down, weight it."),
		},
	}
}
