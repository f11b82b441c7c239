package fit

import (
	"forel/geometry"
	"forel/geometry/job"
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

// What a board may be that is known by name only (common practice, no source).
// One sold as 2 mm is sold as 0.067 in and as 3/32 in too, 0.68 mm apart.
const (
	measured  Length = 0.05 // plus or minus, of a board measured with a caliper
	nameOnly         = 0.1  // part of the thickness, plus or minus, of one known by name
	neighbour        = 0.2  // part of the thickness within which another size may be what it is
)

var twoMM = [2]Length{0.067 * geometry.Inch, 3 * geometry.Inch / 32}

// boardRange gives what the thickness of a board or card may be, and whether
// only its name is known: it is exactly a size that board is sold by.
func boardRange(l Length, u job.Uncertainty, card bool) (low, high Length, byName bool) {
	switch {
	case u.Board > 0:
		return l - u.Board, l + u.Board, false
	case card || !soldAs(l):
		return l - measured, l + measured, false
	case l >= twoMM[0]-1e-6 && l <= twoMM[1]+1e-6:
		return twoMM[0], twoMM[1], true
	}
	return l * (1 - nameOnly), l * (1 + nameOnly), true
}

// soldAs tells whether a thickness is one that board is sold by.
func soldAs(l Length) bool {
	for _, s := range Boards {
		if s.Thickness.Near(l) {
			return true
		}
	}
	return false
}

// WhatIf is what is left when the board really has another thickness, cut sizes
// and all else as drawn.
type WhatIf struct {
	Sold
	Left []Length // of each gap
}

// whatIf gives the sizes board is sold by that the job's board could be, its own
// among them.
func (s subject) whatIf() []WhatIf {
	if s.card != nil {
		return nil
	}
	a := s.assembly()
	var out []WhatIf
	put := func(b Sold) {
		v := append([]Length(nil), a.drawn...)
		v[boardThick] = b.Thickness
		out = append(out, WhatIf{b, a.clear(v)})
	}
	own := Sold{"as given", s.thick}
	placed := false
	for _, b := range Boards {
		if b.Thickness > s.thick-1e-6 && !placed {
			placed = true
			if !b.Thickness.Near(s.thick) {
				put(own)
			}
		}
		if (b.Thickness - s.thick).Abs() <= neighbour*s.thick {
			put(b)
		}
	}
	if !placed {
		put(own)
	}
	return out
}
