package onepiece

import "forel/geometry/plan"

// remedies returns what can be done where the book does not fit. Work and limits are
// common practice, no source.
func (j Job) remedies() []plan.Remedy {
	h, d, t := plan.Height, plan.Depth, plan.Thickness
	return append(append(plan.LineSides(t), plan.PadWalls(h, "flaps at the tail", "flaps at head and tail")...),
		plan.StartAgain("the case", 90, []string{string(j.Card.material())}, h, d, t))
}
