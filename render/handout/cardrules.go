package handout

import "forel/geometry/onepiece"

// cardRules gives the lines of the worksheet of a case of card. The rules are
// those of the package onepiece in the worksheet's symbols.
func cardRules(c onepiece.Case) sheetRules {
	j := c.Job
	b := j.Book()
	p := c.Pieces[0]
	margin := func(name string) Length {
		for _, m := range p.Margins {
			if m.Name == name {
				return m.Length
			}
		}
		return 0
	}
	f := j.Card.Thickness * Length(j.Card.Bend)
	in, relief := j.Cavity(), j.Flaps.Relief
	outer := "T + cT + f + c − r"
	if l := margin("length of the outer flap"); !l.Near(in.Thickness + f + j.Card.Thickness - relief) {
		outer = "W + cW + f − r ÷ 2"
	}
	r := sheetRules{sizes: map[string]sizeRule{}}
	r.groups = []group{
		{"The book", []measure{
			{symbol: "H", name: "height, head to tail", value: b.Height.Largest(), readings: b.Height},
			{symbol: "W", name: "width, with the round", value: b.Width.Largest(), readings: b.Width},
			{symbol: "T", name: "thickness, the thicker edge", value: b.Thick(), readings: append(append([]Length{}, b.Thickness...), b.ForeEdge...)},
		}},
		{"Room beyond the book", []measure{
			{symbol: "cH", name: "in height", value: j.Clearance.Height, usual: true},
			{symbol: "cW", name: "in width", value: j.Clearance.Width, usual: true},
			{symbol: "cT", name: "in thickness", value: j.Clearance.Thickness, usual: true},
		}},
		{"The card, as measured", []measure{
			{symbol: "c", name: "thickness", value: j.Card.Thickness, fine: true},
			{symbol: "n", name: "part inside a fold's line", number: decimal(j.Card.Bend), usual: true},
			{symbol: "f", name: "longer at each fold by", rule: "n × c", value: f, fine: true},
			{symbol: "r", name: "left free about a flap", value: j.Flaps.Relief, usual: true},
		}},
		{"Scores and flaps", []measure{
			{name: "mouth edge to spine score", rule: "W + cW + f", value: margin("from a mouth edge to the spine score beside it")},
			{name: "between the spine scores", rule: "T + cT + 2f", value: margin("between the spine scores")},
			{name: "head to tail, left side", rule: "H + cH + 2f", value: margin("from head score to tail score, left side")},
			{name: "the same, spine, right side", rule: "H + cH + 2f + 2c", value: margin("from head score to tail score, spine and right side")},
			{symbol: "Fi", name: "length of an inner flap", rule: "T + cT + f − r", value: margin("length of the inner flap")},
			{symbol: "Fo", name: "length of an outer flap", rule: outer, value: margin("length of the outer flap")},
			{name: "cut away beside the score", rule: "f + r", value: margin("cut away of the inner flap beside the spine score")},
			{name: "nick before the mitre", rule: "f + r ÷ 2", value: margin("nick to each side of the right spine score, before the mitre")},
		}},
	}
	height, more := blankHeight(c, f, margin("length of the inner flap"), margin("length of the outer flap"))
	r.groups[3].measures = append(r.groups[3].measures, more...)
	r.sizes[p.Name] = sizeRule{"2W + 2cW + T + cT + 4f", height, "the height is from flap end to flap end; a book thicker than wide has shorter outer flaps"}
	return r
}

// blankHeight gives the rule of the height of a blank, which the longest flaps
// make, and the lines it takes beyond those of every sheet. Commonly the outer
// flaps are longest; where the book is thicker than wide and they end in a point,
// the inner ones. Where much is left free about the flaps it can be such a
// point: of an outer flap, or of a spine flap, between its mitre and its taper.
func blankHeight(c onepiece.Case, f, inner, outer Length) (rule string, more []measure) {
	j, in := c.Job, c.Cavity
	_, tall := c.Pieces[0].Size()
	card, relief := j.Card.Thickness, j.Flaps.Relief
	end := (tall - in.Height - 2*f) / 2 // past the head score of the left side
	switch {
	case end.Near(outer + card):
		return "H + cH + 2f + 2c + 2Fo", nil
	case end.Near(inner):
		return "H + cH + 2f + 2Fi", nil
	}
	base, long := in.Width+f-relief/2, outer
	which, baseRule, pointRule := "an outer flap", "W + cW + f − r ÷ 2", "L × Fo ÷ (Fo + t)"
	taper := min(j.Flaps.Taper, long/8)
	if !end.Near(base*long/(long+taper) + card) {
		base = in.Thickness + 2*f - relief/2
		long, taper = base, min(j.Flaps.Taper, base/8)
		which, baseRule, pointRule = "a spine flap", "T + cT + 2f − r ÷ 2", "L × L ÷ (L + t)"
	}
	return "H + cH + 2f + 2c + 2E", []measure{
		{symbol: "t", name: "a flap narrower at its end", value: taper, usual: true},
		{symbol: "L", name: which + " along its score", rule: baseRule, value: base},
		{symbol: "E", name: which + " to its point", rule: pointRule, value: base * long / (long + taper)},
	}
}
