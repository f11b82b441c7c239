package pipeline

import (
	"fmt"
	"strings"

	"forel/cmd/jobfile"
	"forel/geometry"
	"forel/geometry/fit"
	"forel/geometry/plan"
	"forel/paper"
	renderfit "forel/render/fit"
	"forel/render/handout"
	"forel/render/index"
	"forel/render/templates"
)

// Case is a job that was read and worked out, to be looked at in more ways than one.
type Case struct {
	worked
	Warnings jobfile.Issues // what can be made, but should be looked at
}

// Case reads the job and works it out. The warnings hold beside an error too, which is
// of type jobfile.Issues.
func (j Job) Case() (c Case, err error) {
	var r Result
	c.worked, err = j.read(&r, nil)
	c.Warnings = r.Warnings
	return c, err
}

// Plan returns the case worked out.
func (c Case) Plan() plan.Plan { return c.plan }

// Round says how its sizes are shown.
func (c Case) Round() geometry.Rounding { return c.round }

// Fit tells how the book will fit.
func (c Case) Fit() fit.Report { return fit.Of(c.plan).Weighed(c.plan, c.weigh) }

// Picture draws the finished case.
func (c Case) Picture() []byte { return index.Picture(c.plan) }

// Tightest draws the place where the book is most likely to be too tight.
func (c Case) Tightest() []byte { return renderfit.Tightest(c.Fit(), c.printed()) }

// Figures draws the pictures of each step.
func (c Case) Figures() [][][]byte {
	return handout.StepDrawings(c.plan, handout.Options{Options: c.printed()})
}

// Pages draws the pages of a document as they will be printed: of the files that Paged
// lists.
func (c Case) Pages(file string) ([][]byte, error) {
	switch file {
	case templatesName:
		return templates.Drawings(c.plan, templates.Lay(c.plan, c.plan.Drawn(), c.printed(), paper.Options{}), c.printed()), nil
	case handoutName:
		return handout.Drawings(c.plan, handout.Options{Options: c.printed()}), nil
	}
	return nil, fmt.Errorf("no pages of %.40q: give %s", file, strings.Join(Paged, ", "))
}

// Paged are the documents whose pages can be looked at.
var Paged = []string{templatesName, handoutName}
