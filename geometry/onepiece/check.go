package onepiece

import (
	"strconv"

	"forel/geometry/slipcase"
)

// mostRelief is how much of the cavity's thickness the relief about a flap may
// take (common practice, no source): more leaves no flap to paste.
const mostRelief Length = 1.0 / 4

// Limits beyond which a job is suspect (common practice, no source).
const (
	leastCard  Length = 0.3 // thinner is paper
	stiffFolds Length = 2   // a flap should be this many times as long as the card is thick
)

// Check gives every reason the job can't be made, each with the smallest
// change that would do, and what is possible but looks like a slip. It first
// checks each measure by itself; only when those pass, what fits together.
func (j Job) Check() (refused, suspect slipcase.Problems) {
	refused = j.checkRanges()
	if len(refused) > 0 {
		return refused, nil
	}
	return j.checkTogether(), j.suspects()
}

func (j Job) checkRanges() slipcase.Problems {
	var ps slipcase.Problems
	add := func(p slipcase.Problem) {
		if p != (slipcase.Problem{}) {
			ps = append(ps, p)
		}
	}
	for _, f := range slipcase.BookFields {
		readings := *f.At(&j.Book)
		if len(readings) == 0 && !f.Optional {
			add(slipcase.Problem{Key: "book." + f.Key, Wrong: "missing", Right: "measure " + f.What})
		}
		for _, l := range readings {
			add(slipcase.CheckRange("book."+f.Key, f.What, l, f.Min, f.Max, j.Unit))
		}
	}
	for _, f := range Fields {
		add(slipcase.CheckRange(f.Key, f.What, *f.At(&j), f.Min, f.Max, j.Unit))
	}
	for _, f := range Fractions {
		v := *f.At(&j)
		if v >= f.Min && v <= f.Max { // false for NaN too
			continue
		}
		number := func(v float64) string { return strconv.FormatFloat(v, 'g', 6, 64) }
		add(slipcase.Problem{Key: f.Key, Wrong: number(v) + " is no such fraction",
			Right: "give " + number(f.Min) + " to " + number(f.Max) + " (" + f.What + ")"})
	}
	return ps
}

// checkTogether holds the job against what can be folded.
func (j Job) checkTogether() slipcase.Problems {
	var ps slipcase.Problems
	atMost := func(key string, value, limit Length, why string) {
		if value > limit+hair {
			ps = append(ps, slipcase.Problem{Key: key, Wrong: slipcase.Apart(value, limit, -1, j.Unit) + " " + why, Right: "at most " + slipcase.Show(limit, j.Unit, -1)})
		}
	}
	in := j.Cavity()
	atMost("card.thickness", j.Card.Thickness, in.Thickness, "is more than the whole cavity: no flap so short can be folded")
	atMost("flaps.relief", j.Flaps.Relief, in.Thickness*mostRelief, "leaves too little of flaps as long as the cavity is thick")
	return ps
}

// suspects lists what is possible but more often a slip.
func (j Job) suspects() slipcase.Problems {
	var ps slipcase.Problems
	add := func(key, wrong, right string) {
		ps = append(ps, slipcase.Problem{Key: key, Wrong: wrong, Right: right})
	}
	b, c := j.Book, j.Card.Thickness
	if b.Width.Largest() > b.Height.Largest() {
		add("book.width", "greater than the height", "right for an oblong book; otherwise the two are swapped: height runs head to tail, width spine to fore-edge")
	}
	if b.Thick() > b.Width.Largest() {
		add("book.thickness", "greater than the width", "check that thickness runs through both covers and width from spine to fore-edge")
	}
	for _, f := range slipcase.BookFields {
		r := *f.At(&b)
		if d := r.Spread(); d > max(3, r.Largest()/20) {
			add("book."+f.Key, "the readings differ by "+slipcase.Show(d, j.Unit, 0), "measure again; the largest, "+slipcase.Show(r.Largest(), j.Unit, 0)+", is used")
		}
	}
	switch thick := j.Cavity().Thickness; {
	case c == 0:
		add("card.thickness", "zero makes no allowance at the scores", "measure the card, or keep zero to follow a rule that makes none")
	case c < leastCard:
		add("card.thickness", slipcase.Show(c, j.Unit, 0)+" is paper rather than card", "measure again, over several sheets")
	case c*stiffFolds > thick:
		add("card.thickness", "so thick a card hardly folds to flaps of "+slipcase.Show(thick, j.Unit, 0),
			"try it on a strip, or take card of at most "+slipcase.Show(thick/stiffFolds, j.Unit, -1))
	}
	return ps
}
