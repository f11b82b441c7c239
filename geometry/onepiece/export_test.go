package onepiece

import (
	"forel/geometry/job"
	"forel/geometry/plan/plantest"
)

// Make checks a job and works its case out.
func Make(j Job) (Case, error) { return plantest.Make[Case](j) }

// Suspects lists what of a case is possible but more often a slip.
func (c Case) Suspects() job.Problems { return c.Job.suspects() }
