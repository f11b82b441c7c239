package fit

import (
	"math"
	"strings"

	"forel/geometry/plan"
	"forel/geometry/slipcase"
)

// Check is something to try at the bench (common practice, no source).
type Check struct {
	Name  string
	When  string
	See   []plan.Remark // what should be seen; sentences without full stop
	Fails plan.Remark   // what to do when it is not
}

// stack is how many layers of board are measured together.
const stack = 4

// checks gives the checks at the bench in the order they are done.
func (s subject) checks(p plan.Plan, r Report) []Check {
	if s.card != nil {
		return s.cardChecks(p, r)
	}
	out := []Check{s.gaugeCheck(r), s.thicknessCheck("board", "board.thickness", r), s.cutCheck(), s.dryFit(p, r)}
	return append(out, s.gluing(r)...)
}

// whose names what is put into the case: the book, or of several volumes the
// one that counts, such as the tallest; "" for all of them.
func (s subject) whose(which string) string {
	switch {
	case len(s.job.Books) < 2:
		return "the book"
	case which == "":
		return "the volumes"
	}
	return "the " + which + " volume"
}

// linedLater gives how much more room there is before linings go in that are
// pasted into the finished carcass, in height and in thickness.
func (s subject) linedLater() Length {
	if s.job.Lining.Order == slipcase.LinedAfter {
		return 2 * s.job.Lining.Thickness
	}
	return 0
}

// gaugeCheck: the paper strips, before anything is cut.
func (s subject) gaugeCheck(r Report) Check {
	h, t := r.tightest(Height), r.tightest(Thickness)
	c := Check{Name: "gauge strip", When: "before any board is cut", Fails: plan.Say("measure " + s.whose("") + " again and correct the job: nothing is cut yet")}
	if r.Card {
		c.When = "before the card is cut"
	}
	c.See = []plan.Remark{
		plan.Say("the sleeve as wide as the mouth, folded at its marks and closed, slides over "+s.whose("")+" from the fore-edge, with %s to spare in height and %s in thickness", h.Drawn, t.Drawn),
		plan.Say("the strip round the spine, folded at its marks, reaches %s past the fore-edge on both sides", r.tightest(Depth).Drawn),
	}
	if r.Card {
		c.See[0].Text = strings.Replace(c.See[0].Text, "the sleeve as wide as the mouth", "the sleeve", 1)
	}
	if t.Volume != "" {
		c.See[0] = plan.Say("each sleeve, folded at its marks and closed, slides over its volume from the fore-edge")
	}
	return c
}

// tightest gives the tightest gap of a dimension.
func (r Report) tightest(d Dimension) Gap {
	if g, ok := r.Find(d, Mouth); ok {
		return g
	}
	g, _ := r.Find(d, Body)
	return g
}

// body gives the gap of a dimension in the body.
func (r Report) body(d Dimension) Gap {
	g, _ := r.Find(d, Body)
	return g
}

// needs gives the least clearance in the body that leaves the tightest place on
// its limit.
func (r Report) needs(d Dimension) Length {
	g := r.tightest(d)
	return r.body(d).Drawn - g.Drawn + g.Tight
}

// thicknessCheck: several layers under the caliper.
func (s subject) thicknessCheck(what, key string, r Report) Check {
	var counts float64
	for _, l := range r.body(Height).Chain {
		if l.Name == what {
			counts = math.Abs(l.Counts)
		}
	}
	return Check{
		Name: what + " thickness", When: "before anything is cut",
		See:   []plan.Remark{plan.Say("four layers together measure %s, one %s", stack*s.thick, s.thick)},
		Fails: plan.Say("set "+key+" to a quarter of what four measure and print again: %s more in one layer takes %s of the height", 0.1, Length(counts)*0.1),
	}
}

// cutCheck: the pieces against each other.
func (s subject) cutCheck() Check {
	out, between := s.job.Outside(), s.job.Between()
	return Check{
		Name: "cut pieces", When: "when the board is cut, before it is lined or glued",
		See: []plan.Remark{
			plan.Say("the three walls stood on edge side by side are level, %s wide", between.Thickness),
			plan.Say("both sides and the spine wall stood together are level, %s high", out.Height),
			plan.Say("the diagonals of a side are alike, %s", Length(math.Hypot(out.Width.MM(), out.Height.MM()))),
		},
		Fails: plan.Say("trim pieces that belong together at one setting, or cut them again; a piece out of square is cut again"),
	}
}

// dryFit: the book on a side.
func (s subject) dryFit(p plan.Plan, r Report) Check {
	f := p.Fit
	least := func(shows Length, d Dimension) Length { return shows - r.body(d).Drawn + r.needs(d) }
	when := "when the boards are cut, before they are lined or glued"
	if s.job.Lining.Thickness > 0 && s.job.Lining.Order == slipcase.LinedBefore {
		when = "when the boards are lined and trimmed, before anything is glued"
	}
	return Check{
		Name: "stacked dry fit", When: when,
		See: []plan.Remark{
			plan.Say("with "+s.whose("deepest")+" on a side, flush with its spine, the side shows %s beyond the fore-edge, at least %s", f.ForeEdge, least(f.ForeEdge, Depth)),
			plan.Say("with "+s.whose("tallest")+" flush with its tail, the side shows %s beyond the head, at least %s", f.HeadOrTail, least(f.HeadOrTail, Height)),
		},
		Fails: plan.Say("cut sides and spine wall again, larger by what is missing; head and tail wall too where it is missing at the fore-edge"),
	}
}

// gluing: the checks from the first glue on.
func (s subject) gluing(r Report) []Check {
	h, t, more := r.body(Height), r.body(Thickness), s.linedLater()
	open := Check{
		Name: "three walls on one side", When: "when the walls stand on the first side, before the glue sets and before the second side goes on",
		See:   []plan.Remark{plan.Say(s.whose("tallest")+" laid in has %s to spare from head to tail, at least %s", h.Drawn+more, r.needs(Height)+more)},
		Fails: plan.Say("move the walls while the glue is wet, or take them off and cut anew: after the second side is on little can be mended"),
	}
	if s.job.Dividers() == 0 {
		open.See = append(open.See, plan.Say("a straightedge across the walls clears "+s.whose("")+" by %s, at least %s", t.Drawn+more, r.needs(Thickness)+more))
	}
	where := "on both sides"
	if _, ok := r.Find(Height, Mouth); ok {
		where = "on head and tail wall and on both sides"
	}
	bare := Check{
		Name: "bare carcass", When: "when the carcass is dry, before it is covered",
		See:   []plan.Remark{plan.Say(s.whose("") + " can be slid in and out, with offcuts of all that will be turned in laid at the mouth, " + where)},
		Fails: plan.Say("take thinner cloth and paper, with their thickness in the job; if that is not enough make a new carcass, and do not force the book"),
	}
	tight := "too tight: let it dry longer, then make a new case rather than press the book in; "
	if _, ok := r.Find(Height, Corners); ok {
		tight = "too tight in the corners of the mouth: pare the side tabs there; too tight elsewhere: let it dry longer, then make a new case rather than press the book in; "
	}
	done := Check{
		Name: "finished case", When: "when the covering is dry, after a night under a light weight",
		See:   []plan.Remark{plan.Say("held mouth down over a soft surface, a hand below, " + s.whose("") + " can be felt to slide, and to go back in without being pressed")},
		Fails: plan.Say(tight + "too loose: line the sides with thin paper"),
	}
	return []Check{open, bare, done}
}

// cardChecks: of a case of one piece.
func (s subject) cardChecks(p plan.Plan, r Report) []Check {
	in := p.Cavity
	return []Check{
		s.gaugeCheck(r),
		s.thicknessCheck("card", "card.thickness", r),
		{
			Name: "folded strip", When: "before the blank is cut",
			See:   []plan.Remark{plan.Say("a strip of the card scored and folded twice, %s apart, is %s wide inside", s.card.Scored().Thickness, in.Thickness)},
			Fails: plan.Say("wider inside: make card.bend smaller; narrower: larger; then print again"),
		},
		{
			Name: "folded blank", When: "when the blank is scored, cut and folded, before it is pasted",
			See: []plan.Remark{plan.Say("with the flaps held in by hand the book slides in: %s to spare in height, %s in thickness, and its fore-edge lies %s behind the mouth",
				r.body(Height).Drawn, r.body(Thickness).Drawn, r.body(Depth).Drawn)},
			Fails: plan.Say("score a new blank: once it is pasted nothing can be mended"),
		},
		{
			Name: "finished case", When: "when the paste is dry",
			See:   []plan.Remark{plan.Say("the book slides in and out without being pressed")},
			Fails: plan.Say("too tight: make a new case with more clearance, and do not press the book in; too loose: line the sides with thin paper"),
		},
	}
}
