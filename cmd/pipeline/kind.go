package pipeline

import (
	"errors"

	"forel/cmd/jobfile"
	"forel/geometry"
	"forel/geometry/kinds"
	"forel/geometry/onepiece"
	"forel/geometry/plan"
	"forel/geometry/slipcase"
	"forel/render/proof"
	"forel/render/templates"
)

// kind is a case worked out, of whatever kind, as the commands ask of it.
type kind interface {
	Plan() plan.Plan
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
	switch j := f.Case.(type) {
	case interface{ Work() (onepiece.Case, error) }:
		c, err := j.Work()
		return card{c}, err
	case interface{ Work() (slipcase.Case, error) }:
		c, err := j.Work()
		return boards{c}, err
	}
	return nil, errors.New("no such kind")
}

// drawingNames returns the files of drawings that templates of any kind may have.
func drawingNames() (files []string) {
	for _, n := range kinds.Pieces() {
		files = append(files, templates.FileName(geometry.Piece{Name: n}))
	}
	return files
}

// boards is a case of boards.
type boards struct{ slipcase.Case }

func (b boards) proofText(r geometry.Rounding) []byte { return proof.Text(proof.Of(b.Case), r) }
func (b boards) proofJSON() ([]byte, error)           { return proof.JSON(proof.Of(b.Case)) }
func (b boards) proofDrawn(o proof.Options) picture   { return proof.Draw(proof.Of(b.Case), o) }

// card is a case of scored card.
type card struct{ onepiece.Case }

func (c card) proofText(r geometry.Rounding) []byte { return proof.CardText(c.Case, r) }
func (c card) proofJSON() ([]byte, error)           { return proof.CardJSON(c.Case) }
func (c card) proofDrawn(o proof.Options) picture   { return proof.DrawCard(c.Case, o) }
