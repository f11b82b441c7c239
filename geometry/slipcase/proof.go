package slipcase

import (
	"forel/geometry"
	"forel/geometry/foldup"
)

// prove folds the pieces up.
func (j Job) prove(pieces []geometry.Piece) foldup.Report {
	b := j.Book()
	return foldup.Prove(pieces, j.Lined(),
		foldup.Book{Height: b.Height.Largest(), Width: b.Width.Largest(), Thickness: b.Thickness.Largest()},
		foldup.Thickness{geometry.Cloth: j.Cloth.Thickness, geometry.Paper: j.SidePaper.Thickness})
}

// unproved gives what the proof found as problems. Job.Check names what a
// maker can change before it comes to this.
func unproved(r foldup.Report) Problems {
	var ps Problems
	for _, f := range r.Faults {
		ps = append(ps, Problem{Key: "proof", Wrong: f.String(), Right: "change the lengths of the piece it names"})
	}
	return ps
}
