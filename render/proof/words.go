package proof

import (
	"fmt"

	"forel/geometry"
	"forel/geometry/plan"
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
