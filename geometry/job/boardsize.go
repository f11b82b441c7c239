package job

import (
	"cmp"
	"slices"

	"forel/geometry"
)

// Sold is a thickness that board is sold by.
type Sold struct {
	Name      string
	Thickness Length
}

// Boards lists thicknesses board is sold by: whole and half millimetres,
// fractions of an inch, and 0.067 in (common practice, no source).
var Boards = []Sold{
	{"1 mm", 1},
	{"1.5 mm", 1.5},
	{"1/16 in", geometry.Inch / 16},
	{"0.067 in", 0.067 * geometry.Inch},
	{"2 mm", 2},
	{"3/32 in", 3 * geometry.Inch / 32},
	{"2.5 mm", 2.5},
	{"3 mm", 3},
	{"1/8 in", geometry.Inch / 8},
	{"4 mm", 4},
}

// Measured is the plus or minus of a board or card measured with a caliper
// (common practice, no source).
const Measured Length = 0.05

// What a board may be that is known by name only (common practice, no source).
// One sold as 2 mm is sold as 0.067 in and as 3/32 in too, 0.68 mm apart.
const (
	nameOnly  = 0.1 // part of the thickness, plus or minus, of one known by name
	neighbour = 0.2 // part of the thickness within which another size may be what it is
)

var twoMM = [2]Length{0.067 * geometry.Inch, 3 * geometry.Inch / 32}

// How a thickness of board is known.
const (
	KnownAsSold   = "as sold"  // by its name only
	KnownMeasured = "measured" // with a caliper
)

// BoardKnown returns the setting of how a board's thickness is known. It is never
// inferred from the number: a board can measure just what it is sold as.
func BoardKnown(at *string) Setting {
	return WordOf("board.known", "how the board's thickness is known", []string{KnownAsSold, KnownMeasured}, at)
}

// BoardOff returns how much less and more than l the thickness of a board may be
// that is known as sold or as measured, and whether only its name is known.
func (u Uncertainty) BoardOff(l Length, known string) (low, high Length, byName bool) {
	switch {
	case u.Board > 0 || known == KnownMeasured:
		low, high = u.CardOff()
		return low, high, false
	case l >= twoMM[0]-1e-6 && l <= twoMM[1]+1e-6:
		return twoMM[0] - l, twoMM[1] - l, true
	}
	return -nameOnly * l, nameOnly * l, true
}

// CardOff returns how much less and more than measured the thickness of card may
// be, which no name tells of.
func (u Uncertainty) CardOff() (low, high Length) {
	if u.Board > 0 {
		return -u.Board, u.Board
	}
	return -Measured, Measured
}

// BoardsLike returns the sizes board is sold by that a board of thickness l could
// be, its own among them, from the thinnest.
func BoardsLike(l Length) []Sold {
	out := slices.DeleteFunc(slices.Clone(Boards), func(b Sold) bool { return (b.Thickness - l).Abs() > neighbour*l })
	if !slices.ContainsFunc(out, func(b Sold) bool { return b.Thickness.Near(l) }) {
		out = append(out, Sold{"as given", l})
		slices.SortFunc(out, func(a, b Sold) int { return cmp.Compare(a.Thickness, b.Thickness) })
	}
	return out
}
