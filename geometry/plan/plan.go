// Package plan is a case worked out, of whatever kind: all that is drawn,
// listed or printed of it. What makes a case gives a Plan; what renders one asks
// nothing else.
package plan

import (
	"fmt"

	"forel/geometry"
)

// Length is a distance in millimetres.
type Length = geometry.Length

// Size is the extent of a space: head to tail, spine to mouth, side to side.
type Size struct{ Height, Width, Thickness Length }

// Fit is what a stacked dry fit shows: how far a side reaches beyond the book
// at the fore-edge when laid flush with its spine, and at the head or the tail
// when laid flush with the other. Of several books the tallest and the deepest.
type Fit struct{ ForeEdge, HeadOrTail Length }

// Mouth is the clearance left where the case is tightest.
type Mouth struct {
	Height        Length // head to tail
	HeightCorners Length // head to tail in the corners
	Thickness     Length // side to side, in the tightest compartment
}

// Plan is a case worked out.
type Plan struct {
	Title     string
	Kind      string // what is made, such as "slipcase of five boards"
	Content   string // what it is for, such as "book" or "3 volumes together"
	Pieces    []geometry.Piece
	Faces     []geometry.Piece // of patterned stock: each piece that is cut, seen from its face, to lay on the pattern
	Contents  Size             // what stands in the case
	Cavity    Size             // the room inside
	Outside   Size
	Fit       Fit
	Mouth     Mouth
	Materials []Material
	Remarks   []Remark // what to know of the sizes
	Cutting   []Remark // what to do when cutting
	Order     []string // the order of work, where Cutting does not tell it
	Warnings  []string // what looks like a slip, or needs care
	Mistaken  []string // which pieces could be mistaken for which
}

// Drawn gives all that patterns are drawn of: the pieces and their faces.
func (p Plan) Drawn() []geometry.Piece {
	return append(p.Pieces[:len(p.Pieces):len(p.Pieces)], p.Faces...)
}

// Machined gives what a machine cuts: the pieces, those of patterned stock from
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
	Name      string
	Thickness Length
}

// Thickness gives that of the material pieces are cut from; 0 where it is not told.
func (p Plan) Thickness(m geometry.Material) Length {
	for _, have := range p.Materials {
		if have.Name == string(m) || m == geometry.Paper && (have.Name == m.Called(true) || have.Name == m.Called(false)) {
			return have.Thickness
		}
	}
	return 0
}

// Remark is a sentence with lengths in it, each at a %s.
type Remark struct {
	Text    string
	Lengths []Length
}

// Say is short for a Remark.
func Say(text string, lengths ...Length) Remark { return Remark{text, lengths} }

// In writes the remark with its lengths as the rounding has them.
func (r Remark) In(round func(Length) string) string {
	args := make([]any, len(r.Lengths))
	for i, l := range r.Lengths {
		args[i] = round(l)
	}
	return fmt.Sprintf(r.Text, args...)
}
