package slipcase

import (
	"forel/geometry"
	"forel/geometry/foldup"
	"forel/geometry/job"
)

// prove folds the pieces up.
func (j Job) prove(pieces []geometry.Piece) foldup.Report {
	lining := Length(0)
	if !j.linedBefore() {
		lining = j.Lining.Thickness
	}
	c := j.contents()
	return foldup.Prove(pieces, foldup.Conditions{
		Edge:         j.Edge(),
		Lining:       lining,
		Height:       c.Height,
		Width:        c.Width,
		Thickness:    c.Thickness,
		Compartments: j.compartments(),
		Layer:        map[geometry.Material]Length{geometry.Cloth: j.Cloth.Thickness, geometry.Paper: j.SidePaper.Thickness},
		LinedShort:   linedShort,
		LinedStep:    liningStep,
		Lined:        j.Lining.Thickness > 0,
		SidesOnly:    j.Covering == SidesOnly,
		Border:       j.SidePaper.Inset,
		Divider:      j.dividerThickness(),
		HoleChord:    holeChord,
		HoleGap:      j.holeGap(),
	})
}

// unproved gives what the proof found as problems. Job.Check names what a
// maker can change before it comes to this.
func unproved(r foldup.Report) job.Problems {
	var ps job.Problems
	for _, f := range r.Faults {
		ps = append(ps, job.Problem{Key: "proof", Reason: f.String(), Fix: "change the lengths of the piece it names"})
	}
	return ps
}
