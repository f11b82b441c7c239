package slipcase

import (
	"forel/geometry/foldup"
	"forel/geometry/job"
	"forel/geometry/plan/plantest"
)

// Make checks a job and works its case out.
func Make(j Job) (Case, error) { return plantest.Make[Case](j) }

// Meet tells how lines of the linings meet at the inner corners, as the proof does.
func Meet(c Case) (remarks []string, faults []foldup.Fault) {
	return meet(meetings(c.Pieces, c.Faces, c.Job.Lining.Thickness))
}

// Suspects lists what of a case is possible but more often a slip.
func (c Case) Suspects() job.Problems { return c.Job.suspects() }
