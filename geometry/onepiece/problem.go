package onepiece

import (
	"math"
	"strconv"

	"forel/geometry"
)

// show writes a length in the maker's unit, to a hundredth of a millimetre or
// a thousandth of an inch: up where side is positive, down where negative, so
// that a limit quoted in a message is itself within the limit.
func show(l Length, unit geometry.Unit, side int) string {
	scale := 100.0
	if unit == geometry.IN {
		scale = 1000
	}
	v := float64(l/unit.Length()) * scale
	switch {
	case side > 0:
		v = math.Ceil(v - 1e-6)
	case side < 0:
		v = math.Floor(v + 1e-6)
	default:
		v = math.Round(v)
	}
	return strconv.FormatFloat(v/scale, 'f', -1, 64) + " " + unit.String()
}

// apart writes a length that breaks a limit as show does, but in full where it
// would read the same as the limit.
func apart(l, limit Length, side int, unit geometry.Unit) string {
	if s := show(l, unit, 0); s != show(limit, unit, side) {
		return s
	}
	return strconv.FormatFloat(float64(l/unit.Length()), 'g', 6, 64) + " " + unit.String()
}
