package slipcase

import (
	"fmt"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/plan"
)

// terms are the parts of the worksheet's rules that differ from job to job.
type terms struct {
	one, two string // a lining put in afterwards, once and twice
	thick    string // the room in thickness
}

func (j Job) terms() terms {
	r := terms{thick: "T + cT"}
	if n := j.compartments(); n > 1 {
		r.thick = fmt.Sprintf("T + %dcT", n)
	}
	if j.liningAfter() > 0 {
		r.one, r.two = " + l", " + 2l"
	}
	return r
}

// thin says that a flap over head and tail is shorter than asked for.
func (j Job) thin(f endFlaps) string {
	if f.spine.Near(j.Cloth.TurnIn) {
		return ""
	}
	return "e is shorter than usual in so thin a case"
}

// worksheet returns the lines of the worksheet. What follows from others has its
// rule; those of the pieces stand with the pieces. What covers the carcass is for
// the carcass as it stands.
func (j Job) worksheet(stands Job) []plan.Group {
	room := plan.ClearanceGroup(j.Clearance)
	if j.Dividers() > 0 {
		room.Measures[2].Name += ", each volume"
	}
	return []plan.Group{j.bookGroup(), room, j.materialGroup(), j.roomGroup(), stands.outsideGroup(), stands.marginGroup()}
}

// materialGroup returns the lines of the materials, and of what is made of them.
func (j Job) materialGroup() plan.Group {
	g := plan.Group{Head: "Materials, as measured"}
	symbols := map[geometry.Material]string{geometry.Board: "b", geometry.Lining: "l", geometry.Cloth: "k", geometry.Paper: "p"}
	for _, m := range j.materials() {
		g.Measures = append(g.Measures, plan.Measure{Symbol: symbols[m.Of], Name: m.Of.Words(), Value: m.Thickness, Fine: true})
	}
	lined, divided := j.Lining.Thickness > 0, j.Dividers() > 0
	edge, divider := "b", "b"
	if lined && j.linedBefore() {
		edge = "b + l"
	}
	if lined {
		divider = "b + 2l"
	}
	g.Measures = append(g.Measures, plan.Measure{Symbol: "s", Name: "a board as it is joined", Rule: edge, Value: j.Edge(), Fine: true})
	if divided {
		g.Measures = append(g.Measures, plan.Measure{Symbol: "d", Name: "a divider, lined", Rule: divider, Value: j.dividerThickness(), Fine: true})
	}
	return g
}

func (j Job) roomGroup() plan.Group {
	in := j.Cavity()
	return plan.Group{Head: "Room inside", Measures: []plan.Measure{
		{Symbol: "Hi", Name: "height", Rule: "H + cH", Value: in.Height},
		{Symbol: "Wi", Name: "depth", Rule: "W + cW", Value: in.Width},
		{Symbol: "Ti", Name: "thickness", Rule: j.terms().thick, Value: in.Thickness},
	}}
}

func (j Job) outsideGroup() plan.Group {
	out, r := j.Outside(), j.terms()
	g := plan.Group{Head: "Outside, without covering", Measures: []plan.Measure{
		{Symbol: "Ho", Name: "height", Rule: "H + cH + 2s" + r.two, Value: out.Height},
		{Symbol: "Wo", Name: "depth", Rule: "W + cW + s" + r.one, Value: out.Width},
		{Symbol: "To", Name: "thickness", Rule: r.thick + " + 2s" + r.two, Value: out.Thickness},
	}}
	for i, readings := range []job.Readings{j.AsBuilt.Height, j.AsBuilt.Width, j.AsBuilt.Thickness} {
		if m := &g.Measures[i]; len(readings) > 0 {
			m.Name, m.Rule, m.Readings = m.Name+", as built", "", readings
		}
	}
	return g
}

// marginGroup returns the lines of the margins of linings, coverings and dividers.
func (j Job) marginGroup() plan.Group {
	g := plan.Group{Head: "Margins"}
	add := func(symbol, name string, v Length) {
		g.Measures = append(g.Measures, plan.Measure{Symbol: symbol, Name: name, Value: v, Usual: true})
	}
	lined := j.Lining.Thickness > 0
	switch {
	case lined && j.linedBefore():
		add("r", "lining past its board", j.Lining.Trim)
	case lined:
		add("z", "linings back from the mouth", linedShort)
	}
	switch j.Covering {
	case AllCloth, AllPaper:
		add("e", "turned over head and tail", j.flaps().spine)
		add("u", "turned in at the mouth", j.Cloth.MouthTurnIn)
		add("g", "spine edge to the panels", j.Cloth.SpineGap)
	case ClothAndPaper, "":
		add("m", "cloth onto the sides", j.Cloth.Overlap)
		add("e", "cloth over head and tail", j.flaps().spine)
		add("u", "cloth turned in at the mouth", j.Cloth.MouthTurnIn)
		add("g", "spine edge to head, tail cloth", j.Cloth.SpineGap)
	}
	if j.Covering != AllCloth && j.Covering != AllPaper {
		add("i", "border of the side paper", j.SidePaper.Inset)
		add("x", "side paper past the mouth", j.SidePaper.TurnIn)
	}
	if j.hasHole() {
		g.Measures = append(g.Measures, plan.Measure{Symbol: "A", Name: "edge of a thumb hole", Value: j.holeEdge()})
		add("j", "hole strip past it all round", holeLap)
	}
	if j.Dividers() > 0 {
		add("q", "dividers back from the mouth", j.Divider.SetBack)
		add("v", "strip onto each face", j.Divider.Lap)
	}
	if j.dividerHole() {
		edge, half := j.notch()
		add("B", "edge of a divider's hole", edge)
		add("S", "strip below it, and above", j.Cavity().Height/2-half)
	}
	return g
}
