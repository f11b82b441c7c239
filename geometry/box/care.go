package box

import (
	"forel/geometry/plan"
	"forel/geometry/stage"
	"forel/geometry/wording"
)

// tools lists what to lay ready.
func tools() []string {
	return append(plan.Tools("bone folder with a thin edge, for the corners and the joints; brushes for glue and paste; damp cloth; a spacer as wide as a joint",
		"bookbinder's glue (a dispersion, such as PVA) for the boards; paste with glue for the cloth, paste for the linings"),
		"two squares or blocks, to hold walls upright while they dry")
}

// care returns what to check of the finished box, and what to do about what is found
// (common practice, no source).
func (c made) care() plan.Care {
	j, s := c.job, c.stands
	what := wording.Capital(j.Whose(0))
	play := s.Clearance.Thickness + s.Room.Depth - 2*s.hingeCloth()
	care := plan.Care{
		Good: []stage.Say{
			plan.Say(what+" lies in the small tray without being pressed, with %s from head to tail at the open end and %s at the fore-edge.", s.Clearance.Height-2*j.Cloth, s.Clearance.Width-j.Cloth),
			plan.Say("Closed, the rim of the large tray stands on the case all round: no light is seen. Nothing rocks. "+what+" has %s between the floors.", play),
			plan.Say("The case stands out %s at head, tail and fore-edge, alike on both boards; the spine is square to them.", s.Square),
			plan.Say("The lid opens flat, and the large tray comes off the small one without touching it."),
			plan.Say("No board shows, no glue shows, no edge of a lining is loose."),
		},
		Bad: []stage.Say{
			plan.Say("The trays stick: rub the cloth in the corners down with a folder. If a wall bows, damp it lightly and dry it against a block. Else the large tray is cut again."),
			plan.Say("The trays rattle: paste card onto the inside of the head and tail wall of the large tray, half of what is too much on each, or all of it onto its fore-edge wall."),
			plan.Say("The lid stands up: look for a lump of glue on a floor or a rim. If the rim of the small tray touches, take the lining out of the large tray and paste a thinner one in."),
			plan.Say(what + " rattles: paste a thicker lining or a pad onto the floor of the small tray."),
			plan.Say("The spine is pushed out: the joint is too narrow, or the ends of the walls are thick. Rub the pleats at the ends of the walls down; else the case is cut again with a wider joint."),
			plan.Say("A tray stands askew on its board: lift it while the glue is wet. When it is dry only a new case helps."),
		},
	}
	return care
}
