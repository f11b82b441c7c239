package onepiece

import (
	"forel/geometry"
	"forel/geometry/job"
)

// Length is a distance in millimetres.
type Length = geometry.Length

// Job is everything a maker settles before cutting. It holds one book.
type Job struct {
	job.Common
	Card  Card
	Flaps Flaps
}

// Card is what the case is folded from.
type Card struct {
	Thickness Length  // as measured; zero makes no allowance, as published rules do
	Bend      float64 // what of the thickness lies inside of the layer that keeps its length: 0 to 1
}

// Flaps is how much smaller flaps are than the space they fold into.
type Flaps struct {
	Relief Length // between the edge of a flap and what it would touch
	Taper  Length // what a flap is narrower at its end
}

// DefaultJob gives a job with no book and every default set: card of 1 mm, the
// clearances of a case of five boards, half a millimetre about the flaps
// (common practice, no source).
func DefaultJob() Job {
	return Job{
		Common: job.Default(),
		Card:   Card{Thickness: 1, Bend: 0.5},
		Flaps:  Flaps{Relief: 0.5, Taper: 1},
	}
}
