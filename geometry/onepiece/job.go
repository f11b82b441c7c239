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

// What a case is folded from.
const (
	Solid      = "solid"
	Corrugated = "corrugated" // a fluted sheet between two liners: single wall
)

// Card is what the case is folded from.
type Card struct {
	Kind      string  // Solid or Corrugated
	Thickness Length  // as measured; zero makes no allowance, as published rules do
	Bend      float64 // what of the thickness lies inside of the layer that keeps its length: 0 to 1
	Grammage  float64 // g/m² as sold; zero: not known
}

// material returns what the blank is cut from.
func (c Card) material() geometry.Material {
	if c.Kind == Corrugated {
		return geometry.Corrugated
	}
	return geometry.Card
}

// name returns what the card is called in sentences.
func (c Card) name() string { return string(c.material()) }

// Flaps is how much smaller flaps are than the space they fold into.
type Flaps struct {
	Relief Length // between the edge of a flap and what it would touch
	Taper  Length // what a flap is narrower at its end
}

// DefaultJob returns a job with no book and every default set, round in the
// maker's unit: card of 1 mm, the clearances of a case of five boards, half a
// millimetre about the flaps (common practice, no source).
func DefaultJob(u geometry.Unit) Job {
	return Job{
		Common: job.Default(u),
		Card:   Card{Kind: Solid, Thickness: job.Round(u, 1, 0.04), Bend: 0.5},
		Flaps:  Flaps{Relief: job.Round(u, 0.5, 1./64), Taper: job.Round(u, 1, 1./32)},
	}
}
