package chemise

import (
	"forel/geometry/job"
	"forel/geometry/plan"
	"forel/geometry/stage"
)

// measureChecks: paper strips and layers of board, before anything is cut (common
// practice, no source, as of the others).
func (j Job) measureChecks() []plan.Check {
	c := j.Chain()
	return []plan.Check{
		{
			Name: "gauge strip", When: "before any board of the chemise is cut",
			See: []stage.Say{
				stage.Words("the sleeve, folded at its marks and closed, slides over the book from the fore-edge, with %s to spare in height and %s in thickness", j.Clearance.Height, j.Clearance.Thickness),
				plan.StripReaches(j.Clearance.Width),
			},
			Fails: stage.Words("measure the book again and correct the job: nothing is cut yet"),
		},
		plan.LayersMeasured("thin board", "chemise.board", "of the room in thickness", j.Board, c.TakenFrom(len(c.Gaps)-1, boardThick)),
	}
}

// cutCheck: the boards against each other.
func (j Job) cutCheck() plan.Check {
	return plan.Check{
		Name: "cut boards", When: "when they are cut, before they are glued",
		See:   []stage.Say{stage.Words("all of them stood on edge side by side are level, %s high", j.room().Height)},
		Fails: stage.Words("trim them at one setting, or cut them again"),
	}
}

// jointCheck: a joint tried on a strip.
func (j Job) jointCheck() plan.Check {
	return plan.Check{
		Name: "joint tried on a strip", When: "before the covering is cut",
		See: []stage.Say{
			stage.Words("two scraps of the thin board, glued %s apart on a strip of the covering that is turned in and lined like the chemise, close to a right angle without force", j.joint()),
		},
		Fails: stage.Words("give chemise.joint %s more and print again", job.Round(j.Unit, 0.5, 1./64)),
	}
}

// laidCheck: the boards on the covering.
func (j Job) laidCheck() plan.Check {
	return plan.Check{
		Name: "boards on the covering", When: "when all boards lie, before the glue is dry",
		See: []stage.Say{
			stage.Words("from the left end of the boards to the right %s are measured, at the head and at the tail", j.laid().Across),
			stage.Words("at every end %s or more of the covering is left to turn in", j.turnIn()),
		},
		Fails: stage.Words("lift the boards while the glue is wet and lay them again"),
	}
}

// closedCheck: the chemise round its book.
func (j Job) closedCheck() plan.Check {
	h, w, spine, fore := j.outsides()
	see := []stage.Say{stage.Words("closed, with the book in it, it measures %s high, %s deep, %s thick", h, w, fore)}
	if !spine.Near(fore) {
		see[0] = stage.Words("closed, with the book in it, it measures %s high, %s deep, %s thick at the spine and %s at the fore-edge", h, w, spine, fore)
	}
	see = append(see, stage.Words("the covers lie flat on the book and spring back by no more than they did open"))
	return plan.Check{
		Name: "closed chemise", When: "when the chemise is dry, before a slipcase or box is cut for it",
		See:   see,
		Fails: stage.Words("make the slipcase or box for what you measure: give these measures as its book's, the largest of several places"),
	}
}
