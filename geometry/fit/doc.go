// Package fit follows a chain of dimensions from the measured book and
// materials, over what is cut, to the room that is left in the finished case.
// With what each measure and cut can be off it gives the worst case, the
// distribution, and the chance that the book sticks or rattles; then what to do
// about it. It knows no kind of case: the chain is given with the plan, and how
// errors add up is told in the doc of package tolerance.
package fit

import "forel/geometry"

// Length is a distance in millimetres.
type Length = geometry.Length
