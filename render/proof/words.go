package proof

import (
	"fmt"

	"forel/geometry"
	"forel/render"
	"forel/render/typeset"
)

// verdict says in one line whether the case is sound.
func (s Subject) verdict() string {
	switch n := len(s.Report.Faults); {
	case n == 1:
		return "not sound: 1 fault"
	case n > 1:
		return fmt.Sprintf("not sound: %d faults", n)
	}
	bare, goes := "no board is left bare", "the book goes in"
	if s.MayShow {
		bare = "board is bare only where it is meant to be"
	}
	if s.Compartments > 1 {
		goes = "the books go in"
	}
	return "sound: " + bare + ", no flap reaches too far or runs into another, and " + goes
}

// remarks says what the pictures and tables leave out.
func (s Subject) remarks() []string {
	var out []string
	if s.Lining == LinedAfter {
		out = append(out, "the case is shown before its linings are pasted in, which will lie over what is turned in; piles leave them out, the clearances do not")
	}
	if s.Compartments > 1 {
		out = append(out, "the dividers are alike, so the faces of one are listed and drawn flat; the clearance in thickness is that of the tightest compartment")
	}
	return out
}

// unitName says which unit numbers are in.
func unitName(u geometry.Unit) string {
	if u == geometry.IN {
		return "in inches"
	}
	return "in millimetres"
}

// spare is the part of a line that words may fill, plain and bold. A viewer of
// an SVG that lacks the typeface takes another, which may be wider.
var spare = map[bool]Length{false: 0.87, true: 0.8}

// wrapped breaks words into lines no longer than a width, with some to spare.
func wrapped(s string, size render.Points, bold bool, width Length) []string {
	return typeset.Break(s, size, bold, width*spare[bold])
}

// fit shortens words to a width, with some to spare.
func fit(s string, size render.Points, bold bool, width Length) string {
	return typeset.Fit(s, size, bold, width*spare[bold])
}
