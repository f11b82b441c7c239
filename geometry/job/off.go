package job

import "forel/geometry/tolerance"

// Reading returns how the book's measurements are taken.
func (u Uncertainty) Reading() tolerance.Reading {
	return tolerance.Reading{PlusMinus: u.Measuring, Step: u.ReadingStep}
}

// BookReading returns how the job's book was measured. What a book wears is worked out,
// so that nothing of the two together is unsure but what it comes out as.
func (c Common) BookReading() tolerance.Reading {
	if c.Wears != "" {
		return tolerance.Reading{}
	}
	return c.Uncertainty.Reading()
}

// Thicknesses returns the readings at each edge whose thickness was measured.
func (b Book) Thicknesses() [][]Length {
	if len(b.ForeEdge) == 0 {
		return [][]Length{b.Thickness}
	}
	return [][]Length{b.Thickness, b.ForeEdge}
}

// Grows returns how much thicker a book may grow when damp. Paper takes up water
// between its fibres and grows across its sheet first: the thickness of a book
// more than its height and width, which are left out (common practice, no
// source).
func (f FitLimits) Grows(b Book) Length { return b.Thick() * Length(f.Swell/100) }
