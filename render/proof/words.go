package proof

import (
	"fmt"

	"forel/geometry"
	"forel/geometry/plan"
	"forel/render"
	"forel/render/typeset"
)

// Verdict says in one line whether the case is sound.
func Verdict(p plan.Proof) string {
	switch n := len(p.Faults); {
	case n == 1:
		return "not sound: 1 fault"
	case n > 1:
		return fmt.Sprintf("not sound: %d faults", n)
	}
	return "sound: " + p.Shows
}

// from says what is folded up.
func from(p plan.Plan) string {
	if len(p.Pieces) == 1 {
		return "one piece"
	}
	return "its pieces"
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
