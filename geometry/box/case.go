package box

import (
	"slices"
	"strings"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/plan"
)

// Named lists the keys for what its materials are called.
var Named = []plan.Named{
	{Key: "box.board_name", Material: geometry.Board}, {Key: "box.cloth_name", Material: geometry.Cloth}, {Key: "box.lining_name", Material: geometry.Lining},
	{Key: "box.case_board_name", Material: geometry.CaseBoard}, {Key: "box.case_cloth_name", Material: geometry.CaseCloth},
	{Key: "box.hinge_cloth_name", Material: geometry.HingeCloth}, {Key: "box.lid_lining_name", Material: geometry.LidLining},
}

// made is a box worked out.
type made struct {
	job      Job // as the small tray is cut
	stands   Job // as that stands: what the rest is cut for
	pieces   []geometry.Piece
	proof    report
	suspects job.Problems // what is possible but looks like a slip
}

// work works the box out and proves it.
func (j Job) work(suspects job.Problems) (made, error) {
	s := j.standing()
	pieces := s.pieces()
	if proof := prove(pieces, s.conditions()); !proof.Sound() {
		return made{}, unproved(proof)
	} else {
		pieces = fitted(j.pieces(), pieces)
		plan.MarkMistakable(pieces)
		return made{job: j, stands: s, pieces: pieces, proof: proof, suspects: suspects}, nil
	}
}

// fitted returns the pieces to cut: boards and cloth of the small tray as planned, all
// else for that tray as it stands.
func fitted(planned, standing []geometry.Piece) []geometry.Piece {
	out := slices.Clone(standing)
	for i, p := range planned {
		if strings.HasPrefix(p.Name, smallName) && p.Name != smallName+liningOf {
			out[i] = p
		}
	}
	return out
}
