package plan

import (
	"strings"

	"forel/geometry"
	"forel/geometry/job"
)

// Job is the job of one kind of case: all that a maker settles before cutting.
type Job interface {
	// Shared returns what jobs of every kind have; the caller may change it.
	Shared() *job.Common
	// Settings returns every setting of the kind in the order of a job file,
	// those of Shared among them. A change of one changes the job.
	Settings() job.Settings
	// Check returns every reason the job can't be made, each with the smallest
	// change that would do, and what is possible but looks like a slip. It first
	// holds each setting against its own limits; only when those pass, what fits
	// together. Where nothing is refused, sound is the job as it is now.
	Check() (sound Checked, refused, suspect job.Problems)
}

// Built is the job of a kind of which a part is measured while it is made.
type Built interface {
	// Unbuilt takes back what was measured: the job is then as it was planned.
	Unbuilt()
}

// Planned returns the job as it was before any of it was made and measured.
func (k Kind) Planned(j Job) Job {
	p := k.copied(j)
	if b, ok := p.(Built); ok {
		b.Unbuilt()
	}
	return p
}

// Checked is a job that was checked and is not checked again.
type Checked interface {
	// Make works the case out and proves it. An error is of type job.Problems: what
	// the proof found.
	Make() (Plan, error)
}

// Sound is the Checked of a kind whose cases are of type C: it works the case out and
// proves it.
type Sound[C interface{ Plan() Plan }] func() (C, error)

// Make returns the plan of the case.
func (work Sound[C]) Make() (Plan, error) {
	c, err := work()
	if err != nil {
		return Plan{}, err
	}
	return c.Plan(), nil
}

// Kind is one row of the table of kinds.
type Kind struct {
	Name         string                  // the word of the key "kind" of a job file
	Construction string                  // the word of the key "construction"; empty where the kind is made in one way
	About        string                  // what is made, in a sentence: "a case of boards"
	New          func(geometry.Unit) Job // a job with no book and every default set, round in the unit
	Named        []Named                 // of its materials, the keys of a job file for what the maker calls them
}

// Named is the key of a job file for what the maker calls a material.
type Named struct {
	Key      string
	Material geometry.Material
}

// Thickness returns the key of the material's thickness: board.thickness for board.name,
// chemise.board for chemise.board_name.
func (n Named) Thickness() string {
	if stem, ok := strings.CutSuffix(n.Key, "_name"); ok {
		return stem
	}
	return strings.TrimSuffix(n.Key, "name") + "thickness"
}
