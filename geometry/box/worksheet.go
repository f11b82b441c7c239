package box

import (
	"strings"

	"forel/geometry"
	"forel/geometry/plan"
)

// rules are those of a tray's pieces.
type rules struct{ base, fore, side, strip, lining geometry.SizeRule }

// rules returns the rules of a tray's pieces in the symbols of the worksheet.
func (j Job) rules(w tray) rules {
	one := "1"
	if w.name == largeName {
		one = "2"
	}
	of := func(wide, high string) geometry.SizeRule {
		number := strings.NewReplacer("B", "B"+one, "L", "L"+one, "d", "d"+one, "u", "u"+one, "n", "n"+one, "v", "v"+one)
		return geometry.SizeRule{Width: number.Replace(wide), Height: number.Replace(high)}
	}
	r := rules{
		base: of("B", "L"), fore: of("L", "d + t"), side: of("B + t", "d + t"),
		strip:  of("2B + L + 6t + 2v", "u + 2d + 2t + n"),
		lining: of("B − 2k − sl − so", "L − 4k − 2sl"),
	}
	if j.Walls == On {
		r.base, r.fore, r.side = of("B + t", "L + 2t"), of("L", "d"), of("B + t", "d")
	}
	if j.measured && w.name == smallName {
		r.lining = geometry.SizeRule{Width: "Ba − 2k − sl − so", Height: "La − 4k − 2sl"}
	}
	return r
}

// worksheet returns the lines of the worksheet. What follows from others has its
// rule. stands is the job as the small tray stands: the same where that was not
// measured.
func (j Job) worksheet(stands Job) []plan.Group {
	groups := []plan.Group{
		plan.ContentGroup(j.Common),
		{Head: "Room beyond " + j.Whose(0), Measures: []plan.Measure{
			usual("cH", "from head to tail", j.Clearance.Height),
			usual("cW", "at the fore-edge", j.Clearance.Width),
			usual("cT", "above it", j.Clearance.Thickness),
		}},
		{Head: "Room between the trays", Measures: []plan.Measure{
			usual("rH", "head to tail, in all", j.Room.Height),
			usual("rW", "at the fore-edge", j.Room.Width),
			usual("rD", "above the rim of the small tray", j.Room.Depth),
		}},
		{Head: "Materials, as measured", Measures: []plan.Measure{
			fine("t", "board of the trays", j.Board),
			fine("b", "board of the case", j.caseBoard()),
			fine("k", "cloth of the trays", j.Cloth),
			fine("K", "cloth of the case", j.caseCloth()),
			fine("q", "cloth of the hinge", j.hingeCloth()),
			fine("f", "lining or pad in the small tray", j.Lining),
			fine("F", "lining or pad in the large tray", j.lidLining()),
			fine("m", "the thicker of K and q", j.thicker()),
		}},
		j.smallGroup(),
	}
	if stands.measured {
		groups = append(groups, j.builtGroup(stands))
	}
	return append(groups, stands.largeGroup(), stands.clothGroup(j), stands.caseGroup())
}

func usual(symbol, name string, l Length) plan.Measure {
	return plan.Measure{Symbol: symbol, Name: name, Value: l, Usual: true}
}

func fine(symbol, name string, l Length) plan.Measure {
	return plan.Measure{Symbol: symbol, Name: name, Value: l, Fine: true}
}

func ruled(symbol, name, rule string, l Length) plan.Measure {
	return plan.Measure{Symbol: symbol, Name: name, Rule: rule, Value: l}
}

// smallGroup returns the lines of the small tray, as it is cut.
func (j Job) smallGroup() plan.Group {
	t, s := j.small(), j.covered(j.small())
	g := plan.Group{Head: "Small tray, inside and covered", Measures: []plan.Measure{
		ruled("B1", "open edge to fore-edge wall", "W + cW + k", t.b),
		ruled("L1", "head wall to tail wall", "H + cH + 2k", t.l),
		ruled("d1", "floor to rim", "T + cT + f", t.d),
	}}
	if !j.AsBuilt.measured() {
		g.Measures = append(g.Measures,
			ruled("Ws", "covered, to the fore-edge", "B1 + t + k", s.Width),
			ruled("Hs", "covered, head to tail", "L1 + 2t + 2k", s.Height),
			ruled("Ds", "covered, bench to rim", "d1 + t + 2k", s.Thickness))
	}
	return g
}

// builtGroup returns the lines of the small tray as it stands on the bench.
func (j Job) builtGroup(stands Job) plan.Group {
	s, t := stands.covered(stands.small()), stands.small()
	return plan.Group{Head: "Small tray, covered, as built", Measures: []plan.Measure{
		{Symbol: "Ws", Name: "open edge to fore-edge", Value: s.Width, Readings: j.AsBuilt.Width},
		{Symbol: "Hs", Name: "head to tail", Value: s.Height, Readings: j.AsBuilt.Height},
		{Symbol: "Ds", Name: "bench to rim", Value: s.Thickness, Readings: j.AsBuilt.Thickness},
		ruled("Ba", "open edge to fore-edge wall", "Ws − t − k", t.b),
		ruled("La", "head wall to tail wall", "Hs − 2t − 2k", t.l),
	}}
}

// largeGroup returns the lines of the large tray.
func (j Job) largeGroup() plan.Group {
	t, s := j.large(), j.covered(j.large())
	return plan.Group{Head: "Large tray, inside and covered", Measures: []plan.Measure{
		ruled("B2", "open edge to fore-edge wall", "Ws + 2k + rW", t.b),
		ruled("L2", "head wall to tail wall", "Hs + 4k + rH", t.l),
		ruled("d2", "floor to rim", "Ds + F + rD", t.d),
		ruled("Wl", "covered, to the fore-edge", "B2 + t + k", s.Width),
		ruled("Hl", "covered, head to tail", "L2 + 2t + 2k", s.Height),
		ruled("Dl", "covered, bench to rim", "d2 + t + 2k", s.Thickness),
	}}
}

// clothGroup returns the lines of what is turned in on the trays, and of the linings.
// cut is the job that the small tray was cut for.
func (j Job) clothGroup(cut Job) plan.Group {
	small, large := cut.small(), j.large()
	return plan.Group{Head: "Cloth and linings of the trays", Measures: []plan.Measure{
		usual("u1", "under the base, small tray", cut.under(small)),
		usual("n1", "onto the floor", cut.ontoFloor(small)),
		usual("v1", "end flap past the wall's thickness", cut.endFlap(small)),
		usual("u2", "under the base, large tray", j.under(large)),
		usual("n2", "onto the floor", j.ontoFloor(large)),
		usual("v2", "end flap past the wall's thickness", j.endFlap(large)),
		usual("sl", "lining from the walls' cloth", j.LiningGap),
		usual("so", "lining from the open edge", j.LiningEdge),
	}}
}

// caseGroup returns the lines of the case and the hinge.
func (j Job) caseGroup() plan.Group {
	w, high := j.caseSize()
	inside := "L1"
	if j.measured {
		inside = "La"
	}
	g := plan.Group{Head: "Case and hinge", Measures: []plan.Measure{
		usual("sq", "square, on three sides", j.Square),
		ruled("Wc", "case board, spine to fore-edge", "Wl + sq", w),
		ruled("Hc", "case board, head to tail", "Hl + 2sq", high),
		ruled("D", "between the case boards", "Dl + 2K", j.between()),
		ruled("S", "spine", "D + 2b − 4m", j.spine()),
		usual("j", "joint", j.joint()),
		ruled("x", "of it, left beside a board", "j − b − 2m", j.stand()),
		usual("e", "turned in on every side", j.turnIn()),
		usual("w", "hinge on each floor", j.hinge()),
		ruled("Ah", "hinge, head to tail", inside+" − 4k − 2sl", j.hingeHigh()),
	}}
	if j.Filler == Filled {
		g.Measures = append(g.Measures, usual("y", "a filler from turn-in and spine edge", fillerGap))
	}
	return g
}
