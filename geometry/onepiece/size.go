package onepiece

import "forel/geometry/plan"

// contents returns what stands in the case.
func (j Job) contents() plan.Size { return j.Book().Size() }

// Cavity returns the space inside: the book with its clearance.
func (j Job) Cavity() plan.Size { return j.contents().Plus(j.Clearance) }

// Outside returns the finished case: two layers at head and tail, one elsewhere,
// none at the mouth.
func (j Job) Outside() plan.Size {
	in, c := j.Cavity(), j.Card.Thickness
	return plan.Size{Height: in.Height + 4*c, Width: in.Width + c, Thickness: in.Thickness + 2*c}
}

// noBend is a bend that is none: two folds no farther apart are one place when a blank is
// folded up.
const noBend Length = 3e-5

// bend returns what a panel is longer than its inside measure at one fold.
func (c Card) bend() Length {
	if b := c.Thickness * Length(c.Bend); b > noBend {
		return b
	}
	return 0
}

// scores are where the scores of a blank lie: across from the mouth edge of
// the left side, and up from the middle of its height. Those at the tail mirror
// those at the head.
type scores struct {
	left, right Length // the spine scores
	width       Length // the whole blank
	inner       Length // head score of the left side, whose flap is the inner one
	outer       Length // head scores of spine and right side, one thickness further out
	inside      Length // not a score: where the inner flap's inside comes to lie
}

// scores works out the scores from the inside measures; see the allowance in the
// doc of the package.
func (j Job) scores() scores {
	in, b := j.Cavity(), j.Card.bend()
	var s scores
	s.left = in.Width + b
	s.right = s.left + in.Thickness + 2*b
	s.width = s.right + s.left
	s.inside = in.Height / 2
	s.inner = s.inside + b
	s.outer = s.inner + j.Card.Thickness
	return s
}

// Scored returns the distances that are marked and scored on the blank: from
// head score to tail score of the left side, whose flaps lie inside; from the
// mouth edge to the spine score beside it; between the two spine scores.
func (j Job) Scored() plan.Size {
	s := j.scores()
	return plan.Size{Height: 2 * s.inner, Width: s.left, Thickness: s.right - s.left}
}
