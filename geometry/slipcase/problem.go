package slipcase

import (
	"math"
	"strconv"
	"strings"

	"forel/geometry"
	"forel/geometry/wording"
)

// Problem is one thing wrong with a job, or worth a second look: the key to
// change, what is wrong, and what would be right.
type Problem struct {
	Key, Wrong, Right string
}

// Error gives the problem as one line.
func (p Problem) Error() string { return p.Key + ": " + p.Wrong + "; " + p.Right }

// Problems are all the reasons a job was refused.
type Problems []Problem

// Error gives one line a problem.
func (ps Problems) Error() string {
	lines := make([]string, len(ps))
	for i, p := range ps {
		lines[i] = p.Error()
	}
	return strings.Join(lines, "\n")
}

// Show writes a length in the maker's unit, to a hundredth of a millimetre or
// a thousandth of an inch: up where side is positive, down where negative, so
// that a limit quoted in a message is itself within the limit.
func Show(l Length, unit geometry.Unit, side int) string {
	digits := 2
	if unit == geometry.IN {
		digits = 3
	}
	scale := math.Pow10(digits)
	v := float64(l/unit.Length()) * scale
	switch {
	case side > 0:
		v = math.Ceil(v - 1e-6)
	case side < 0:
		v = math.Floor(v + 1e-6)
	default:
		v = math.Round(v)
	}
	return wording.Decimal(v/scale, 4) + " " + unit.String()
}

// Apart writes a length as Show does, but in full where it would read the same
// as the limit it breaks.
func Apart(l, limit Length, side int, unit geometry.Unit) string {
	if s := Show(l, unit, 0); s != Show(limit, unit, side) {
		return s
	}
	return strconv.FormatFloat(float64(l/unit.Length()), 'g', 6, 64) + " " + unit.String()
}
