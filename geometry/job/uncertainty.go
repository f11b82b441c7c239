package job

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

// FitLimits say what a fit is called. The defaults are common practice (no
// source), the loose one such that 1/8 in of room in height is not too much: E.
// Diehl, Bookbinding: Its Background and Technique (1946), "Slipcases". Swell is a share by which books may grow
// thicker when damp, in percent (common practice, no source: none is allowed
// for unless it is asked for).
type FitLimits struct {
	Tight Length // less room than this at the tightest place, in height or thickness, and the book sticks
	Loose Length // more room than this, and it rattles
	Swell float64
}

// Default returns what jobs of every kind begin with, with no book: a case that
// slides without rattling (common practice, no source).
func Default() Common {
	return Common{
		Clearance:   Clearance{Height: 2, Width: 1, Thickness: 2},
		Uncertainty: DefaultUncertainty(),
		Limits:      FitLimits{Tight: 0.25, Loose: 4},
	}
}

// DefaultUncertainty returns what a careful maker keeps within at the bench
// (common practice, no source). Readings are taken to the nearest half
// millimetre: G. Malkin, "Straightforward Slipcases", Society of Bookbinders
// "Bookbinder" (2016).
func DefaultUncertainty() Uncertainty {
	return Uncertainty{
		Measuring: 0.3, ReadingStep: 0.5, Settings: OneSetting, Cutting: 0.3, Repeat: 0.1, Placing: 0.2,
		Squareness: 0.3, Lining: 0.02, Cloth: 0.05, SidePaper: 0.02, Warp: 0.3,
	}
}

// leastSnug is what must lie between a tight fit and a loose one.
const leastSnug Length = 0.1

// CheckLimits tells why the limits of the fit make no sense, for a case of any
// kind.
func (c Common) CheckLimits() Problems {
	l := NewLimits(c.Unit)
	l.AtLeast("fit.loose", c.Limits.Loose, c.Limits.Tight+leastSnug, "leaves nothing between too tight and too loose")
	return l.Broken
}
