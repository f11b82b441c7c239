// Package slipcase works out the pieces of a slipcase from the measurements
// of a book and of the materials it is made of.
//
// The case stands on its tail with its mouth toward the viewer: left and right
// are the viewer's. Two sides and three walls (spine, head, tail) of board,
// lined before they are joined, make the carcass; cloth goes over the spine,
// the head and the tail; paper goes over the sides.
package slipcase

import (
	"forel/geometry"
	"forel/geometry/job"
)

// Length is a distance in millimetres.
type Length = geometry.Length

// Job is everything a maker settles before cutting.
type Job struct {
	job.Common
	Compartments string // OneCompartment or EachItsOwn
	Covering     string // ClothAndPaper, AllCloth, AllPaper or SidesOnly
	Board        Board
	Lining       Lining
	Cloth        Cloth
	SidePaper    SidePaper
	Pattern      Pattern
	// LiningPattern is that of the linings: FromSpine and FromTail are from the corners of
	// the room inside.
	LiningPattern Pattern
	ThumbHole     ThumbHole
	Divider       Divider
	AsBuilt       job.AsBuilt // what stands on the bench, where it was measured
}

// How several volumes stand in a case.
const (
	OneCompartment = "one"  // side by side in one cavity
	EachItsOwn     = "each" // a divider between every two
)

// What a case is covered with.
const (
	ClothAndPaper = "cloth and paper" // cloth over spine, head and tail, paper on the sides
	AllCloth      = "cloth"           // one wrap round sides and spine, a panel at head and tail
	AllPaper      = "paper"           // the same in paper
	SidesOnly     = "sides"           // paper on the sides, board bare elsewhere
)

// Whether a pattern has a top.
const (
	AnyWay = "any"
	OneWay = "one way"
)

// What of a pattern lines up.
const (
	MatchNothing  = "none"   // it runs true to each piece
	MatchHeight   = "height" // both sides read the same at the same height from the tail
	MatchMirrored = "mirror" // and at the same distance from the spine
	MatchRound    = "round"  // or the pattern goes on round the spine from side to side
)

// When linings go in.
const (
	LinedBefore = "before" // pasted to the boards, then the boards are joined
	LinedAfter  = "after"  // pasted into the carcass when it is joined and covered
)

// Shapes of a thumb hole.
const (
	NoHole     = "none"
	Semicircle = "semicircle"
	Triangle   = "triangle"
)

// Board is what the carcass is cut from.
type Board struct {
	Thickness Length
	Known     string // job.KnownAsSold or job.KnownMeasured
}

// Lining is the paper inside. Thickness 0 is an unlined case. Trim is how far
// a lining is cut beyond its board on every side, to be trimmed flush when dry.
type Lining struct {
	Thickness, Trim Length
	Order           string // LinedBefore or LinedAfter
}

// Cloth is the book cloth over spine, head and tail.
type Cloth struct {
	Thickness      Length
	Overlap        Length  // onto each side
	TurnIn         Length  // of the spine cloth over head and tail
	MouthTurnIn    Length  // of head and tail cloth into the mouth
	SpineGap       Length  // from the spine edge to the head and tail cloth
	CornerDistance Length  // from the board's corner to the apex of a wedge
	Corners        string  // CornersCut or CornersMarked
	Stretch        float64 // percent it grows across the grain when pasted
}

// SidePaper is the paper over the sides. Inset is from the three closed edges
// of a side, TurnIn what goes beyond the mouth.
type SidePaper struct {
	Thickness, Inset, TurnIn Length
	Stretch                  float64 // percent it grows across the grain when pasted
}

// Pattern is that of the side paper, or of the one material of a wrap: how far
// on it comes again across the grain and along it, 0 where it does not. FromSpine
// and FromTail are where a line of it falls on a side, from the side's edges.
type Pattern struct {
	Across, Along       Length
	Direction           string // AnyWay or OneWay
	Match               string // MatchNothing, MatchHeight, MatchMirrored or MatchRound
	FromSpine, FromTail Length
}

// ThumbHole is cut into both sides at the middle of the mouth, to take hold of
// the book by. Radius is that of a semicircle, or how deep a triangle goes; it
// is twice as wide. Zero is a size that suits the book.
type ThumbHole struct {
	Shape  string // NoHole, Semicircle or Triangle
	Radius Length
}

// Divider is the wall between two volumes, of board lined on both faces, a
// strip of cloth round its mouth edge. SetBack is from the mouth, Lap what the
// strip goes onto each face.
type Divider struct{ SetBack, Lap Length }

// DefaultJob returns a job with no book and every default set, round in the
// maker's unit: 2 mm board, the margins of common practice (no source), a case that
// slides without rattling.
func DefaultJob(u geometry.Unit) Job {
	return Job{
		Common:       job.Default(u),
		Compartments: OneCompartment,
		Covering:     ClothAndPaper,
		ThumbHole:    ThumbHole{Shape: NoHole},
		Divider:      Divider{SetBack: 0, Lap: job.Round(u, 12, 1./2)},
		Board:        Board{Thickness: job.Round(u, 2, 0.08), Known: job.KnownAsSold},
		Lining:       Lining{Thickness: job.Round(u, 0.15, 0.006), Trim: job.Round(u, 12, 1./2), Order: LinedBefore},
		Cloth: Cloth{
			Thickness:      job.Round(u, 0.35, 0.014),
			Overlap:        job.Round(u, 28, 9./8),
			TurnIn:         job.Round(u, 28, 9./8),
			MouthTurnIn:    job.Round(u, 20, 3./4),
			SpineGap:       job.Round(u, 5, 3./16),
			CornerDistance: job.Round(u, 6, 1./4),
			Corners:        CornersCut,
		},
		Pattern: Pattern{Direction: AnyWay, Match: MatchNothing},

		LiningPattern: Pattern{Direction: AnyWay, Match: MatchNothing},
		SidePaper:     SidePaper{Thickness: job.Round(u, 0.15, 0.006), Inset: job.Round(u, 6, 1./4), TurnIn: job.Round(u, 13, 1./2)},
	}
}
