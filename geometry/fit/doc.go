// Package fit follows the chain of dimensions from the measured book and
// materials, over what is cut, to the clearance that is left in the finished
// case: in height, depth and thickness, in the body and at the mouth. With what
// each measure and cut can be off it gives the worst case, the distribution, and
// the chance that the book sticks or rattles; then what to do about it.
//
// # How a clearance comes about
//
// Cut sizes stay as they were drawn; what changes is what is true of the book,
// the materials and the hand. Walls stand on the lined face of a side, flush
// with its edges, so the height inside is a side's height less two lined
// boards: a board thicker than assumed takes twice its error. The depth has one
// board. The thickness inside is the width of the walls, in which board plays
// no part, nor does a lining pasted on before. These sensitivities are not
// written down here: the finished case is itself a job whose clearance is
// whatever makes it draw the pieces that were cut, and slipcase and onepiece
// work out what is left at its mouth. A sensitivity is a difference of two such
// jobs.
//
// # Plus or minus
//
// An uncertainty is a plus-or-minus that 19 of 20 errors keep within, normal,
// two standard uncertainties (JCGM 100:2008 "GUM", 6.2.1 and 6.3.3: coverage
// factor 2; from memory). A reading is rounded to a step, which adds a
// rectangular error of half a step (F.2.2.1: 0.29 of the step; from memory).
// The thickness of a board known only by a name of the trade is rectangular
// between the thinnest and the thickest sold by it (4.3.7 and 4.3.8; from
// memory). Standard uncertainties times their sensitivities add as squares
// (5.1.2, root-sum-square); errors that act in one way only (the narrower of
// two pieces counts, an edge out of square) shift the mean as well. The worst case
// has every error at the end of its plus-or-minus at once.
package fit

import "forel/geometry"

// Length is a distance in millimetres.
type Length = geometry.Length
