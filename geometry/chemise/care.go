package chemise

import (
	"forel/geometry/plan"
	"forel/geometry/stage"
)

// tools lists what to lay ready.
func tools() []string {
	return plan.Tools("bone folder with a thin edge, for the joints; brushes for glue and paste; damp cloth; a spacer as wide as a joint",
		"bookbinder's glue (a dispersion, such as PVA) for the boards; paste, or paste with glue, for the lining")
}

// care returns what to check of the finished chemise, and what to do about what is
// found (common practice, no source).
func (j Job) care() plan.Care {
	return plan.Care{
		Good: []stage.Say{
			plan.Say("The book lies in it without being pressed: %s of play in height, %s before the fore-edge, %s in thickness.", j.Clearance.Height, j.Clearance.Width, j.Clearance.Thickness),
			plan.Say("Every joint closes to a right angle and stays there by itself or with a light hand."),
			plan.Say("Closed, its covers are parallel to the book's and its corners square."),
			plan.Say("No board shows, no glue shows, no edge of the lining is loose."),
		},
		Bad: []stage.Say{
			plan.Say("A joint does not close: it is too narrow, or covering or lining bridges it. Damp the lining there, rub it down into the joint and close it before it dries."),
			plan.Say("The covers gape at the fore-edge: the spine is too narrow. Measure the book again and compare it with the worksheet; cut the boards again."),
			plan.Say("A board is hollow: it dried without a weight. Damp the hollow face lightly and dry it again between boards."),
			plan.Say("A corner is bare: the covering was cut too near to the board. Patch it with a scrap of the covering, grain alike."),
			plan.Say("The lining tears in a joint: it was laid straight over it. Take it out while it is damp, and lay another down into the joints."),
		},
	}
}

// load says what the chemise bears: a book stands on its own edges in it.
func (j Job) load() plan.Load { return plan.Load{Weights: []float64{j.Book().Weight}} }
