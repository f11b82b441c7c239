package slipcase

import "forel/geometry/plan/plantest"

// Make checks a job and works its case out.
func Make(j Job) (Case, error) { return plantest.Make[Case](j) }
