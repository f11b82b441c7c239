package foldup

import (
	"fmt"

	"forel/geometry"
)

// Kind is a way a case can fail.
type Kind string

// The ways a case can fail.
const (
	Misfit    Kind = "misfit"    // pieces that do not meet
	Bare      Kind = "bare"      // board that nothing covers
	Overhang  Kind = "overhang"  // a flap past the face it lands on
	Collision Kind = "collision" // two flaps on one spot, or a turn-in against a wall
	Tight     Kind = "tight"     // no clearance left
)

// Fault is one thing wrong with a case that was folded up.
type Fault struct {
	Kind  Kind
	Piece string        // the piece at fault, if one is
	Face  geometry.Face // where, if on one face
	At    geometry.Box  // where on the face, in its own coordinates; may be empty
	What  string
}

// String says what is wrong in one line.
func (f Fault) String() string {
	s := string(f.Kind) + ": "
	if f.Piece != "" {
		s += f.Piece + ": "
	}
	s += f.What
	if f.Face != "" {
		s += ", " + string(f.Face)
	}
	if !f.At.Empty() {
		c := f.At.Center()
		s += fmt.Sprintf(", about %.1f, %.1f mm", c.X.MM(), c.Y.MM())
	}
	return s
}
