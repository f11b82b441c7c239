package job

import "forel/geometry"

// Uncertainty is how far measures and cuts can be off. Each is a plus-or-minus
// that 19 of 20 errors keep within: two standard uncertainties (JCGM 100:2008
// "GUM", 6.2 and 6.3, a coverage factor of 2; from memory). A reading's step is
// a step, not a plus-or-minus. The defaults are common practice (no source),
// but for the step.
type Uncertainty struct {
	Measuring   Length // of a reading of the book, beside its step
	ReadingStep Length // that readings of the book are rounded to
	Settings    string // OneSetting or EachBySelf
	Cutting     Length // of the setting of a fence, or of a marked and cut size
	Repeat      Length // from piece to piece at one setting
	Placing     Length // of a wall or a divider on its line; of a fold of card on its score
	Squareness  Length // of an edge at its far end
	Board       Length // of the thickness of the board or card; zero: what suits how it was given
	Lining      Length // of the lining's thickness
	Cloth       Length // of the cloth's thickness
	SidePaper   Length // of the side paper's thickness
	Warp        Length // of a side at its middle, in or out
}

// How pieces that share a size are cut.
const (
	OneSetting = "one"  // all at one setting of the fence
	EachBySelf = "each" // each marked and cut by itself
)

// FitLimits say what a fit is called, judged at the mouth, where the book is held.
// The defaults are common practice (no source). They say nothing of how a book
// behaves when its case is tipped: friction has no usable published value. Swell is
// a share by which books may grow thicker when damp, in percent (common practice,
// no source: none is allowed for unless it is asked for).
type FitLimits struct {
	Tight          Length // less room than this, in height or thickness, and the book sticks
	LooseHeight    Length // more room in height than this is too loose
	LooseThickness Length // more room in thickness is, beside a book that is no pamphlet
	Swell          float64
}

// pamphlet is the thickness under which less room is too loose (common practice, no
// source).
const pamphlet Length = 10

// LooseBeside returns the most room beside books so thick together: LooseThickness,
// and under 10 mm evenly less, down to half of it.
func (f FitLimits) LooseBeside(thick Length) Length {
	return f.LooseThickness * (1 + min(1, thick/pamphlet)) / 2
}

// Round returns the default for a unit that is round there: so many millimetres,
// or so many inches.
func Round(u geometry.Unit, mm, in float64) Length {
	if u == geometry.IN {
		return Length(in) * geometry.Inch
	}
	return Length(mm)
}

// Default returns what jobs of every kind begin with for a maker who works in a
// unit, with no book: a case that slides without rattling (common practice, no
// source).
func Default(u geometry.Unit) Common {
	return Common{
		Unit:        u,
		Clearance:   Clearance{Height: Round(u, 2, 3./32), Width: Round(u, 1, 1./32), Thickness: Round(u, 2, 3./32)},
		Uncertainty: DefaultUncertainty(u),
		Limits:      FitLimits{Tight: Round(u, 0.25, 0.01), LooseHeight: Round(u, 3, 1./8), LooseThickness: Round(u, 2, 3./32)},
	}
}

// DefaultUncertainty returns what a careful maker keeps within at the bench
// (common practice, no source). Readings are taken to the nearest half
// millimetre: G. Malkin, "Straightforward Slipcases", Society of Bookbinders
// "Bookbinder" (2016); in inches to the nearest 64th, which is near it.
func DefaultUncertainty(u geometry.Unit) Uncertainty {
	return Uncertainty{
		Measuring: Round(u, 0.3, 0.012), ReadingStep: Round(u, 0.5, 1./64), Settings: OneSetting,
		Cutting: Round(u, 0.3, 0.012), Repeat: Round(u, 0.1, 0.004), Placing: Round(u, 0.2, 0.008), Squareness: Round(u, 0.3, 0.012),
		Lining: Round(u, 0.02, 0.001), Cloth: Round(u, 0.05, 0.002), SidePaper: Round(u, 0.02, 0.001), Warp: Round(u, 0.3, 0.012),
	}
}

// leastSnug is what must lie between a tight fit and a loose one.
const leastSnug Length = 0.1

// CheckLimits tells why the limits of the fit make no sense, for a case of any
// kind.
func (c Common) CheckLimits() Problems {
	l, f := NewLimits(c.Unit), c.Limits
	const none = "leaves nothing between too tight and too loose"
	l.AtLeast("fit.loose_height", f.LooseHeight, f.Tight+leastSnug, none)
	l.AtLeast("fit.loose_thickness", f.LooseThickness, 2*(f.Tight+leastSnug), none+" beside a pamphlet")
	return l.Broken
}
