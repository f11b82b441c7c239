// Package handout makes the sheet a teacher gives out: the worksheet with every
// piece and its size, drawings of the pieces, and the steps in order, each with
// a figure drawn from the job's own geometry. It decides no sizes.
package handout

import (
	"forel/geometry"
	"forel/geometry/plan"
	"forel/geometry/work"
	"forel/render/document"
	"forel/render/figure"
)

// Length is a distance in millimetres.
type Length = geometry.Length

// Options say how a handout looks.
type Options struct {
	document.Options
	Tinted bool       // with tints of colour beneath the hatching
	Short  bool       // four pages: no drawings of the pieces, a figure a step
	Times  work.Times // how long work and drying take; nil: as usual
}

// StepDrawings returns the pictures of a step of the work, from 0, as drawings with their
// labels.
func StepDrawings(p plan.Plan, step int, o Options) (out [][]byte) {
	looks := figure.Looks(o.Tinted)
	for _, row := range p.Steps[step].Pictures {
		for _, q := range row {
			out = append(out, figure.Of(q, looks, o.Round.Pretty).SVG(p.Steps[step].Title))
		}
	}
	return out
}
