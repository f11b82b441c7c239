package chemise

import (
	"fmt"
	"strings"

	"forel/geometry/laidflat"
	"forel/geometry/plan"
)

// symbols are those of the boards' widths on the worksheet.
var symbols = map[string]string{
	spineName: "S", backCoverName: "B", frontCoverName: "F", backWallName: "U", frontWallName: "V", backFlapName: "fl", frontFlapName: "fl",
}

// worksheet returns the lines of the worksheet. What follows from others has its
// rule.
func (j Job) worksheet() []plan.Group {
	book := plan.BookGroup(j.Book())
	room := plan.ClearanceGroup(j.Clearance)
	add := func(g *plan.Group, m plan.Measure) { g.Measures = append(g.Measures, m) }
	switch j.ForeEdge {
	case Hooks:
		add(&book, plan.Measure{Symbol: "m", Name: "thickness of its own cover", Value: j.BookCover})
		add(&room, plan.Measure{Symbol: "cM", Name: "on its cover, in a hook", Value: j.CoverPlay, Usual: true})
	case Walls:
		add(&room, plan.Measure{Symbol: "z", Name: "between the two walls", Value: j.Middle, Usual: true})
	case Lapped, LappedOnly:
		add(&room, plan.Measure{Symbol: "y", Name: "between the walls that lap", Value: j.LapPlay, Usual: true})
	}
	materials := plan.Group{Head: "Materials, as measured", Measures: []plan.Measure{
		{Symbol: "b", Name: "thin board", Value: j.Board, Fine: true},
		{Symbol: "k", Name: "covering", Value: j.Covering, Fine: true},
		{Symbol: "l", Name: "lining", Value: j.Lining, Fine: true},
		{Symbol: "i", Name: "inside, at a turn-in", Rule: "k + l", Value: j.inside(), Fine: true},
		{Symbol: "P", Name: "a panel right through", Rule: "b + i + k", Value: j.through(), Fine: true},
	}}
	joints := plan.Group{Head: "Joints", Measures: []plan.Measure{
		{Symbol: "j", Name: "joint between two boards", Value: j.joint(), Usual: true},
		{Symbol: "x", Name: "of it, left beside a board", Rule: "j − b − 2i", Value: j.stand(), Fine: true},
	}}
	if j.ForeEdge == LappedOnly {
		add(&room, plan.Measure{Symbol: "f", Name: "before the back wall's free end", Value: spare, Usual: true})
	}
	if j.Joint == 0 {
		joints.Measures[0].Rule = "b + 4i + v"
		joints.Measures = append([]plan.Measure{{Symbol: "v", Name: "spare of a joint", Value: spare, Usual: true}}, joints.Measures...)
	}
	return []plan.Group{book, room, materials, joints, j.outsideGroup(), j.boardsGroup(), j.coveringGroup()}
}

// outsideGroup returns the lines of the closed chemise.
func (j Job) outsideGroup() plan.Group {
	h, w, spine, fore := j.outsides()
	wide, thick := "W + cW + 3P + y", "T + cT + 2P"
	switch j.ForeEdge {
	case None:
		wide = "W + cW + P + k"
	case Walls, Hooks:
		wide = "W + cW + 2P"
	case Lapped:
		thick = "T + cT + 3P"
	}
	g := plan.Group{Head: "Outside, closed", Measures: []plan.Measure{
		{Symbol: "Hx", Name: "height", Rule: "H + cH + 2k", Value: h},
		{Symbol: "Wx", Name: "depth", Rule: wide, Value: w},
	}}
	if j.ForeEdge == Hooks {
		g.Measures = append(g.Measures, plan.Measure{Symbol: "Ts", Name: "thickness at the spine", Rule: thick, Value: spine},
			plan.Measure{Symbol: "Tx", Name: "thickness at the fore-edge", Rule: "T + cT + 2cM + 4P", Value: fore})
	} else {
		g.Measures = append(g.Measures, plan.Measure{Symbol: "Tx", Name: "thickness", Rule: thick, Value: fore})
	}
	return g
}

// boardsGroup returns the lines of the boards' widths, in the order they are
// reckoned: the spine first.
func (j Job) boardsGroup() plan.Group {
	g := plan.Group{Head: "Widths of the boards"}
	wide := map[string]Length{}
	var sum []string
	ps := j.panels()
	for _, p := range ps {
		wide[p.Name] = p.Wide
		sum = append(sum, symbols[p.Name])
	}
	for _, name := range []string{spineName, backCoverName, frontCoverName, backWallName, frontWallName, backFlapName} {
		w, ok := wide[name]
		if !ok {
			continue
		}
		m := plan.Measure{Symbol: symbols[name], Name: name, Value: w, Rule: j.rule(name)}
		if name == backFlapName {
			m.Name, m.Rule, m.Usual = "flap, to its free edge", "", true
		}
		g.Measures = append(g.Measures, m)
	}
	sum = append(sum, fmt.Sprintf("%dj", len(ps)-1))
	g.Measures = append(g.Measures, plan.Measure{Symbol: "A", Name: "boards and joints", Rule: strings.Join(sum, " + "), Value: j.laid().Across})
	return g
}

// rule returns the rule for the width of a board.
func (j Job) rule(name string) string {
	switch {
	case name == spineName && j.ForeEdge == Lapped:
		return "T + cT + P + 2b − 2i"
	case name == spineName:
		return "T + cT + 2b − 2i"
	case name == frontCoverName && (j.ForeEdge == Lapped || j.ForeEdge == LappedOnly):
		return "B + P + y"
	case name == frontCoverName:
		return "B"
	case name == backCoverName && j.ForeEdge == None:
		return "W + cW + i − x"
	case name == backCoverName:
		return "W + cW + 2i − 2x"
	case name == frontWallName && (j.ForeEdge == Lapped || j.ForeEdge == LappedOnly):
		return "Tx − 2k − 2i"
	case name == frontWallName:
		return "U"
	case j.ForeEdge == Walls:
		return "(T + cT − z) ÷ 2 + b − i − k"
	case j.ForeEdge == Hooks:
		return "m + cM + 2b − 2i"
	case j.ForeEdge == Lapped:
		return "T + cT + 2b − 2i"
	}
	return "T + cT + b − i − k − f"
}

// coveringGroup returns the lines of covering and lining.
func (j Job) coveringGroup() plan.Group {
	ps := j.panels()
	end := func(symbol, name string, p laidflat.Board) plan.Measure {
		m := plan.Measure{Symbol: symbol, Name: name, Value: j.endTurnIn(p.Wide)}
		if m.Value.Near(j.turnIn()) {
			m.Rule = "e"
		} else {
			m.Usual = true
		}
		return m
	}
	return plan.Group{Head: "Covering and lining", Measures: []plan.Measure{
		{Symbol: "e", Name: "turned in at head and tail", Value: j.turnIn(), Usual: true},
		end("eL", "turned in at the left end", ps[0]),
		end("eR", "turned in at the right end", ps[len(ps)-1]),
		{Symbol: "g", Name: "lining back from every edge", Value: j.Margin, Usual: true},
	}}
}
