package onepiece

import (
	"forel/geometry/plan"
	"forel/geometry/stage"
	"forel/geometry/wording"
)

// tools lists what to lay ready.
func (c Card) tools() []string {
	return plan.Tools(c.words().folder+"; brush for glue; damp cloth", "bookbinder's glue (a dispersion, such as PVA)")
}

// care returns what to check of the finished case, and what to do when a check
// fails (common practice, no source).
func (c Case) care() plan.Care {
	w := c.Job.Card.words()
	return plan.Care{
		Good: []stage.Say{
			plan.Say(wording.Capital(c.Job.Whose(0))+" goes in without force: it has %s of play in height and %s in thickness.", c.Job.Clearance.Height, c.Job.Clearance.Thickness),
			c.Job.limits().Sentence(),
			plan.Say("Its spine lies flush with the mouth, or a hair within."),
			plan.Say("Corners are square: both diagonals of a side are the same length."),
			plan.Say("At head and tail the spine flap and the outer flap lie flat and meet along their slanting line; no glue shows, no edge is loose."),
			plan.Say(w.whole),
			plan.Say("Inside, the inner flaps lie flat: no edge stands up where " + c.Job.Whose(0) + " would catch it."),
		},
		Bad: append([]stage.Say{
			plan.Say(wording.Capital(c.Job.Whose(0)) + " sticks all the way: the case is too small. Measure the room inside and compare it with the worksheet: a wrong reading, " + w.name + " thicker than measured, folds that take more than was allowed for them (card.bend in the job), or a scaled print. Mend the job, print again, " + w.score + " and cut a new blank."),
			plan.Say("It sticks only at the mouth: a side leans in, or an inner flap stands up at its mouth edge. Rub the fold down with a folder; glue the flap again and press it flat."),
			plan.Say("It is too loose: line one side inside with paper."),
			plan.Say("A side bulges: a flap is too long or was pushed in. Ease the flap while the glue is fresh."),
			plan.Say("A flap lifts: it had too little glue at its end. Lift it, glue it again, weight it."),
		}, w.mended...),
	}
}
