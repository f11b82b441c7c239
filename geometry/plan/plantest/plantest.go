// Package plantest is for tests: it checks a job and works its case out in one go.
package plantest

import (
	"forel/geometry/job"
	"forel/geometry/plan"
)

// Job is a job of any kind.
type Job interface {
	Check() (sound plan.Checked, refused, suspect job.Problems)
}

// Plan returns the plan of a job. An error is of type job.Problems.
func Plan(j Job) (plan.Plan, error) {
	sound, refused, _ := j.Check()
	if len(refused) > 0 {
		return plan.Plan{}, refused
	}
	return sound.Make()
}

// Make returns the case of a job, which is of type C: all that its own package knows of
// it, not only its plan. An error is of type job.Problems.
func Make[C interface{ Plan() plan.Plan }](j Job) (c C, err error) {
	sound, refused, _ := j.Check()
	if len(refused) > 0 {
		return c, refused
	}
	return sound.(plan.Sound[C])()
}
