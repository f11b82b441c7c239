package onepiece

import (
	"forel/geometry"
	"forel/geometry/plan"
)

// Case is a one-piece slipcase worked out: its blank, and what comes of it when it is
// folded.
type Case struct {
	Job    Job
	Pieces []geometry.Piece // one, the blank
	Proof  Report
}

// work works the case out and proves it by folding its blank up.
func (j Job) work() (Case, error) {
	blank := j.blank()
	proof := Prove(blank, j)
	if !proof.Sound() {
		return Case{}, proof.Problems()
	}
	proof.Clearances = []plan.Fact{plan.LeftFact("body", "in the whole case", proof.Cavity.Less(j.contents()))}
	return Case{Job: j, Pieces: []geometry.Piece{blank}, Proof: proof}, nil
}
