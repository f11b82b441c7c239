package box

import (
	"forel/geometry/plan"
	"forel/geometry/stage"
)

// measureChecks: paper strips and layers of board, before anything is cut (common
// practice, no source, as of the others).
func (j Job) measureChecks() []plan.Check {
	c := j.Chain()
	v := c.Drawn()
	v[trayBoard] += plan.Thicker
	lost := c.Left(c.Drawn())[nestHigh] - c.Left(v)[nestHigh]
	layers := plan.LayersMeasured("board of the trays", "box.board", j.Board, 0)
	layers.Fails = stage.Words("set box.board to a quarter of what four measure and print again")
	if lost > 1e-6 { // else the large tray follows the small one as measured, board and all
		layers.Fails = stage.Words("set box.board to a quarter of what four measure and print again: %s more in one layer takes %s from head to tail between the trays", plan.Thicker, lost)
	}
	return []plan.Check{
		{
			Name: "gauge strip", When: "before any board is cut",
			See: []stage.Say{
				stage.Words("the sleeve, folded at its marks and closed, slides over the book from the fore-edge, with %s to spare in height and %s in thickness", j.Clearance.Height-2*j.Cloth, j.Clearance.Thickness),
				plan.StripReaches(j.Clearance.Width - j.Cloth),
			},
			Fails: stage.Words("measure the book again and correct the job: nothing is cut yet"),
		},
		layers,
	}
}

// bareSmall: the book in the bare small tray.
func (j Job) bareSmall() plan.Check {
	return plan.Check{
		Name: "bare small tray", When: "when the boards of the small tray stand on the bench, held together by hand, before any glue",
		See: []stage.Say{
			stage.Words("the book pushed to the tail leaves %s at the head", j.Clearance.Height+2*j.Cloth),
			stage.Words("pushed against the fore-edge wall, the base reaches %s past its spine", j.Clearance.Width+j.Cloth),
			stage.Words("the rim stands %s above the book", j.Clearance.Thickness+j.Lining),
		},
		Fails: stage.Words("measure the book again and cut the boards again: everything that follows is cut for this tray"),
	}
}

// coveredSmall: the book in the covered small tray.
func (j Job) coveredSmall() plan.Check {
	return plan.Check{
		Name: "covered small tray", When: "when the small tray is covered and dry, before anything of the large tray is cut",
		See: []stage.Say{
			stage.Words("at the open end %s are left from head to tail beside the book", j.Clearance.Height-2*j.Cloth),
			stage.Words("in the corners at the fore-edge %s are left", j.Clearance.Width-j.Cloth),
			stage.Words("with its lining laid in loose, the rim stands %s above the book", j.Clearance.Thickness),
		},
		Fails: stage.Words("too small for the book, nothing that follows helps: make the small tray again. Too large, a pad of the difference on the wall or under the lining does"),
	}
}

// measuredSmall: the covered small tray under the ruler.
func (j Job) measuredSmall() plan.Check {
	s := j.covered(j.small())
	return plan.Check{
		Name: "measures of the small tray", When: "before anything of the large tray is cut",
		See: []stage.Say{
			stage.Words("over the cloth it measures %s from head to tail, the largest of three places: open end, middle, fore-edge", s.height),
			stage.Words("%s from the open edge to the fore-edge, %s from bench to rim", s.width, s.thickness),
		},
		Fails: stage.Words("type what you measured under [as_built] and print the rest anew: the large tray and the case follow by just as much"),
	}
}

// bareLarge: the bare large tray over the covered small one. s is the job as the small
// tray stands.
func bareLarge(s Job) plan.Check {
	return plan.Check{
		Name: "bare large tray over the small one", When: "when the boards of the large tray stand over the covered small tray, both on the bench, before any glue",
		See: []stage.Say{
			stage.Words("%s are left from head to tail, both ends together, and %s at the fore-edge", 4*s.Cloth+s.Room.Height, 2*s.Cloth+s.Room.Width),
			stage.Words("turned over, its base lies %s above the rim of the small tray", s.lidLining()+s.Room.Depth),
		},
		Fails: stage.Words("cut again: in height the base and the fore-edge wall, in width the base, head and tail wall, in depth the three walls"),
	}
}

// coveredLarge: the covered large tray over the small one.
func coveredLarge(s Job) plan.Check {
	return plan.Check{
		Name: "covered large tray over the small one", When: "when the large tray is covered and dry, before the case boards are cut",
		See: []stage.Say{
			stage.Words("from head to tail it plays %s at the open end and %s in the middle; at the fore-edge %s", s.Room.Height, s.Room.Height+2*s.Cloth, s.Room.Width),
			stage.Words("its rim stands on the bench all round"),
		},
		Fails: stage.Words("go on while %s are left in height and in width and nothing is pressed. More than %s too much: paste card inside, half on head and tail wall each, or all on the fore-edge wall. Too deep: a thicker lining in the large tray. Too little room, or a rim off the bench: cut the large tray again", Length(0.1), mostPlay),
	}
}

// caseOnTrays: the case boards on the nested pair.
func caseOnTrays(s Job) plan.Check {
	return plan.Check{
		Name: "case boards on the nested pair", When: "when case boards and spine are cut, before they are glued",
		See: []stage.Say{
			stage.Words("a board laid on the nested trays, flush at the spine, stands out %s at head, tail and fore-edge", s.Square),
			stage.Words("nested trays, two case boards and two layers of the case cloth, held together and measured, less four layers of the thicker of case cloth and hinge, are as thick as the spine is wide: %s", s.spine()),
		},
		Fails: stage.Words("cut the case boards from the nested pair as it is, never from the sheet: pair and square; cut the spine for what the stack measures"),
	}
}

// caseLaid: the boards on the case cloth.
func caseLaid(s Job) plan.Check {
	return plan.Check{
		Name: "boards on the case cloth", When: "when the three boards lie, before anything is turned in",
		See: []stage.Say{
			stage.Words("from fore-edge to fore-edge %s are measured, at the head and at the tail", s.across()),
			stage.Words("on every side %s or more of the cloth is left to turn in", s.turnIn()),
		},
		Fails: stage.Words("lift the boards while the glue is wet and lay them again"),
	}
}

// gluedUp: the trays on the case, laid open.
func gluedUp(s Job) plan.Check {
	return plan.Check{
		Name: "trays on the case, laid open", When: "when both trays are glued down, while the glue is wet",
		See: []stage.Say{
			stage.Words("from the open edge of one tray to that of the other %s are measured, at the head and at the tail", s.spine()+2*s.joint()),
			stage.Words("turned closed, the large tray goes over the small one by itself"),
		},
		Fails: stage.Words("lift the large tray at once, close the box and lay it down again"),
	}
}

// shutBox: the closed box.
func (c made) shutBox() plan.Check {
	s, o := c.stands, c.stands.outside()
	return plan.Check{
		Name: "closed box", When: "when hinge and linings are dry",
		See: []stage.Say{
			stage.Words("closed, it measures %s high, %s wide, %s thick; nothing rocks, the spine is square", o.height, o.width, o.thickness),
			stage.Words("inside, %s are left between the spine and the ends of the walls", max(0, c.proof.closed.offSpine())),
		},
		Fails: stage.Words("rub the pleats at the ends of the walls and the joints down with a folder while the cloth is damp, close the box and dry it under a weight; where the joint of %s is still too narrow, the case is made again with a wider one", s.joint()),
	}
}
