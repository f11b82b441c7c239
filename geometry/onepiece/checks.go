package onepiece

import (
	"forel/geometry/plan"
	"forel/geometry/stage"
)

// measureChecks: paper strips and layers of card, before anything is cut (common
// practice, no source, as of the others).
func (j Job) measureChecks() []plan.Check {
	c := j.Clearance
	thicker := j
	thicker.Card.Thickness += plan.Thicker
	return []plan.Check{
		{
			Name: "gauge strip", When: "before the " + j.Card.name() + " is cut",
			See: []stage.Say{
				stage.Words("the sleeve, folded at its marks and closed, slides over "+j.Whose(0)+" from the fore-edge, with %s to spare in height and %s in thickness", c.Height, c.Thickness),
				plan.StripReaches(c.Width),
			},
			Fails: plan.MeasureContent(j.Common, "slipcase"),
		},
		plan.LayersMeasured(j.Card.name(), "card.thickness", "of the height", j.Card.Thickness, thicker.Scored().Height-j.Scored().Height),
	}
}

// stripCheck: the allowance of a fold, tried on a strip.
func (j Job) stripCheck() plan.Check {
	w := j.Card.words()
	return plan.Check{
		Name: "folded strip", When: "before the blank is cut",
		See:   []stage.Say{stage.Words("a strip of the "+w.name+", "+w.tried+" and folded twice, %s apart, is %s wide inside", j.Scored().Thickness, j.Cavity().Thickness)},
		Fails: stage.Words("wider inside: make card.bend smaller; narrower: larger; then print again"),
	}
}

// blankCheck: the book in the blank before it is pasted.
func (j Job) blankCheck() plan.Check {
	c := j.Clearance
	w := j.Card.words()
	return plan.Check{
		Name: "folded blank", When: "when the blank is " + w.scored + ", cut and folded, before it is glued",
		See: []stage.Say{stage.Words("with the flaps held in by hand "+j.Whose(0)+" slides in: %s to spare in height, %s in thickness; with its fore-edge against the spine panel its spine lies up to %s within the mouth",
			c.Height, c.Thickness, c.Width)},
		Fails: stage.Words(w.score + " a new blank: once it is glued nothing can be mended"),
	}
}

// finishedCheck: the book in the finished case.
func (j Job) finishedCheck() plan.Check {
	return plan.Check{
		Name: "finished case", When: "when the glue is dry",
		See:   []stage.Say{stage.Words(j.Whose(0) + " slides in and out without being pressed")},
		Fails: stage.Words("too tight: make a new case with more clearance, and do not press " + j.Whose(0) + " in; too loose: line the sides with thin paper"),
	}
}
