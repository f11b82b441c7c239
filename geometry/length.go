// Package geometry holds what every template is made of: lengths, points,
// outlines of straight lines and arcs, and the flat piece that is cut from a
// material. It knows nothing of books, printers or files.
package geometry

import "math"

// Length is a distance in millimetres. One inch is 25.4 mm by definition, so
// a length given in inches is off by no more than the rounding of a float64
// (far under a nanometre here). Lengths are rounded only when they are shown.
type Length float64

// Units of length.
const (
	Millimetre Length = 1
	Centimetre Length = 10
	Inch       Length = 25.4 // exact: international yard and pound agreement, 1959
	PDFPoint   Length = 25.4 / 72
)

// MM returns the length in millimetres.
func (l Length) MM() float64 { return float64(l) }

// Round returns the nearest multiple of step, halves away from zero. A step of
// zero or less leaves the length as it is.
func (l Length) Round(step Length) Length {
	if step <= 0 {
		return l
	}
	return Length(nearest(float64(l/step))) * step
}

// nearest returns the nearest whole number, halves away from zero: also a half that float64
// arithmetic left a hair short.
func nearest(n float64) float64 { return math.Round(n + math.Copysign(1e-9, n)) }

// Abs returns the length without its sign.
func (l Length) Abs() Length { return Length(math.Abs(float64(l))) }

const nanometre Length = 1e-6

// Near tells whether two lengths differ by no more than a nanometre: the same
// length, reached by two ways of calculating.
func (l Length) Near(m Length) bool { return (l - m).Abs() < nanometre }

// Unit is a unit a maker works in.
type Unit int

// The units of a job: millimetres or inches.
const (
	MM Unit = iota
	IN
)

// String returns the unit's symbol, "mm" or "in".
func (u Unit) String() string {
	if u == IN {
		return "in"
	}
	return "mm"
}

// Plural returns the unit in words, "millimetres" or "inches".
func (u Unit) Plural() string {
	if u == IN {
		return "inches"
	}
	return "millimetres"
}

// Length returns one of the unit, so that n times it is a length.
func (u Unit) Length() Length {
	if u == IN {
		return Inch
	}
	return Millimetre
}
