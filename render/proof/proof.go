// Package proof shows what folding a case up has found: as words, as JSON, and
// as pictures of the case from outside at an angle and of every face with what
// lies on it. It decides no sizes and judges nothing; both come with the
// report.
package proof

import (
	"fmt"

	"forel/geometry"
	"forel/geometry/foldup"
	"forel/geometry/slipcase"
	"forel/geometry/wording"
	"forel/render/document"
)

// Length is a distance in millimetres.
type Length = geometry.Length

// Lining tells when the inside of a case is lined.
type Lining string

// When linings go in.
const (
	Unlined     Lining = "none"
	LinedBefore Lining = "before" // pasted to the boards before they are joined
	LinedAfter  Lining = "after"  // pasted in when the case is covered, over what is turned in
)

// Subject is a case that was folded up, sound or not.
type Subject struct {
	Title        string
	Pieces       []geometry.Piece // in the order they are glued; their names and materials are used
	Report       foldup.Report
	Lining       Lining
	Compartments int  // one or more
	MayShow      bool // board is left bare outside on purpose
}

// Of gives the subject of a case that was worked out.
func Of(c slipcase.Case) Subject {
	s := Subject{Title: c.Job.Title, Pieces: c.Pieces, Report: c.Proof, Lining: LinedBefore, Compartments: 1,
		MayShow: c.Job.Covering == slipcase.SidesOnly}
	switch {
	case c.Job.Lining.Thickness == 0:
		s.Lining = Unlined
	case c.Job.Lining.Order == slipcase.LinedAfter:
		s.Lining = LinedAfter
	}
	if c.Job.Compartments == slipcase.EachItsOwn {
		s.Compartments = max(1, len(c.Job.Books))
	}
	return s
}

// Options say how the pictures are laid out.
type Options = document.Options

// leastAcross is what the tables of the picture take between the margins.
const leastAcross Length = 165

// Check tells why the picture can't be drawn on a sheet, nil if it can.
func Check(o Options) error {
	if room := o.Setup.Reach(false).Width(); room < leastAcross*0.97 {
		return fmt.Errorf("%v with margins of %v leaves %.4g mm across for the picture of the proof; at least %.4g mm are needed",
			o.Setup.Sheet, o.Setup.Margins, room.MM(), leastAcross.MM())
	}
	return nil
}

// inside gives the look of a face inside where nothing is turned in. Linings
// that go in last would hide what is turned in, so they are not drawn.
func (s Subject) inside(k looks) look {
	switch s.Lining {
	case LinedBefore:
		return k.lining
	case LinedAfter:
		l := k.board
		l.name = "board, to be lined"
		return l
	}
	return k.board
}

// name gives the job's title on one line, or what the thing is.
func (s Subject) name() string {
	if t := wording.OneLine(s.Title); t != "" {
		return t
	}
	return "Slipcase"
}
