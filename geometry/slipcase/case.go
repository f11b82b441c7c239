package slipcase

import (
	"slices"

	"forel/geometry"
	"forel/geometry/plan"
)

// Named lists the keys for what its materials are called.
var Named = []plan.Named{
	{Key: "board.name", Material: geometry.Board}, {Key: "lining.name", Material: geometry.Lining},
	{Key: "cloth.name", Material: geometry.Cloth}, {Key: "side_paper.name", Material: geometry.Paper},
}

// Case is a slipcase worked out: every piece with its size.
type Case struct {
	Job    Job
	Stands Job // what covers the carcass is worked out for, and measures that tell of the finished case
	Pieces []geometry.Piece
	Faces  []geometry.Piece // of patterned stock, see plan.Plan
	Proof  Report
	lying  []geometry.Piece // the pieces as they lie on the case, before they are cut smaller for their stretch
}

// work works the case out and proves it by folding its pieces up.
func (j Job) work() (Case, error) {
	s := j.standing()
	pieces := s.pieces()
	proof := Prove(pieces, s)
	if !proof.Sound() {
		return Case{}, proof.Problems()
	}
	lying := slices.Clone(pieces)
	if j.AsBuilt.Measured() {
		pieces = fitted(j.pieces(), pieces)
	}
	pieces = append(pieces, s.holeStrips()...)
	for i, p := range pieces {
		switch p.Material {
		case geometry.Cloth:
			pieces[i] = shrunk(p, j.Cloth.Stretch)
		case geometry.Paper:
			pieces[i] = shrunk(p, j.SidePaper.Stretch)
		}
	}
	if j.Cloth.Corners == CornersMarked {
		for i, p := range pieces {
			pieces[i] = marked(p)
		}
	}
	plan.MarkMistakable(pieces)
	faces := s.faces(pieces)
	said, wrong := meet(meetings(pieces, faces, s.Lining.Thickness))
	if proof.Remarks, proof.Faults = append(proof.Remarks, said...), append(proof.Faults, wrong...); !proof.Sound() {
		return Case{}, proof.Problems()
	}
	return Case{
		Job:    j,
		Stands: s,
		Pieces: pieces,
		Faces:  faces,
		Proof:  proof,
		lying:  lying,
	}, nil
}

// pieces returns every piece as it is when it lies on the case.
func (j Job) pieces() []geometry.Piece {
	boards := j.boards()
	pieces := append(boards, j.linings(boards)...)
	pieces = append(pieces, j.dividerPieces()...)
	switch j.Covering {
	case AllCloth, AllPaper:
		pieces = append(pieces, j.wrap())
		for _, e := range ends {
			pieces = append(pieces, j.endPanel(e))
		}
	case SidesOnly:
		pieces = append(pieces, j.sidePaper())
	default:
		pieces = append(pieces, j.spineCloth())
		for _, e := range ends {
			pieces = append(pieces, j.endCloth(e))
		}
		pieces = append(pieces, j.sidePaper())
	}
	return pieces
}
