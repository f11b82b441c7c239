package pipeline

import (
	"forel/cmd/jobfile"
	"forel/geometry"
	"forel/geometry/fit"
	"forel/geometry/onepiece"
	"forel/geometry/plan"
	"forel/geometry/slipcase"
	"forel/render/handout"
	"forel/render/templates"
)

// kind is a case worked out, of whatever kind, as the commands ask of it.
type kind interface {
	Plan() plan.Plan
	fit(fit.Scale) fit.Report
	handout() handout.Subject
}

// makeKind works out the case that a job asks for.
func makeKind(f jobfile.File) (kind, error) {
	if f.Construction == jobfile.Card {
		c, err := onepiece.Make(f.Card)
		return card{c, f.Job}, err
	}
	c, err := slipcase.Make(f.Job)
	return boards{c}, err
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

// boards is a case of boards.
type boards struct{ slipcase.Case }

func (b boards) fit(s fit.Scale) fit.Report { return fit.Of(b.Case).Weighed(b.Case, s) }
func (b boards) handout() handout.Subject   { return handout.Of(b.Case) }

// card is a case of scored card.
type card struct {
	onepiece.Case
	job slipcase.Job // its book and what is unsure
}

func (c card) fit(s fit.Scale) fit.Report { return fit.OfCard(c.Case).WeighedCard(c.Case, s) }
func (c card) handout() handout.Subject   { return handout.OfCard(c.Case) }
