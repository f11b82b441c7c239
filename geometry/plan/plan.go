// Package plan is a case worked out, of whatever kind: all that is drawn,
// listed or printed of it. What makes a case returns a Plan; what renders one asks
// nothing else.
package plan

import (
	"slices"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/stage"
)

// Length is a distance in millimetres.
type Length = geometry.Length

// Size is the extent of a space: head to tail, spine to mouth, side to side.
type Size = job.Size

// Plan is a case worked out.
type Plan struct {
	Title     string
	Kind      string // what is made, such as "slipcase of five boards"
	Shows     string // what a picture of the finished thing shows, for who can't see it
	Content   string // what it is for, such as "book" or "3 volumes together"
	Pieces    []geometry.Piece
	Faces     []geometry.Piece // of patterned stock: each piece that is cut, seen from its face, to lay on the pattern
	Materials []Material
	Equals    []Equal    // sides of pieces that must be the same
	Batches   []Batch    // what is printed and made before the next is measured for; none: all at once
	InParts   string     // what to say of the order of the batches; a sentence without capital and full stop
	Remarks   []Remark   // what to know of the sizes
	Runs      string     // how the width and the height of the pieces run
	Warnings  []string   // what looks like a slip, or needs care
	Mistaken  []Mistaken // which pieces could be mistaken for which
	Facts     []Fact     // what the finished thing measures and what is left in it
	Tools     []string   // what to lay ready
	Worksheet []Group    // the lines of the worksheet, pieces left out
	Steps     []Step     // the order of work
	Finished  Care       // the checks of the finished thing
	Proof     Proof      // the case folded up
	Chain     Chain      // how the room that is left comes about
	Gauges    []Gauge    // strips of paper to try round the book
	Load      Load       // what bears the weight
}

// Checks returns what is tried at the bench, in the order of the steps.
func (p Plan) Checks() []Check {
	var out []Check
	for i, s := range p.Steps {
		for _, c := range s.Checks {
			c.Step = i + 1
			out = append(out, c)
		}
	}
	return out
}

// Drawn returns all that templates are drawn of: the pieces and their faces.
func (p Plan) Drawn() []geometry.Piece {
	return append(p.Pieces[:len(p.Pieces):len(p.Pieces)], p.Faces...)
}

// Machined returns what a machine cuts: the pieces, those of patterned stock from
// their face, since stock is laid on its bed so that the pattern is seen.
func (p Plan) Machined() []geometry.Piece {
	faced := map[string]bool{}
	for _, f := range p.Faces {
		faced[f.FaceOf] = true
	}
	var out []geometry.Piece
	for _, q := range p.Pieces {
		if !faced[q.Name] {
			out = append(out, q)
		}
	}
	return append(out, p.Faces...)
}

// Material is what pieces are cut from, as measured.
type Material struct {
	Of        geometry.Material
	Thickness Length
	Grammage  float64 // g/m² as sold; 0: not told
	Fitted    bool    // its thickness counts in all that is cut to fit
}

// Thickness returns that of the material pieces are cut from; 0 where it is not told.
func (p Plan) Thickness(m geometry.Material) Length {
	for _, have := range p.Materials {
		if have.Of == m {
			return have.Thickness
		}
	}
	return 0
}

// Grammage returns that of the material, in g/m²; 0 where it is not told.
func (p Plan) Grammage(m geometry.Material) float64 {
	for _, have := range p.Materials {
		if have.Of == m {
			return have.Grammage
		}
	}
	return 0
}

// Equal is sides of pieces that must be of one length, and so are cut at one setting
// of the fence.
type Equal struct {
	What    string   // "the width of the three walls"
	Widths  []string // the pieces whose width it is
	Heights []string // the pieces whose height it is
	Strip   bool     // they are to come off one strip
}

// Has tells whether it is the width, and whether the height, of a piece.
func (e Equal) Has(piece string) (width, height bool) {
	return slices.Contains(e.Widths, piece), slices.Contains(e.Heights, piece)
}

// Batch is pieces that are made together, under a name that they can be asked for by.
type Batch struct {
	Name   string // "small tray"
	Pieces []string
}

// Remark is a sentence with lengths in it, each at a %s.
type Remark = stage.Say

// Say returns a Remark.
func Say(text string, lengths ...Length) Remark { return stage.Words(text, lengths...) }
