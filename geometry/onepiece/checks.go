package onepiece

import (
	"forel/geometry/plan"
	"forel/geometry/stage"
)

// bench returns what is tried at the bench, in the order it is done (common
// practice, no source).
func (j Job) bench() []plan.Check {
	in, c := j.Cavity(), j.Clearance
	thicker := j
	thicker.Card.Thickness += plan.Thicker
	return []plan.Check{
		{
			Name: "gauge strip", When: "before the card is cut",
			See: []stage.Say{
				stage.Words("the sleeve, folded at its marks and closed, slides over the book from the fore-edge, with %s to spare in height and %s in thickness", c.Height, c.Thickness),
				plan.StripReaches(c.Width),
			},
			Fails: stage.Words("measure the book again and correct the job: nothing is cut yet"),
		},
		plan.LayersMeasured("card", "card.thickness", j.Card.Thickness, thicker.Scored().Height-j.Scored().Height),
		{
			Name: "folded strip", When: "before the blank is cut",
			See:   []stage.Say{stage.Words("a strip of the card scored and folded twice, %s apart, is %s wide inside", j.Scored().Thickness, in.Thickness)},
			Fails: stage.Words("wider inside: make card.bend smaller; narrower: larger; then print again"),
		},
		{
			Name: "folded blank", When: "when the blank is scored, cut and folded, before it is pasted",
			See: []stage.Say{stage.Words("with the flaps held in by hand the book slides in: %s to spare in height, %s in thickness, and its fore-edge lies %s behind the mouth",
				c.Height, c.Thickness, c.Width)},
			Fails: stage.Words("score a new blank: once it is pasted nothing can be mended"),
		},
		{
			Name: "finished case", When: "when the paste is dry",
			See:   []stage.Say{stage.Words("the book slides in and out without being pressed")},
			Fails: stage.Words("too tight: make a new case with more clearance, and do not press the book in; too loose: line the sides with thin paper"),
		},
	}
}
