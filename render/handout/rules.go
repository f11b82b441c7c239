package handout

import (
	"fmt"

	"forel/geometry"
	"forel/geometry/slipcase"
)

// measure is a line of the worksheet with one length: its symbol, what it is,
// the rule it comes from, and what it is in this job.
type measure struct {
	symbol, name, rule string
	value              Length
	readings           []Length // what value is the largest of; nil: it was not measured so
	fine               bool     // a thickness of material, shown more finely
	digits             int      // of a thickness, the decimals it is shown with
	number             string   // in place of a length
	usual              bool     // a choice of the maker's, which has a usual size
}

// group is lines of the worksheet under a head.
type group struct {
	head     string
	measures []measure
}

// sizeRule is the rules for the width and the height of a piece, with a remark.
type sizeRule struct{ width, height, remark string }

// sheetRules is what a worksheet says of a kind of case.
type sheetRules struct {
	groups []group
	sizes  map[string]sizeRule // by piece
}

// boardRules gives the lines of the worksheet of a case of boards. The rules are
// those of the package slipcase in the worksheet's symbols.
func boardRules(c slipcase.Case) sheetRules {
	j := c.Job
	before := j.Lining.Thickness > 0 && j.Lining.Order != slipcase.LinedAfter
	after := j.Lining.Thickness > 0 && !before
	n := 1
	if j.Compartments == slipcase.EachItsOwn {
		n = max(1, len(j.Books))
	}
	r := sheetRules{sizes: map[string]sizeRule{}}
	r.groups = append(r.groups, bookGroup(j, n), group{"Room beyond the book", []measure{
		{symbol: "cH", name: "in height", value: j.Clearance.Height, usual: true},
		{symbol: "cW", name: "in width", value: j.Clearance.Width, usual: true},
		{symbol: "cT", name: each("in thickness", n), value: j.Clearance.Thickness, usual: true},
	}})
	mats := group{head: "Materials, as measured", measures: []measure{{symbol: "b", name: "board", value: j.Board.Thickness, fine: true}}}
	add := func(symbol, name string, v Length) {
		mats.measures = append(mats.measures, measure{symbol: symbol, name: name, value: v, fine: true})
	}
	if before || after {
		add("l", geometry.Lining.Called(false), j.Lining.Thickness)
	}
	cloth := j.Covering == slipcase.ClothAndPaper || j.Covering == slipcase.AllCloth || n > 1
	paper := j.Covering != slipcase.AllCloth
	if cloth {
		add("k", geometry.Cloth.Called(false), j.Cloth.Thickness)
	}
	if paper {
		add("p", j.PaperName(), j.SidePaper.Thickness)
	}
	edge := "b"
	if before {
		edge = "b + l"
	}
	mats.measures = append(mats.measures, measure{symbol: "s", name: "a board as it is joined", rule: edge, value: j.Edge(), fine: true})
	if n > 1 {
		d := "b"
		if before || after {
			d = "b + 2l"
		}
		mats.measures = append(mats.measures, measure{symbol: "d", name: "a divider, lined", rule: d, value: j.Board.Thickness + 2*j.Lining.Thickness, fine: true})
	}

	ct := "cT"
	if n > 1 {
		ct = fmt.Sprintf("%dcT", n)
	}
	one, two := "", "" // a lining put in afterwards, once and twice
	if after {
		one, two = " + l", " + 2l"
	}
	in, out := j.Cavity(), j.Outside()
	room := group{"Room inside", []measure{
		{symbol: "Hi", name: "height", rule: "H + cH", value: in.Height},
		{symbol: "Wi", name: "depth", rule: "W + cW", value: in.Width},
		{symbol: "Ti", name: "thickness", rule: "T + " + ct, value: in.Thickness},
	}}
	outside := group{"Outside, without covering", []measure{
		{symbol: "Ho", name: "height", rule: "H + cH + 2s" + two, value: out.Height},
		{symbol: "Wo", name: "depth", rule: "W + cW + s" + one, value: out.Width},
		{symbol: "To", name: "thickness", rule: "T + " + ct + " + 2s" + two, value: out.Thickness},
	}}
	tall, thick := "H + cH + 2s"+two, "T + "+ct+two
	r.sizes["side"] = sizeRule{"W + cW + s" + one, tall, ""}
	r.sizes["spine wall"] = sizeRule{thick, tall, ""}
	r.sizes["head wall"] = sizeRule{"W + cW" + one, thick, ""}
	r.sizes["tail wall"] = r.sizes["head wall"]
	margins := group{head: "Margins"}
	margin := func(symbol, name string, v Length) {
		margins.measures = append(margins.measures, measure{symbol: symbol, name: name, value: v, usual: true})
	}
	switch {
	case before:
		margin("r", "lining past its board", j.Lining.Trim)
		for board, lining := range map[string]string{"side": "side lining", "spine wall": "spine lining", "head wall": "head lining", "tail wall": "tail lining"} {
			s := r.sizes[board]
			r.sizes[lining] = sizeRule{s.width + " + 2r", s.height + " + 2r", ""}
		}
	case after:
		const stepped = "narrower at the mouth where the pattern has it"
		margin("z", "linings back from the mouth", marginOf(c, "side lining", "back from the mouth edge"))
		r.sizes["side lining"] = sizeRule{"W + cW + l − z", "H + cH + 2l", stepped}
		r.sizes["spine lining"] = sizeRule{"T + " + ct, "H + cH + 2l", ""}
		r.sizes["head lining"] = sizeRule{"W + cW − z", "T + " + ct, stepped}
		r.sizes["tail lining"] = r.sizes["head lining"]
	}
	r.coverings(c, margin)
	r.dividers(c, margin, before || after)
	r.groups = append(r.groups, mats, room, outside, margins)
	return r
}

// coverings adds the rules of what the case is covered with.
func (r sheetRules) coverings(c slipcase.Case, margin func(symbol, name string, v Length)) {
	j := c.Job
	turn := "from the spine flap's end to the carcass, head and tail"
	mouth := j.Cloth.MouthTurnIn
	thin := func(piece string) string {
		if e := marginOf(c, piece, turn); e > 0 && !e.Near(j.Cloth.TurnIn) {
			return "e is shorter than usual in so thin a case"
		}
		return ""
	}
	k, p := j.Cloth.Stretch, j.SidePaper.Stretch
	switch j.Covering {
	case slipcase.AllCloth, slipcase.AllPaper:
		stretch := k
		if j.Covering == slipcase.AllPaper {
			stretch = p
		}
		margin("e", "turned over head and tail", marginOf(c, "wrap", turn))
		margin("u", "turned in at the mouth", mouth)
		margin("g", "spine edge to the panels", j.Cloth.SpineGap)
		r.sizes["wrap"] = across(sizeRule{"To + 2Wo + 2u", "Ho + 2e", thin("wrap")}, stretch)
		r.sizes["head panel"] = across(sizeRule{"To − 2s", "Wo − g + u", ""}, stretch)
		r.sizes["tail panel"] = r.sizes["head panel"]
		return
	case slipcase.ClothAndPaper, "":
		margin("m", "cloth onto the sides", j.Cloth.Overlap)
		margin("e", "cloth over head and tail", marginOf(c, "spine cloth", turn))
		margin("u", "cloth turned in at the mouth", mouth)
		margin("g", "spine edge to head, tail cloth", j.Cloth.SpineGap)
		r.sizes["spine cloth"] = across(sizeRule{"To + 2m", "Ho + 2e", thin("spine cloth")}, k)
		r.sizes["head cloth"] = across(sizeRule{"To + 2m", "Wo − g + u", ""}, k)
		r.sizes["tail cloth"] = r.sizes["head cloth"]
	}
	margin("i", "border of the side paper", j.SidePaper.Inset)
	margin("x", "side paper past the mouth", j.SidePaper.TurnIn)
	r.sizes["side paper"] = across(sizeRule{"Wo − i + x", "Ho − 2i", ""}, p)
}

// across adds to a rule what is cut less across the grain, which is the width of
// every covering.
func across(s sizeRule, percent float64) sizeRule {
	if percent != 0 {
		s.width = fmt.Sprintf("(%s) ÷ %s", s.width, decimal(1+percent/100))
	}
	return s
}
