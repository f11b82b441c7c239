package onepiece

import "forel/geometry/job"

// Shared returns what jobs of every kind have.
func (j *Job) Shared() *job.Common { return &j.Common }

// Settings returns every setting of a job in the order of a job file. What fits
// together is for Check.
func (j *Job) Settings() job.Settings {
	own := job.Settings{
		job.WordOf("card.kind", "what the case is folded from", []string{Solid, Corrugated}, &j.Card.Kind),
		job.LengthOf("card.thickness", "the card's measured thickness", 0, mostCorrugated.MM(), &j.Card.Thickness),
		job.NumberOf("card.bend", "how deep in the card, from its inside, lies what keeps its length in a fold", 0, 1, &j.Card.Bend),
		job.NumberOf("card.grammage", "g/m² as sold, 0 where it is not known", 0, 5000, &j.Card.Grammage),
		job.LengthOf("flaps.relief", "what is left free about a flap", 0, 3, &j.Flaps.Relief),
		job.LengthOf("flaps.taper", "what a flap is narrower at its end", 0, 5, &j.Flaps.Taper),
	}
	return append(own, j.Common.Settings()...)
}
