package pipeline

import (
	"forel/cmd/jobfile"
	"forel/geometry"
	"forel/geometry/fit"
	"forel/geometry/plan"
	renderfit "forel/render/fit"
	"forel/render/handout"
	"forel/render/index"
)

// Case is a job that was read and worked out, to be looked at in more ways than one.
type Case struct {
	Plan     plan.Plan
	Round    geometry.Rounding // how its sizes are shown
	Warnings jobfile.Issues    // what can be made, but should be looked at

	worked
}

// Case reads the job and works it out. The warnings hold beside an error too, which is
// of type jobfile.Issues.
func (j Job) Case() (c Case, err error) {
	var r Result
	c.worked, err = j.read(&r, nil)
	c.Plan, c.Round, c.Warnings = c.plan, c.round, r.Warnings
	return c, err
}

// Fit tells how the book will fit.
func (c Case) Fit() fit.Report { return fit.Of(c.plan).Weighed(c.weigh) }

// Picture draws the finished case.
func (c Case) Picture() []byte { return index.Picture(c.plan) }

// Tightest draws the place where the book is most likely to be too tight.
func (c Case) Tightest() []byte { return renderfit.Tightest(c.Fit(), c.printed()) }

// Figures draws the pictures of a step of the work, from 0.
func (c Case) Figures(step int) [][]byte {
	return handout.StepDrawings(c.plan, step, handout.Options{Options: c.printed()})
}
