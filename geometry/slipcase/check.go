package slipcase

import (
	"fmt"
	"slices"
	"strings"

	"forel/geometry"
	"forel/geometry/wording"
)

// MostBooks is how many volumes a case takes.
const MostBooks = 12

// Least amounts that keep a case makeable (common practice, no source).
const (
	leastLap   Length = 1    // side paper over the edge of the cloth
	leastGrip  Length = 2    // a turn-in inside, beyond the board's edge
	leastSlack Length = 0.05 // clearance at the mouth that still counts as positive
	leastPaper Length = 10   // height of a side paper
	leastPlay  Length = 0.5  // between the smallest inset that is allowed and the largest
)

// Check gives every reason the job can't be made, each with the smallest
// change that would do, and what is possible but looks like a slip. It first
// checks each length by itself; only when those pass, what fits together.
func (j Job) Check() (refused, suspect Problems) {
	refused = j.checkRanges()
	if len(refused) > 0 {
		return refused, nil
	}
	return j.checkTogether(), j.suspects()
}

func (j Job) checkRanges() Problems {
	var ps Problems
	add := func(p Problem) {
		if p != (Problem{}) {
			ps = append(ps, p)
		}
	}
	switch {
	case len(j.Books) == 0:
		add(Problem{"book", "no book", "add a [[book]] with height, width and thickness"})
	case len(j.Books) > MostBooks:
		add(Problem{"book", fmt.Sprintf("more than %d books", MostBooks), "make two cases"})
	}
	for i, b := range j.Books {
		for _, f := range BookFields {
			key := BookKey(i, f.Key)
			readings := *f.At(&b)
			if len(readings) == 0 && !f.Optional {
				add(Problem{key, "missing", "measure " + f.What})
			}
			for _, l := range readings {
				add(CheckRange(key, f.What, l, f.Min, f.Max, j.Unit))
			}
		}
	}
	for _, c := range Choices {
		if word := *c.At(&j); !slices.Contains(c.Words, word) {
			add(Problem{c.Key, fmt.Sprintf("%.40q is not known", word), "give one of " + strings.Join(c.Words, ", ") + " (" + c.What + ")"})
		}
	}
	for _, p := range Percents {
		if v := *p.At(&j); !(v >= p.Min && v <= p.Max) {
			add(Problem{p.Key, wording.Decimal(v, 4) + " % is out of range", "give " + wording.Decimal(p.Min, 4) + " to " + wording.Decimal(p.Max, 4) + " (" + p.What + ")"})
		}
	}
	for _, f := range Fields {
		if f.Auto && *f.At(&j) == 0 {
			continue
		}
		add(CheckRange(f.Key, f.What, *f.At(&j), f.Min, f.Max, j.Unit))
	}
	return ps
}

// checkTogether holds the job against the invariants of a sound case.
func (j Job) checkTogether() Problems {
	l := limits{unit: j.Unit}
	switch j.Covering {
	case AllCloth, AllPaper:
		j.limitWrap(&l)
	case SidesOnly:
		j.limitSides(&l)
	default:
		j.limitCloths(&l)
		j.limitSides(&l)
	}
	j.limitHole(&l)
	j.limitDivider(&l)
	j.limitPattern(&l)

	// The mouth is the tightest place.
	m := j.Mouth()
	if j.Covering != SidesOnly {
		l.atLeast("clearance.height", j.Clearance.Height, j.Clearance.Height-min(m.Height, m.HeightCorners)+leastSlack,
			"leaves no room at the mouth, where the covering is turned in at head and tail")
	}
	l.atLeast("clearance.thickness", j.Clearance.Thickness, j.Clearance.Thickness-m.Thickness+leastSlack,
		"leaves no room at the mouth, where the covering is turned in on both sides")
	return append(l.broken, j.CheckLimits()...)
}

// limitCloths: cloth over spine, head and tail.
func (j Job) limitCloths(l *limits) {
	s, in, out, c := j.Edge(), j.Between(), j.Outside(), j.Cloth
	// A flap no longer than the face it lands on.
	l.atMost("cloth.overlap", c.Overlap, min(out.Width, in.Height+s-3*c.Thickness), "is wider than the side it lands on, or the cavity it is turned into")
	l.atMost("cloth.turn_in", c.TurnIn, out.Width, "is longer than the head wall it lands on")
	l.atMost("cloth.mouth_turn_in", c.MouthTurnIn, s+j.Cavity().Width, "runs into the spine wall inside")
	// A flap long enough to cover what it has to.
	l.atLeast("cloth.mouth_turn_in", c.MouthTurnIn, s+leastGrip, "does not reach inside round the edge of the board")
	l.atMost("cloth.corner_distance", c.CornerDistance, min(c.TurnIn-leastGrip, c.Overlap-leastLap), "leaves no flap between the wedges")
	l.atMost("cloth.spine_gap", c.SpineGap, min(c.TurnIn-leastGrip, c.Overlap-leastLap), "leaves board bare between spine cloth and head and tail cloth")
}

// limitSides: paper on the sides. It covers the edges of the cloth, and its
// turn-in stands clear of the walls and the cloth folded over them, a tab on a
// tab.
func (j Job) limitSides(l *limits) {
	s, out, p := j.Edge(), j.Outside(), j.SidePaper
	l.atMost("side_paper.turn_in", p.TurnIn, s+j.Cavity().Width, "runs into the spine wall inside")
	l.atLeast("side_paper.turn_in", p.TurnIn, s+leastGrip, "does not reach inside round the edge of the board")
	widest, narrowest := min((out.Height-leastPaper)/2, out.Width-leastPaper), s
	if j.Covering != SidesOnly {
		layers := Length(1)
		if j.tabs().tuck > 0 {
			layers = 2 // a tab on a tab
		}
		widest, narrowest = min(j.Cloth.Overlap-leastLap, widest), s+layers*j.Cloth.Thickness
	}
	if widest < narrowest+leastPlay-1e-6 {
		l.atLeast("cloth.overlap", j.Cloth.Overlap, narrowest+leastPlay+leastLap, "leaves the side paper no cloth to lap over")
		return
	}
	l.atMost("side_paper.inset", p.Inset, widest, "leaves the side bare between cloth and paper")
	l.atLeast("side_paper.inset", p.Inset, narrowest, "runs the turn-in into the head and tail walls or the cloth folded over them")
}

// limitWrap: one wrap round sides and spine, a panel at head and tail.
func (j Job) limitWrap(l *limits) {
	s, out, c := j.Edge(), j.Outside(), j.Cloth
	l.atMost("cloth.turn_in", c.TurnIn, out.Width, "is longer than the head wall it lands on")
	l.atMost("cloth.mouth_turn_in", c.MouthTurnIn, s+j.Cavity().Width, "runs into the spine wall inside")
	l.atLeast("cloth.mouth_turn_in", c.MouthTurnIn, s+leastGrip, "does not reach inside round the edge of the board")
	l.atLeast("cloth.turn_in", c.TurnIn, s+leastLap, "does not reach under the panel over head and tail")
	l.atMost("cloth.corner_distance", c.CornerDistance, c.TurnIn-leastGrip, "leaves no flap between the wedges")
	l.atMost("cloth.spine_gap", c.SpineGap, c.TurnIn-leastGrip, "leaves the head wall bare between wrap and panel")
}

// limitHole: a thumb hole keeps off what must not be cut, and is large enough
// for its edge to be covered.
func (j Job) limitHole(l *limits) {
	if !j.hasHole() {
		return
	}
	r, least, most := j.hole(), j.leastRadius(), j.mostRadius()
	if most < least {
		l.broken = append(l.broken, Problem{"thumb_hole.shape", "there is no room on the sides for a thumb hole", `give "none"`})
		return
	}
	l.atLeast("thumb_hole.radius", r, least, "is too small for its edge to be covered")
	l.atMost("thumb_hole.radius", r, most, "cuts into the cloth at head and tail, or past the side")
}

// limitDivider: a divider with a strip round its mouth edge.
func (j Job) limitDivider(l *limits) {
	if j.dividers() == 0 {
		return
	}
	most := j.Cavity().Width / 2
	l.atMost("divider.set_back", j.Divider.SetBack, most, "leaves little of the divider")
	l.atMost("divider.lap", j.Divider.Lap, j.Cavity().Width-min(j.Divider.SetBack, most), "is wider than the divider")
}

// limits gathers what is beyond a limit.
type limits struct {
	unit   geometry.Unit
	broken Problems
}

func (l *limits) atMost(key string, value, limit Length, why string) {
	if value > limit+1e-6 {
		l.broken = append(l.broken, Problem{key, Apart(value, limit, -1, l.unit) + " " + why, "at most " + Show(limit, l.unit, -1)})
	}
}

func (l *limits) atLeast(key string, value, limit Length, why string) {
	if value < limit-1e-6 {
		l.broken = append(l.broken, Problem{key, Apart(value, limit, +1, l.unit) + " " + why, "at least " + Show(limit, l.unit, +1)})
	}
}
