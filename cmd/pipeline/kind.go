package pipeline

import (
	"forel/cmd/jobfile"
	"forel/geometry"
	"forel/geometry/onepiece"
	"forel/geometry/plan"
	"forel/geometry/slipcase"
	"forel/render/templates"
)

// makePlan works out the case that a job asks for.
func makePlan(f jobfile.File) (plan.Plan, error) {
	if f.Construction == jobfile.Card {
		return f.Card.Make()
	}
	return f.Job.Make()
}

// drawingNames gives the files of drawings that templates of any kind may have.
func drawingNames() (files []string) {
	for _, names := range [][]string{slipcase.PieceNames, slipcase.FaceNames, {onepiece.PieceName}} {
		for _, n := range names {
			files = append(files, templates.FileName(geometry.Piece{Name: n}))
		}
	}
	return files
}
