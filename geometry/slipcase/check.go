package slipcase

import (
	"forel/geometry/job"
	"forel/geometry/plan"
)

// Least amounts that keep a case makeable (common practice, no source).
const (
	leastLap   Length = 1    // side paper over the edge of the cloth
	leastGrip  Length = 2    // a turn-in inside, beyond the board's edge
	leastSlack Length = 0.05 // clearance at the mouth that still counts as positive
	leastPaper Length = 10   // height of a side paper
	leastPlay  Length = 0.5  // between the smallest inset that is allowed and the largest
)

// Check tells whether the job can be made; see plan.Job.
func (j Job) Check() (sound plan.Checked, refused, suspect job.Problems) {
	if refused = j.CheckRanges(j.Settings()); len(refused) > 0 {
		return nil, refused, nil
	}
	refused, suspect = j.checkTogether(), j.suspects()
	if len(refused) > 0 {
		return nil, refused, suspect
	}
	return plan.Sound[Case](j.work), nil, suspect
}

// checkTogether holds the job against the invariants of a sound case.
func (planned Job) checkTogether() job.Problems {
	j := planned.standing()
	l := job.NewLimits(j.Unit)
	switch j.Covering {
	case AllCloth, AllPaper:
		j.limitWrap(l)
	case SidesOnly:
		j.limitSides(l)
	default:
		j.limitCloths(l)
		j.limitSides(l)
	}
	j.limitHole(l)
	j.limitDivider(l)
	j.Pattern.limit(coveringPattern, l)
	j.LiningPattern.limit(liningPattern, l)
	if j.Lining.Thickness == 0 && j.LiningPattern.matches() {
		l.Instead(liningPattern+".match", j.LiningPattern.Match, "needs linings, and lining.thickness is 0", MatchNothing)
	}

	planned.limitMouth(l, j)
	return append(l.Broken, j.CheckLimits()...)
}

// limitCloths: cloth over spine, head and tail.
func (j Job) limitCloths(l *job.Limits) {
	s, in, out, c := j.Edge(), j.Between(), j.Outside(), j.Cloth
	// A flap no longer than the face it lands on.
	l.AtMost("cloth.overlap", c.Overlap, min(out.Width, in.Height+s-3*c.Thickness), "is wider than the side it lands on, or the cavity it is turned into")
	l.AtMost("cloth.turn_in", c.TurnIn, out.Width, "is longer than the head wall it lands on")
	l.AtMost("cloth.mouth_turn_in", c.MouthTurnIn, s+j.Cavity().Width, "runs into the spine wall inside")
	// A flap long enough to cover what it has to.
	l.AtLeast("cloth.mouth_turn_in", c.MouthTurnIn, s+leastGrip, "does not reach inside round the edge of the board")
	l.AtMost("cloth.corner_distance", c.CornerDistance, min(c.TurnIn-leastGrip, c.Overlap-leastLap), "leaves no flap between the wedges")
	l.AtMost("cloth.spine_gap", c.SpineGap, min(c.TurnIn-leastGrip, c.Overlap-leastLap), "leaves board bare between spine cloth and head and tail cloth")
}

// limitSides: paper on the sides. It covers the edges of the cloth, and its
// turn-in stands clear of the walls and the cloth folded over them.
func (j Job) limitSides(l *job.Limits) {
	s, out, p := j.Edge(), j.Outside(), j.SidePaper
	l.AtMost("side_paper.turn_in", p.TurnIn, s+j.Cavity().Width, "runs into the spine wall inside")
	l.AtLeast("side_paper.turn_in", p.TurnIn, s+leastGrip, "does not reach inside round the edge of the board")
	widest, narrowest := min((out.Height-leastPaper)/2, out.Width-leastPaper), s
	if j.Covering != SidesOnly {
		widest, narrowest = min(j.Cloth.Overlap-leastLap, widest), s+j.Cloth.Thickness
	}
	if widest < narrowest+leastPlay-1e-6 {
		l.AtLeast("cloth.overlap", j.Cloth.Overlap, narrowest+leastPlay+leastLap, "leaves the side paper no cloth to lap over")
		return
	}
	l.AtMost("side_paper.inset", p.Inset, widest, "leaves the side bare between cloth and paper")
	l.AtLeast("side_paper.inset", p.Inset, narrowest, "runs the turn-in into the head and tail walls or the cloth folded over them")
}

// limitWrap: one wrap round sides and spine, a panel at head and tail.
func (j Job) limitWrap(l *job.Limits) {
	s, out, c := j.Edge(), j.Outside(), j.Cloth
	l.AtMost("cloth.turn_in", c.TurnIn, out.Width, "is longer than the head wall it lands on")
	l.AtMost("cloth.mouth_turn_in", c.MouthTurnIn, s+j.Cavity().Width, "runs into the spine wall inside")
	l.AtLeast("cloth.mouth_turn_in", c.MouthTurnIn, s+leastGrip, "does not reach inside round the edge of the board")
	l.AtLeast("cloth.turn_in", c.TurnIn, s+leastLap, "does not reach under the panel over head and tail")
	l.AtMost("cloth.corner_distance", c.CornerDistance, c.TurnIn-leastGrip, "leaves no flap between the wedges")
	l.AtMost("cloth.spine_gap", c.SpineGap, c.TurnIn-leastGrip, "leaves the head wall bare between wrap and panel")
}

// limitHole: a thumb hole keeps off what must not be cut, and is large enough
// for its edge to be covered.
func (j Job) limitHole(l *job.Limits) {
	if !j.hasHole() {
		return
	}
	r, least, most := j.hole(), j.leastRadius(), j.mostRadius()
	if most < least {
		l.Instead("thumb_hole.shape", j.ThumbHole.Shape, "finds no room on the sides", NoHole)
		return
	}
	l.AtLeast("thumb_hole.radius", r, least, "is too small for its edge to be covered")
	l.AtMost("thumb_hole.radius", r, most, "cuts into the cloth at head and tail, or past the side")
}

// limitDivider: a divider with a strip round its mouth edge.
func (j Job) limitDivider(l *job.Limits) {
	if j.Dividers() == 0 {
		return
	}
	if j.liningAfter() > 0 {
		l.Refuse(job.Problem{Key: "lining.order", Reason: "leaves linings to be pasted in between dividers, where no hand reaches", Fix: `give "before"`})
	}
	most := j.Cavity().Width / 2
	l.AtMost("divider.set_back", j.Divider.SetBack, most, "leaves little of the divider")
	l.AtMost("divider.lap", j.Divider.Lap, j.Cavity().Width-min(j.Divider.SetBack, most), "is wider than the divider")
}
