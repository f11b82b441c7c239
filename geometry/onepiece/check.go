package onepiece

import (
	"forel/geometry/job"
	"forel/geometry/plan"
)

// mostRelief is how much of the cavity's thickness the relief about a flap may
// take (common practice, no source): more leaves no flap to paste.
const mostRelief Length = 1.0 / 4

// Limits beyond which a job is suspect (common practice, no source).
const (
	leastCard       Length = 0.3 // thinner is paper
	leastCorrugated Length = 1.2 // thinner has flutes that are too fine to be crushed by hand
	stiffFolds      Length = 2   // a flap should be this many times as long as the card is thick
	crushedFolds    Length = 3   // of corrugated board, whose fold is crushed as broad as it is thick
)

// The thickest sheets that fold by hand: card, and corrugated board of a single wall,
// which with the coarsest flutes comes to this (common practice, no source).
const (
	mostCard       Length = 4
	mostCorrugated Length = 5
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

// checkTogether holds the job against what can be folded.
func (j Job) checkTogether() job.Problems {
	l := job.NewLimits(j.Unit)
	if len(j.Books) > 1 {
		l.Refuse(job.Problem{Key: job.BookKey(1, "height"), Reason: "a case of card holds one book", Fix: `keep one [[book]], or give construction = "boards"`, Mend: job.Change{Key: "construction", Word: "boards"}})
	}
	in := j.Cavity()
	if j.Card.Kind == Solid {
		l.AtMost("card.thickness", j.Card.Thickness, mostCard, "is too thick for solid card to fold")
	}
	l.AtMost("card.thickness", j.Card.Thickness, in.Thickness, "is more than the whole cavity: no flap so short can be folded")
	l.AtMost("flaps.relief", j.Flaps.Relief, in.Thickness*mostRelief, "leaves too little of flaps as long as the cavity is thick")
	return append(l.Broken, j.CheckLimits()...)
}

// suspects lists what is possible but more often a slip.
func (j Job) suspects() job.Problems {
	ps := j.Suspects()
	c, thick := j.Card.Thickness, j.Cavity().Thickness
	p := job.Problem{Key: "card.thickness", Of: "the thickness of the " + j.Card.name()}
	stiff := stiffFolds
	if j.Card.Kind == Corrugated {
		stiff = crushedFolds
	}
	switch {
	case c == 0:
		p.Reason, p.Fix = "zero makes no allowance at the scores", "measure the "+j.Card.name()+", or keep zero to follow a rule that makes none"
	case j.Card.Kind == Corrugated && c < leastCorrugated:
		p.Value, p.Reason, p.Fix = job.Show(c, j.Unit, 0), "is thin for corrugated board", `measure again with jaws that only just touch; what has no flutes is card.kind = "solid"`
	case c < leastCard:
		p.Value, p.Reason, p.Fix = job.Show(c, j.Unit, 0), "is paper rather than card", "measure again, over several sheets"
	case c*stiff > thick:
		p.Reason = j.Card.name() + " so thick hardly folds to flaps of " + job.Show(thick, j.Unit, 0)
		p.Fix = "try it on a strip, or take " + j.Card.name() + " of at most " + job.Show(thick/stiff, j.Unit, -1)
	default:
		return ps
	}
	return append(ps, p)
}
