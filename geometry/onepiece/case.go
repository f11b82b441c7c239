package onepiece

import (
	"forel/geometry"
	"forel/geometry/slipcase"
	"forel/geometry/wording"
)

// Case is a one-piece slipcase worked out: its blank, and what it measures when
// it is folded.
type Case struct {
	Job      Job
	Pieces   []geometry.Piece // one, the blank
	Cavity   slipcase.Size
	Outside  slipcase.Size
	Proof    Report
	Suspects slipcase.Problems // what is possible but looks like a slip
}

// Make works out the case for a job and proves it by folding its blank up. A
// job that can't be made gives slipcase.Problems, all of them, and no case.
func Make(j Job) (Case, error) {
	refused, suspects := j.Check()
	if len(refused) > 0 {
		return Case{}, refused
	}
	blank := j.blank()
	proof := Prove(blank, j.Card, j.Cavity(), j.Flaps.Relief)
	if !proof.Sound() {
		return Case{}, unproved(proof)
	}
	return Case{
		Job:      j,
		Pieces:   []geometry.Piece{blank},
		Cavity:   j.Cavity(),
		Outside:  j.Outside(),
		Proof:    proof,
		Suspects: suspects,
	}, nil
}

// unproved gives what the proof found as problems. Job.Check names what a
// maker can change before it comes to this.
func unproved(r Report) slipcase.Problems {
	var ps slipcase.Problems
	for _, f := range r.Faults {
		ps = append(ps, slipcase.Problem{Key: "proof", Wrong: f.String(), Right: "change the length it names"})
	}
	return ps
}

// Steps tells how to make the case from its blank, in order, a line a step.
// (Common practice, no source.)
func (c Case) Steps() []string {
	return []string{
		"Take care: " + wording.Brief + ".",
		"Try the scores on a strip of the same card: fold it, measure, and change card.bend if an inside measure is off.",
		"Score every fold, then cut the outline and the slits, all at head and tail before folding.",
		"Fold both sides up from the spine, inside in.",
		"Fold the inner flaps of the left side in at head and tail: they lie inside.",
		"Paste the inside of the spine flaps and fold them onto the inner flaps.",
		"Paste the inside of the outer flaps and fold them onto the inner flaps beside the spine flaps: they lie outside.",
		"Let it dry under a weight with the mouth open, filled with something as thick as the book.",
	}
}
