package slipcase

import (
	"fmt"
	"math"

	"forel/geometry"
)

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
	switch len(j.Books) {
	case 1:
		b := j.Books[0]
		for _, f := range BookFields {
			readings := *f.At(&b)
			if len(readings) == 0 {
				add(Problem{"book." + f.Key, "missing", "measure " + f.What})
			}
			for _, l := range readings {
				add(CheckRange("book."+f.Key, f.What, l, f.Min, f.Max, j.Unit))
			}
		}
	case 0:
		add(Problem{"book", "no book", "add a [[book]] with height, width and thickness"})
	default:
		add(Problem{"book", "more than one book", "a case holds one book: keep one [[book]]"})
	}
	for _, f := range Fields {
		add(CheckRange(f.Key, f.What, *f.At(&j), f.Min, f.Max, j.Unit))
	}
	return ps
}

// checkTogether holds the job against the invariants of a sound case.
func (j Job) checkTogether() Problems {
	var ps Problems
	atMost := func(key string, value, limit Length, why string) {
		if value > limit+1e-6 {
			ps = append(ps, Problem{key, apart(value, limit, -1, j.Unit) + " " + why, "at most " + show(limit, j.Unit, -1)})
		}
	}
	atLeast := func(key string, value, limit Length, why string) {
		if value < limit-1e-6 {
			ps = append(ps, Problem{key, apart(value, limit, +1, j.Unit) + " " + why, "at least " + show(limit, j.Unit, +1)})
		}
	}
	s, in, out := j.Lined(), j.Cavity(), j.Outside()
	c, p := j.Cloth, j.SidePaper

	// A flap no longer than the face it lands on.
	atMost("cloth.overlap", c.Overlap, min(out.Width, in.Height+s), "is wider than the side it lands on, or the cavity it is turned into")
	atMost("cloth.turn_in", c.TurnIn, out.Width, "is longer than the head wall it lands on")
	atMost("cloth.mouth_turn_in", c.MouthTurnIn, s+in.Width, "runs into the spine wall inside")
	atMost("side_paper.turn_in", p.TurnIn, s+in.Width, "runs into the spine wall inside")

	// A flap long enough to cover what it has to.
	atLeast("cloth.mouth_turn_in", c.MouthTurnIn, s+leastGrip, "does not reach inside round the edge of the board")
	atLeast("side_paper.turn_in", p.TurnIn, s+leastGrip, "does not reach inside round the edge of the board")
	atMost("cloth.corner_distance", c.CornerDistance, min(c.TurnIn-leastGrip, c.Overlap-leastLap), "leaves no flap between the wedges")
	atMost("cloth.spine_gap", c.SpineGap, min(c.TurnIn-leastGrip, c.Overlap-leastLap), "leaves board bare between spine cloth and head and tail cloth")

	// The side paper covers the edges of the cloth, and its turn-in stands
	// clear of the walls and the two layers of cloth folded over them.
	widest := min(c.Overlap-leastLap, (out.Height-leastPaper)/2)
	narrowest := s + 2*c.Thickness
	if widest < narrowest+leastPlay {
		atLeast("cloth.overlap", c.Overlap, narrowest+leastPlay+leastLap, "leaves the side paper no cloth to lap over")
	} else {
		atMost("side_paper.inset", p.Inset, widest, "leaves the side bare between cloth and paper")
		atLeast("side_paper.inset", p.Inset, narrowest, "runs the turn-in into the head and tail walls or the cloth folded over them")
	}

	// The mouth is the tightest place.
	m := j.Mouth()
	atLeast("clearance.height", j.Clearance.Height, j.Clearance.Height-m.Height+leastSlack,
		"leaves no room at the mouth, where cloth is turned in at head and tail")
	atLeast("clearance.thickness", j.Clearance.Thickness, j.Clearance.Thickness-m.Thickness+leastSlack,
		"leaves no room at the mouth, where cloth and paper are turned in on both sides")
	return ps
}

// suspects lists what is possible but more often a slip.
func (j Job) suspects() Problems {
	var ps Problems
	add := func(key, wrong, right string) { ps = append(ps, Problem{key, wrong, right}) }
	b := j.Book()
	h, w, t := b.Height.Largest(), b.Width.Largest(), b.Thickness.Largest()
	if w > h {
		add("book.width", "greater than the height", "right for an oblong book; otherwise the two are swapped: height runs head to tail, width spine to fore-edge")
	}
	if t > w {
		add("book.thickness", "greater than the width", "check that thickness runs through both covers and width from spine to fore-edge")
	}
	for _, f := range BookFields {
		r := *f.At(&b)
		if d := r.Spread(); d > max(3, r.Largest()/20) {
			add("book."+f.Key, "the readings differ by "+show(d, j.Unit, 0), "measure again; the largest, "+show(r.Largest(), j.Unit, 0)+", is used")
		}
	}
	if name, ok := nominal(j.Board.Thickness); ok {
		add("board.thickness", "exactly "+name+" in, a size boards are sold by", "measure the board with a caliper: one sold by that name may be a quarter of a millimetre off")
	}
	m := j.Mouth()
	if m.HeightCorners <= 0 {
		add("cloth.thickness", "the corners of the mouth are tight: tab over tab takes up all of clearance.height",
			"pare the side tabs in the corners, or set clearance.height to at least "+show(j.Clearance.Height-m.HeightCorners+leastSlack, j.Unit, +1))
	}
	if out := j.Outside().Height; 2*j.Cloth.Overlap > out {
		add("cloth.overlap", "head and tail cloth overlap on the sides of so low a case", "at most "+show(out/2, j.Unit, -1)+" keeps them apart")
	}
	return ps
}

// nominal tells whether a thickness is exactly a fraction of an inch that
// boards are sold by: a whole number of 32nds or 64ths.
func nominal(l Length) (name string, ok bool) {
	n := float64(l/geometry.Inch) * 64
	if math.Abs(n-math.Round(n)) > 1e-6 {
		return "", false
	}
	num, den := int(math.Round(n)), 64
	for num%2 == 0 && den > 1 {
		num, den = num/2, den/2
	}
	return fmt.Sprintf("%d/%d", num, den), true
}
