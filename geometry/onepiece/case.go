package onepiece

import (
	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/plan"
)

// Case is a one-piece slipcase worked out: its blank, and what it measures when
// it is folded.
type Case struct {
	Job      Job
	Pieces   []geometry.Piece // one, the blank
	Cavity   plan.Size
	Outside  plan.Size
	Proof    Report
	Suspects job.Problems // what is possible but looks like a slip
}

// work works the case out and proves it by folding its blank up.
func (j Job) work(suspects job.Problems) (Case, error) {
	blank := j.blank()
	proof := Prove(blank, j)
	if !proof.Sound() {
		return Case{}, proof.Problems()
	}
	proof.Clearances = []plan.Fact{plan.LeftFact("body", "in the whole case", proof.Cavity.Less(j.contents()))}
	return Case{
		Job:      j,
		Pieces:   []geometry.Piece{blank},
		Cavity:   j.Cavity(),
		Outside:  j.Outside(),
		Proof:    proof,
		Suspects: suspects,
	}, nil
}
