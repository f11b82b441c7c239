// Package tolerance adds up what can be off: errors of measuring, cutting and
// materials, what each does to a length, and the distribution of a length with
// several errors on it. It knows nothing of what is measured or made.
//
// # Plus or minus
//
// An uncertainty is a plus-or-minus that 19 of 20 errors keep within, normal,
// two standard uncertainties (JCGM 100:2008 "GUM", 6.2.1 and 6.3.3: coverage
// factor 2; from memory). A reading is rounded to a step, which adds a
// rectangular error of half a step (F.2.2.1: 0.29 of the step; from memory).
// What is known only to lie in a range is rectangular over it (4.3.7 and 4.3.8;
// from memory). Standard uncertainties times their sensitivities add as squares
// (5.1.2, root-sum-square); errors that act in one way only (the narrower of
// two pieces counts, an edge out of square) shift the mean as well. The worst
// case has every error at the end of its plus-or-minus at once.
package tolerance

import "forel/geometry"

// Length is a distance in millimetres.
type Length = geometry.Length
