package box

import (
	"math"

	"forel/geometry/plan"
	"forel/geometry/stage"
)

// measureChecks: paper strips and layers of board, before anything is cut (common
// practice, no source, as of the others).
func (j Job) measureChecks() []plan.Check {
	return []plan.Check{
		{
			Name: "gauge strip", When: "before any board is cut",
			See: []stage.Say{
				stage.Words("the sleeve, folded at its marks and closed, slides over "+j.Whose(0)+" from the fore-edge, with %s to spare in height and %s in thickness", j.Clearance.Height-2*j.Cloth, j.Clearance.Thickness),
				plan.StripReaches(j.Clearance.Width - j.Cloth),
			},
			Fails: plan.MeasureContent(j.Common, "box"),
		},
		// Nothing is lost where the large tray follows the small one as measured, board and all.
		plan.LayersMeasured("board of the trays", "box.board", "from head to tail between the trays", j.Board, j.Chain().TakenFrom(nestHigh, trayBoard)),
	}
}

// wallsLevel: the boards of a tray against each other.
func (j Job) wallsLevel(w tray) plan.Check {
	high := w.d + j.Board
	wide, long := w.b, w.l
	if j.Walls == On {
		high, wide, long = w.d, w.b+j.Board, w.l+2*j.Board
	}
	return plan.Check{
		Name: "cut boards of the " + w.name, When: "when they are cut, before any glue",
		See: []stage.Say{
			stage.Words("the three walls stood on edge side by side are level, %s high", high),
			stage.Words("the diagonals of the base are alike, %s", Length(math.Hypot(wide.MM(), long.MM()))),
		},
		Fails: stage.Words("trim the walls together at one setting, or cut them again; a base out of square is cut again"),
	}
}

// bareSmall: what the box is for in the bare small tray.
func (j Job) bareSmall() plan.Check {
	what := j.Whose(0)
	return plan.Check{
		Name: "bare small tray", When: "when the boards of the small tray stand on the bench, held together by hand, before any glue",
		See: []stage.Say{
			stage.Words(what+" pushed to the tail leaves %s at the head", j.Clearance.Height+2*j.Cloth),
			stage.Words("pushed against the fore-edge wall, the base reaches %s past its spine", j.Clearance.Width+j.Cloth),
			stage.Words("the rim stands %s above it", j.Clearance.Thickness+j.Lining),
		},
		Fails: stage.Words("measure " + what + " again and cut the boards again: everything that follows is cut for this tray"),
	}
}

// glued: a tray while its glue is wet, and when it is dry.
func (j Job) glued(w tray) plan.Check {
	c := plan.Check{
		Name: "glued " + w.name, When: "while the glue is wet, and again when it is dry, before it is covered",
		See:   []stage.Say{stage.Words("every wall stands square to the base and to its neighbour; at the open end they end with the base")},
		Fails: stage.Words("push the walls straight while the glue is wet; when it is dry a tray out of square is made again"),
	}
	if w.name == smallName {
		c.See = append(c.See, stage.Words(j.Whose(0)+" pushed to the tail still leaves %s at the head", j.Clearance.Height+2*j.Cloth))
	} else {
		c.See = append(c.See, stage.Words("turned over the covered small tray, when dry, it still plays %s from head to tail and %s at the fore-edge", 4*j.Cloth+j.Room.Height, 2*j.Cloth+j.Room.Width))
	}
	return c
}

// stripLaid: the cloth of a tray round its walls, dry.
func (j Job) stripLaid(w tray) plan.Check {
	st := j.stripOf(w)
	return plan.Check{
		Name: "cloth of the " + w.name + ", laid round dry", When: "before any glue",
		See: []stage.Say{
			stage.Words("middle to middle of the fore-edge wall and %s below the bottom edge, it stands past both open ends by %s", st.u, st.t+st.v),
			stage.Words("its notches come to the corners, its slits to the level of the floor"),
		},
		Fails: stage.Words("both ends short or long by as much: the tray is not as planned; cut a strip for what it measures. One end only: it does not lie middle to middle"),
	}
}

// coveredSmall: what the box is for in the covered small tray.
func (j Job) coveredSmall() plan.Check {
	what := j.Whose(0)
	return plan.Check{
		Name: "covered small tray", When: "when the small tray is covered and dry, before anything of the large tray is cut",
		See: []stage.Say{
			stage.Words("at the open end %s are left from head to tail beside "+what, j.Clearance.Height-2*j.Cloth),
			stage.Words("in the corners at the fore-edge %s are left", j.Clearance.Width-j.Cloth),
			stage.Words("with an offcut of its lining laid in, the rim stands %s above "+what, j.Clearance.Thickness),
		},
		Found: []plan.Finding{
			{What: stage.Words(what + " goes in only with force, or not at all"), Means: stage.Words("the tray is too small; nothing that follows helps"), Do: stage.Words("make the small tray again")},
			{What: stage.Words("there is more room than that"), Means: stage.Words(what + " will move about in it"), Do: stage.Words("lay a pad of the difference on a wall, or under the lining")},
		},
	}
}

// measuredSmall: the covered small tray under the ruler (the design, "As built").
func (j Job) measuredSmall() plan.Check {
	s := j.covered(j.small())
	c := plan.Check{
		Name: "measures of the small tray", When: "before anything of the large tray is cut",
		See: []stage.Say{
			stage.Words("over the cloth it measures %s from head to tail, the largest of three places: open end, middle, fore-edge", s.Height),
			stage.Words("%s from the open edge to the fore-edge, %s from bench to rim", s.Width, s.Thickness),
		},
	}
	if j.measured {
		c.Found = []plan.Finding{{
			What:  stage.Words("it measures otherwise than that"),
			Means: stage.Words("the templates of the large tray and of the case do not hold"),
			Do:    stage.Words("correct [as_built] and print them anew before you cut"),
		}}
		return c
	}
	c.Found = []plan.Finding{
		{
			What:  stage.Words("it is larger or smaller, and " + j.Whose(0) + " goes in"),
			Means: stage.Words("nothing is lost: the large tray and the case follow by just as much"),
			Do:    stage.Words("type what you measured under [as_built] and print the rest anew"),
		},
		{
			What:  stage.Words("it is larger, and the large tray is cut already"),
			Means: stage.Words("the room between the trays is less by as much: planned %s from head to tail, %s at the fore-edge, %s above the rim", j.Room.Height, j.Room.Width, j.Room.Depth),
			Do:    stage.Words("go on while %s are left in height and in width, and the rim is not pressed; else cut again: for the height base and fore-edge wall, for the width base, head and tail wall, for the depth the three walls", leastRoom),
		},
		{
			What:  stage.Words("it is smaller, and the large tray is cut already"),
			Means: stage.Words("the room between the trays is more by as much"),
			Do:    stage.Words("go on; the checks of the large tray tell where to paste card in"),
		},
	}
	return c
}

// leastRoom is what must be left between the trays in height and in width.
const leastRoom Length = 0.1

// bareLarge: the bare large tray over the covered small one. s is the job as the small
// tray stands.
func bareLarge(s Job) plan.Check {
	return plan.Check{
		Name: "bare large tray over the small one", When: "when the boards of the large tray stand over the covered small tray, both on the bench, before any glue",
		See: []stage.Say{
			stage.Words("%s are left from head to tail, both ends together, and %s at the fore-edge", 4*s.Cloth+s.Room.Height, 2*s.Cloth+s.Room.Width),
			stage.Words("turned over, its base lies %s above the rim of the small tray", s.lidLining()+s.Room.Depth),
		},
		Found: []plan.Finding{
			{
				What:  stage.Words("less is left from head to tail or at the fore-edge, by more than %s and %s", s.Room.Height-leastRoom, s.Room.Width-leastRoom),
				Means: stage.Words("covered, the trays will stick"),
				Do:    stage.Words("cut again: for the height base and fore-edge wall, for the width base, head and tail wall"),
			},
			{
				What:  stage.Words("more is left, so that covered it would play more than %s", mostPlay),
				Means: stage.Words("the trays will rattle"),
				Do:    stage.Words("before it is covered paste card on the inside: half of what is too much on head and tail wall each, or all on the fore-edge wall"),
			},
			{
				What:  stage.Words("its base lies higher than that"),
				Means: stage.Words("the lid clears the small tray by so much more"),
				Do:    stage.Words("take a lining for its floor that is thicker by the difference"),
			},
			{
				What:  stage.Words("its base lies lower, by more than %s", s.Room.Depth),
				Means: stage.Words("its rim will stand off the case, and light is seen"),
				Do:    stage.Words("cut its three walls again, higher"),
			},
		},
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
		Found: []plan.Finding{
			{
				What:  stage.Words("there is less play, but %s or more in height and in width, and nothing is pressed", leastRoom),
				Means: stage.Words("the trays go on and off"),
				Do:    stage.Words("go on"),
			},
			{
				What:  stage.Words("there is less than that, or the rim stands off the bench"),
				Means: stage.Words("the trays stick, or the box does not close"),
				Do:    stage.Words("rub the cloth in the corners down; if that does not help cut the large tray again"),
			},
			{
				What:  stage.Words("there is more than %s of play", mostPlay),
				Means: stage.Words("the trays rattle"),
				Do:    stage.Words("paste card inside, half on head and tail wall each, or all on the fore-edge wall"),
			},
		},
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
			stage.Words("from fore-edge to fore-edge %s are measured, at the head and at the tail", s.laid().Across),
			stage.Words("on every side %s or more of the cloth is left to turn in", s.turnIn()),
		},
		Fails: stage.Words("lift the boards while the glue is wet and lay them again"),
	}
}

// casedDry: the trays in the case before they are glued.
func casedDry(s Job) plan.Check {
	return plan.Check{
		Name: "trays in the case, dry", When: "when the case is dry, before any glue comes on the trays",
		See: []stage.Say{
			stage.Words("the case closes round the nested trays, their open ends flush with its spine edges: the spine stands square, the boards stand out %s on three sides", s.Square),
			stage.Words(s.Whose(0) + " laid in has its head at the head of the case, its back cover down, its spine at the spine"),
		},
		Fails: stage.Words("where the spine is too wide or too narrow make the case again now: nothing is glued to it yet. Where only the squares differ, share them out"),
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

// hingeLaid: the hinge before it is glued.
func hingeLaid(s Job) plan.Check {
	return plan.Check{
		Name: "hinge, laid in dry", When: "before the hinge is glued",
		See: []stage.Say{
			stage.Words("folded at its lines it reaches %s onto each floor, and %s are left at head and at tail of the spine", s.hinge(), s.beyondHinge()),
		},
		Fails: stage.Words("too long on a floor: trim it there; too short: cut a new one, for a hinge that is stretched over the spine keeps the box from closing"),
	}
}

// shutBox: the closed box.
func (c made) shutBox() plan.Check {
	s, o := c.stands, c.stands.outside()
	return plan.Check{
		Name: "closed box", When: "when hinge and linings are dry",
		See: []stage.Say{
			stage.Words("closed, it measures %s high, %s wide, %s thick; nothing rocks, the spine is square", o.Height, o.Width, o.Thickness),
			stage.Words("inside, %s are left between the spine and the ends of the walls", max(0, c.proof.closed.offSpine())),
		},
		Fails: stage.Words("rub the pleats at the ends of the walls and the joints down with a folder while the cloth is damp, close the box and dry it under a weight; where the joint of %s is still too narrow, the case is made again with a wider one", s.joint()),
	}
}
