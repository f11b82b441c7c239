package onepiece

import (
	"strconv"

	"forel/geometry"
	"forel/geometry/plan"
)

// worksheet returns the lines of the worksheet; the rule of the blank's size stands
// with the blank.
func (c Case) worksheet() []plan.Group {
	j := c.Job
	s, f, bend, relief := j.scores(), j.flaps(), j.Card.bend(), j.Flaps.Relief
	outer := "T + cT + f + c − r"
	if !f.outer.length.Near(j.Cavity().Thickness + bend + j.Card.Thickness - relief) {
		outer = "W + cW + f − r ÷ 2"
	}
	_, more := j.blankHeight(f, c.Pieces[0])
	return []plan.Group{
		plan.ContentGroup(j.Common),
		plan.ClearanceGroup(j.Clearance),
		{Head: "The " + j.Card.name() + ", as measured", Measures: []plan.Measure{
			{Symbol: "c", Name: "thickness", Value: j.Card.Thickness, Fine: true},
			{Symbol: "n", Name: "part inside a fold's line", Number: strconv.FormatFloat(j.Card.Bend, 'g', 6, 64), Usual: true},
			{Symbol: "f", Name: "longer at each fold by", Rule: "n × c", Value: bend, Fine: true},
			{Symbol: "r", Name: "left free about a flap", Value: relief, Usual: true},
		}},
		{Head: "Scores and flaps", Measures: append([]plan.Measure{
			{Name: "mouth edge to spine score", Rule: "W + cW + f", Value: s.left},
			{Name: "between the spine scores", Rule: "T + cT + 2f", Value: s.right - s.left},
			{Name: "head to tail, left side", Rule: "H + cH + 2f", Value: 2 * s.inner},
			{Name: "the same, spine, right side", Rule: "H + cH + 2f + 2c", Value: 2 * s.outer},
			{Symbol: "Fi", Name: "length of an inner flap", Rule: "T + cT + f − r", Value: f.inner.length},
			{Symbol: "Fo", Name: "length of an outer flap", Rule: outer, Value: f.outer.length},
			{Name: "cut away beside the score", Rule: "f + r", Value: f.slot},
			{Name: "nick before the mitre", Rule: "f + r ÷ 2", Value: f.nick},
		}, more...)},
	}
}

// sizeRule returns the worksheet's rule of a blank's size.
func (j Job) sizeRule(f flaps, blank geometry.Piece) geometry.SizeRule {
	height, _ := j.blankHeight(f, blank)
	return geometry.SizeRule{
		Width: "2W + 2cW + T + cT + 4f", Height: height,
		Remark: "the height is from flap end to flap end; a book thicker than wide has shorter outer flaps",
	}
}

// blankHeight returns the rule of the height of a blank, which the longest flaps
// make, and the lines it takes beyond those of every sheet. Commonly the outer
// flaps are longest; where the book is thicker than wide and they end in a point,
// the inner ones. Where much is left free about the flaps it can be such a
// point: of an outer flap, or of a spine flap, between its mitre and its taper.
func (j Job) blankHeight(f flaps, blank geometry.Piece) (rule string, more []plan.Measure) {
	in, bend := j.Cavity(), j.Card.bend()
	_, tall := blank.Size()
	card, relief := j.Card.Thickness, j.Flaps.Relief
	end := (tall - in.Height - 2*bend) / 2 // past the head score of the left side
	switch {
	case end.Near(f.outer.length + card):
		return "H + cH + 2f + 2c + 2Fo", nil
	case end.Near(f.inner.length):
		return "H + cH + 2f + 2Fi", nil
	case end.Near(f.spine.length+card) && f.spine.length.Near(in.Width+bend-relief):
		return "H + cH + 2f + 2c + 2Fs", []plan.Measure{{Symbol: "Fs", Name: "length of a spine flap", Rule: "W + cW + f − r", Value: f.spine.length}}
	}
	base, long := in.Width+bend-relief/2, f.outer.length
	which, baseRule, pointRule := "an outer flap", "W + cW + f − r ÷ 2", "L × Fo ÷ (Fo + t)"
	taper := j.taper(long)
	var spine []plan.Measure
	if !end.Near(base*long/(long+taper) + card) {
		base = in.Thickness + 2*bend - relief/2
		long, taper = f.spine.length, j.taper(f.spine.length)
		which, baseRule, pointRule = "a spine flap", "T + cT + 2f − r ÷ 2", "L × L ÷ (L + t)"
		if !long.Near(base) {
			spine = []plan.Measure{{Symbol: "Fs", Name: "its length to the taper's end", Rule: "W + cW + f − r", Value: long}}
			pointRule = "L × Fs ÷ (Fs + t)"
		}
	}
	return "H + cH + 2f + 2c + 2E", append([]plan.Measure{
		{Symbol: "t", Name: "a flap narrower at its end", Value: taper, Usual: true},
		{Symbol: "L", Name: which + " along its score", Rule: baseRule, Value: base},
	}, append(spine, plan.Measure{Symbol: "E", Name: which + " to its point", Rule: pointRule, Value: base * long / (long + taper)})...)
}
