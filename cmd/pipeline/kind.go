package pipeline

import (
	"forel/cmd/jobfile"
	"forel/geometry"
	"forel/geometry/fit"
	"forel/geometry/onepiece"
	"forel/geometry/plan"
	"forel/geometry/slipcase"
	"forel/render/handout"
	"forel/render/proof"
	"forel/render/templates"
)

// kind is a case worked out, of whatever kind, as the commands ask of it.
type kind interface {
	Plan() plan.Plan
	fit(fit.Scale) fit.Report
	handout() handout.Subject
	proofText(geometry.Rounding) []byte
	proofJSON() ([]byte, error)
	proofDrawn(proof.Options) picture
}

// picture is a drawing in both formats.
type picture interface {
	SVG() []byte
	PDF() ([]byte, error)
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

func (b boards) fit(s fit.Scale) fit.Report           { return fit.Of(b.Case).Weighed(b.Case, s) }
func (b boards) handout() handout.Subject             { return handout.Of(b.Case) }
func (b boards) proofText(r geometry.Rounding) []byte { return proof.Text(proof.Of(b.Case), r) }
func (b boards) proofJSON() ([]byte, error)           { return proof.JSON(proof.Of(b.Case)) }
func (b boards) proofDrawn(o proof.Options) picture   { return proof.Draw(proof.Of(b.Case), o) }

// card is a case of scored card.
type card struct {
	onepiece.Case
	job slipcase.Job // its book and what is unsure
}

func (c card) fit(s fit.Scale) fit.Report           { return fit.OfCard(c.Case).WeighedCard(c.Case, s) }
func (c card) handout() handout.Subject             { return handout.OfCard(c.Case) }
func (c card) proofText(r geometry.Rounding) []byte { return proof.CardText(c.Case, r) }
func (c card) proofJSON() ([]byte, error)           { return proof.CardJSON(c.Case) }
func (c card) proofDrawn(o proof.Options) picture   { return proof.DrawCard(c.Case, o) }
