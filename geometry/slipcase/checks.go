package slipcase

import (
	"math"

	"forel/geometry/job"
	"forel/geometry/plan"
	"forel/geometry/stage"
)

// whose names what is put into the case: the book, or of several volumes the
// one that counts, such as the tallest; "" for all of them.
func (j Job) whose(which string) string {
	switch {
	case len(j.Books) < 2:
		return j.Whose(0)
	case which == "":
		return "the volumes"
	}
	return "the " + which + " volume"
}

// gaugeCheck: the paper strips, before anything is cut.
func (j Job) gaugeCheck() plan.Check {
	m, place := j.Mouth(), "mouth"
	if m.Thickness.Near(j.Clearance.Thickness) {
		place = "body"
	}
	sleeve := stage.Words("the sleeve as wide as the "+place+", folded at its marks and closed, slides over "+j.whose("")+" from the fore-edge, with %s to spare in height and %s in thickness", m.Height, m.Thickness)
	if j.Dividers() > 0 {
		sleeve = stage.Words("each sleeve, folded at its marks and closed, slides over its volume from the fore-edge")
	}
	fails := stage.Words("measure " + j.whose("") + " again and correct the job: nothing is cut yet")
	if j.Wears != "" {
		fails = plan.MeasureContent(j.Common, "slipcase")
	}
	return plan.Check{
		Name: "gauge strip", When: "before any board is cut",
		See:   []stage.Say{sleeve, plan.StripReaches(j.Clearance.Width)},
		Fails: fails,
	}
}

// thicknessCheck: several layers of board under the caliper.
func (j Job) thicknessCheck() plan.Check {
	thicker := j
	thicker.Board.Thickness += plan.Thicker
	c := plan.LayersMeasured("board", "board.thickness", "of the height", j.Board.Thickness, thicker.Outside().Height-j.Outside().Height)
	c.Fails.Text += "; once it is measured say so: board.known = \"measured\""
	return c
}

// cutCheck: the pieces against each other.
func (j Job) cutCheck() plan.Check {
	out, between := j.Outside(), j.Between()
	c := plan.Check{
		Name: "cut pieces", When: "when the board is cut, before it is lined or glued",
		See: []stage.Say{
			stage.Words("the three walls stood on edge side by side are level, %s wide", between.Thickness),
			stage.Words("both sides and the spine wall stood together are level, %s high", out.Height),
			stage.Words("the diagonals of a side are alike, %s", Length(math.Hypot(out.Width.MM(), out.Height.MM()))),
		},
		Fails: stage.Words("trim pieces that belong together at one setting, or cut them again; a piece out of square is cut again"),
	}
	if j.Dividers() > 0 {
		c.See = append(c.See, stage.Words("a divider fits between the ruled lines of head and tail wall on a side, %s", j.Cavity().Height))
	}
	return c
}

// least returns the clearance that leaves the mouth on its limit: no more room
// than is called tight; in depth, none.
func (j Job) least() job.Clearance {
	m := j.Mouth()
	return job.Clearance{
		Height:    j.Clearance.Height - m.Height + j.Limits.Tight,
		Thickness: j.Clearance.Thickness - m.Thickness + j.Limits.Tight,
	}
}

// dryFit: the book on a side.
func (j Job) dryFit() plan.Check {
	f, least := j.Fit(), j.least()
	return plan.Check{
		Name: "stacked dry fit", When: "when the boards are cut, before they are lined or glued",
		See: []stage.Say{
			j.pileSee(),
			stage.Words("with "+j.whose("deepest")+" on a side, its spine flush with the mouth edge, the side shows %s past the fore-edge, at least %s", f.ForeEdge, f.ForeEdge-j.Clearance.Width+least.Width),
			stage.Words("with the head of "+j.whose("tallest")+" flush with the head edge of the side, the side shows %s past the tail, at least %s", f.HeadOrTail, f.HeadOrTail-j.Clearance.Height+least.Height),
		},
		Fails: stage.Words("cut again, larger by what is missing: all three walls where it is missing in thickness, sides and spine wall past the tail, sides with head and tail wall past the fore-edge"),
	}
}

// pileSee returns what shows of the spine wall above the book, or above all volumes
// and the dividers between them, when it stands on edge beside them on a side.
func (j Job) pileSee() stage.Say {
	pile := Length(j.Dividers()) * j.Board.Thickness // not lined yet
	for _, b := range j.Books {
		pile += b.Thick()
	}
	shows := j.Between().Thickness - pile
	what := j.whose("")
	switch {
	case j.Dividers() > 0:
		what = "the pile of volumes and dividers"
	case len(j.Books) > 1:
		what = "the pile of volumes"
	}
	return stage.Words("the spine wall on its long edge on a side stands %s above "+what+" beside it, at least %s", shows, shows-Length(j.compartments())*(j.Clearance.Thickness-j.least().Thickness))
}

// dividerCheck: a divider and what lies beside it, while its glue is wet.
func (j Job) dividerCheck() plan.Check {
	return plan.Check{
		Name: "dividers", When: "when a divider stands between the walls, before its glue sets and before the second side goes on",
		See: []stage.Say{
			stage.Words("it lies between its ruled lines on all three walls, %s above the volume under it, at least %s", j.Clearance.Thickness, j.least().Thickness),
			stage.Words("the volume under it can be drawn out at the mouth and slid in again without force"),
		},
		Fails: stage.Words("move the divider while the glue is wet; trim one that is too high at its head, or cut one that is too low anew"),
	}
}

// wallsCheck: the book between the walls on the first side, while the glue is wet.
func (j Job) wallsCheck() plan.Check {
	c, least := j.Clearance, j.least()
	more := 2 * j.liningAfter()
	walls := plan.Check{
		Name: "three walls on one side", When: "when the walls stand on the first side, before the glue sets and before the second side goes on",
		See: []stage.Say{
			stage.Words(j.whose("tallest")+" laid in, fore-edge against the spine wall, has %s to spare from head to tail, at least %s", c.Height+more, least.Height+more),
			stage.Words("the spine of "+j.whose("deepest")+" lies %s within the mouth edge of the side", c.Width+more/2),
		},
		Fails: stage.Words("move the walls while the glue is wet, or take them off and cut anew: when the second side is on little can be mended"),
	}
	what := j.whose("")
	if j.Dividers() > 0 {
		what = "the volume on the last divider"
		walls.Name = "walls and dividers on one side"
		walls.When = "when walls and dividers stand on the first side, before the glue sets and before the second side goes on"
		walls.Fails = stage.Words("move walls and dividers while the glue is wet, or take them off and cut anew: when the second side is on little can be mended")
	}
	walls.See = append(walls.See, stage.Words("a straightedge across the walls clears "+what+" by %s, at least %s", c.Thickness+more, least.Thickness+more))
	return walls
}

// bareCheck: the book in the carcass before it is covered.
func (j Job) bareCheck() plan.Check {
	where := "on both sides"
	if !j.Mouth().Height.Near(j.Clearance.Height) {
		where = "on head and tail wall and on both sides"
	}
	return plan.Check{
		Name: "bare carcass", When: "when the carcass is dry, before it is covered",
		See:   []stage.Say{stage.Words(j.whose("") + " can be slid in and out, with offcuts of all that will be turned in laid at the mouth, " + where)},
		Fails: stage.Words("take thinner cloth and paper, with their thickness in the job; if that is not enough make a new carcass, and do not force " + j.whose("")),
	}
}

// finishedCheck: the book in the finished case.
func (j Job) finishedCheck() plan.Check {
	return plan.Check{
		Name: "finished case", When: "when the covering is dry, after a night under a light weight",
		See:   []stage.Say{stage.Words(j.whose("") + " can be slid in and out without being pressed")},
		Fails: stage.Words("too tight: let it dry longer, then make a new case rather than press " + j.whose("") + " in; too loose: line the sides with thin paper"),
	}
}
