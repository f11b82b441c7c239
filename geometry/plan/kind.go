package plan

import "forel/geometry/job"

// Job is the job of one kind of case: all that a maker settles before cutting.
type Job interface {
	// Shared returns what jobs of every kind have; the caller may change it.
	Shared() *job.Common
	// Settings returns every setting of the kind in the order of a job file,
	// those of Shared among them. A change of one changes the job.
	Settings() job.Settings
	// Check returns every reason the job can't be made, each with the smallest
	// change that would do, and what is possible but looks like a slip.
	Check() (refused, suspect job.Problems)
	// Make works the case out and proves it. An error is of type job.Problems.
	Make() (Plan, error)
}

// Kind is one row of the table of kinds.
type Kind struct {
	Name  string     // the word of the key "kind" of a job file
	About string     // what it is, in a few words, for help and messages
	New   func() Job // a job with no book and every default set
}
