package box

import (
	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/plan"
)

type conditions struct{}

func (j Job) conditions() conditions { return conditions{} }

type report struct{ plan.Proof }

func prove(ps []geometry.Piece, c conditions) report { return report{} }
func unproved(r report) job.Problems                 { return nil }
func (c made) Plan() plan.Plan                       { return plan.Plan{} }
