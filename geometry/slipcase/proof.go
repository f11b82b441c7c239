package slipcase

import (
	"forel/geometry"
	"forel/geometry/foldup"
	"forel/geometry/plan"
	"forel/geometry/stage"
)

// Report is the proof of a case of boards, with what only such a case has.
type Report struct {
	plan.Proof
	Carcass   Carcass
	Dividers  []plan.Solid // from left to right, each by its left face
	Clearance Left
}

// Prove folds the pieces of a case up, knowing them by their outlines, cuts, folds
// and seats alone, and looks at the result. Of the job it asks what no piece tells: what
// the case is for, how thick things are, and what is meant to be covered.
func Prove(pieces []geometry.Piece, j Job) Report {
	c, faults := Build(pieces, j.Edge())
	if len(faults) > 0 {
		return Report{Proof: plan.Proof{Faults: faults}}
	}
	r := Report{Carcass: c}
	var coverings []geometry.Piece
	for _, p := range pieces {
		if p.Material != geometry.Board && p.Material != geometry.Lining {
			coverings = append(coverings, p)
		}
	}
	v, faults := c.Body(j).Cover(coverings, j.thick)
	faces, wrong := v.Look(pieces,
		func() []foldup.Fault { return c.rims(v) },
		func() []foldup.Fault { return c.linings(pieces, j) },
		func() []foldup.Fault {
			if j.liningAfter() == 0 {
				return nil
			}
			return c.linedAfter(v, pieces, j.Lining.Thickness)
		})
	r.Faces, r.Faults = faces, append(faults, wrong...)
	r.stand(v, pieces, j)
	r.clear(j)
	r.show(pieces, j)
	return r
}

// thick returns how thick a layer of a covering is.
func (j Job) thick(p geometry.Piece) Length {
	if p.Material == geometry.Cloth {
		return j.Cloth.Thickness
	}
	return j.SidePaper.Thickness
}

// ground returns what a face inside shows where nothing is turned in. Linings
// that go in last would hide what is turned in, so they are left out.
func (j Job) ground() foldup.Ground {
	switch {
	case j.Lining.Thickness == 0:
		return foldup.BareBoard
	case !j.linedBefore():
		return foldup.Ground{Name: "board, to be lined", Stuff: stage.Board, State: "lined last"}
	}
	return foldup.Ground{Name: "lining", Stuff: stage.Lining, State: "lined"}
}
