// Package pack lays rectangles out on sheets or on a roll: boards on stock to
// be cut edge to edge on a board shear, pieces on the bed of a machine that
// cuts freely. It knows nothing of what the pieces are for.
//
// Solve returns a layout; package packtest, which shares no code with the solver,
// tells whether a layout is sound.
package pack

import (
	"time"

	"forel/geometry"
)

// Length is a distance in millimetres. Inside, every length is a whole number
// of eighths of a micrometre, so that sums are exact: a micrometre and a 64th of
// an inch are both whole. A length given is taken to the nearest such unit.
type Length = geometry.Length

// Item is one piece to be laid out.
type Item struct {
	Width, Height Length // over 0
	Turn          bool   // a quarter turn is allowed

}

// Stock is one kind of sheet, or a roll. What is trimmed off its edges is no part of it.
type Stock struct {
	Width, Height Length // no more than 100 m, so that areas stay within 64 bits
	// Roll tells that Width is the roll's and Height what is on it, 0 for as
	// much as is needed. As little of the length is used as can be found.
	Roll bool
	// Count is how many there are, 0 for as many as are needed.
	Count int
	// Cost is that of one sheet, in any unit; of one kind alone it does not matter.
	Cost float64
}

// Problem is what is to be laid out on what. Kinds of sheet may be mixed; a roll is alone,
// and cut edge to edge.
type Problem struct {
	Items []Item
	Stock []Stock
	Gap   Length // between neighbouring pieces: kerf of a saw, room for a knife; 0 for a shear
	// Free tells that pieces may lie anywhere that they do not overlap, as for a knife or laser
	// on a bed. Else every cut runs edge to edge of what it cuts, as on a board shear or a
	// plough, and the layout carries the tree of cuts.
	Free bool
}

// Effort is how long to look for a better layout. The zero Effort takes the
// first good layout. A search ends early when the layout is proved
// optimal or its context ends; what was best until then is the result.
type Effort struct {
	// Iterations limits the steps of the search. The same problem, seed
	// and Iterations, with no Time, give the same layout on every machine.
	Iterations int
	// Time limits the search by the clock, looked at between steps only. With
	// both, the first limit reached ends it.
	Time time.Duration
	Seed uint64
	// Progress, where set, is called now and then from the goroutine that solves,
	// with the fraction of the effort spent, 0 to 1.
	Progress func(fraction float64)
}
