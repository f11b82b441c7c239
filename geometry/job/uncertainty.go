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

// Settings returns the settings of the errors and limits of a job of any kind.
func (c *Common) Settings() []Setting {
	u := &c.Uncertainty
	return []Setting{
		LengthOf("uncertainty.measuring", "plus or minus of a reading of the book, beside its step", 0, 5, &u.Measuring),
		LengthOf("uncertainty.reading_step", "the step readings of the book are rounded to", 0, 5, &u.ReadingStep),
		WordOf("uncertainty.settings", "whether pieces that share a size are cut at one setting or each by itself", []string{OneSetting, EachBySelf}, &u.Settings),
		LengthOf("uncertainty.cutting", "plus or minus of a cut size", 0, 5, &u.Cutting),
		LengthOf("uncertainty.repeat", "plus or minus from piece to piece at one setting", 0, 5, &u.Repeat),
		LengthOf("uncertainty.placing", "plus or minus of a wall on its line", 0, 5, &u.Placing),
		LengthOf("uncertainty.squareness", "plus or minus of an edge at its far end", 0, 5, &u.Squareness),
		LengthOf("uncertainty.board", "plus or minus of the thickness of board or card", 0.005, 2, &u.Board).OrAuto(),
		LengthOf("uncertainty.lining", "plus or minus of the lining's thickness", 0, 1, &u.Lining),
		LengthOf("uncertainty.cloth", "plus or minus of the cloth's thickness", 0, 1, &u.Cloth),
		LengthOf("uncertainty.side_paper", "plus or minus of the side paper's thickness", 0, 1, &u.SidePaper),
		LengthOf("uncertainty.warp", "plus or minus of a side at its middle", 0, 5, &u.Warp),
		LengthOf("fit.tight", "the least room that lets the book slide", 0, 5, &c.Limits.Tight),
		LengthOf("fit.loose", "the most room before the book rattles", 0.5, 25, &c.Limits.Loose),
		PercentOf("fit.swell", "how much thicker a book may grow when damp", 0, 20, &c.Limits.Swell),
	}
}
