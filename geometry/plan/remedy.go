package plan

// Remedy is something to do once where a book does not fit a case that stands (common
// practice, no source; so are its work and how much it can do).
type Remedy struct {
	Name      string             // "line one side with paper"
	How       Remark             // what is done, without capital and full stop; how much of it at the %s, if there is one
	Early     bool               // it can be done while the case is still open; see Chain.Early
	Late      bool               // it can be done when the case is finished
	Minutes   int                // of work, without drying
	Gives     map[string]float64 // by dimension, the room that each millimetre of it gives; less than zero: takes
	Most      Length             // of how much it can be
	PlusMinus Length             // of how much it comes out as
	Thinner   map[string]Length  // thicknesses that are then less by as much: what they are now, by their keys
	Frees     []string           // dimensions whose pieces are cut anew: any room can be had, as sure as in a new case
	Again     []string           // what is cut again: pieces, materials or parts
	Whole     bool               // that is all of the case, as far as it is made and has them
	Keeps     string             // what stays as it is
	Without   []string           // names of remedies that make no sense with it
}

// The usual remedies of many kinds.
const (
	lineOne  = "line one side"
	lineBoth = "line both sides"
	padOne   = "pad the "

	mostLining Length = 1 // the thickest paper or thin card that lines a side
	mostPad    Length = 2 // the thickest card that pads a wall
)

// LineOne returns the remedy of paper on one of two sides that bound a dimension, LineBoth
// that on both.
func LineOne(dimension string) Remedy {
	return Remedy{Name: lineOne, Without: []string{lineBoth}, How: Say("paste paper or thin card of %s on the inside of one side, trimmed to lie clear of what is turned in at the mouth or over it, and dry it under a weight"), Early: true, Late: true, Minutes: 30,
		Gives: map[string]float64{dimension: -1}, Most: mostLining, PlusMinus: 0.04, Keeps: "all of the case"}
}

// LineBoth is LineOne on both sides.
func LineBoth(dimension string) Remedy {
	return Remedy{Name: lineBoth, How: Say("paste paper or thin card of %s on the inside of each side, trimmed to lie clear of what is turned in at the mouth or over it, and dry it under a weight"), Early: true, Late: true, Minutes: 45,
		Gives: map[string]float64{dimension: -2}, Most: mostLining, PlusMinus: 0.04, Keeps: "all of the case"}
}

// PadOne returns the remedy of card on one wall of a dimension, PadBoth that on the two
// walls that bound it.
func PadOne(dimension, wall, walls string) Remedy {
	return Remedy{Name: padOne + wall, Without: []string{"pad " + walls}, How: Say("paste card of %s on the inside of the " + wall + ", and paper like the lining over it"), Early: true, Late: true, Minutes: 35,
		Gives: map[string]float64{dimension: -1}, Most: mostPad, PlusMinus: 0.1, Keeps: "all of the case"}
}

// PadBoth is PadOne on two walls.
func PadBoth(dimension, walls string) Remedy {
	return Remedy{Name: "pad " + walls, How: Say("paste card of %s on the inside of " + walls + " each, and paper like the lining over it"), Early: true, Late: true, Minutes: 55,
		Gives: map[string]float64{dimension: -2}, Most: mostPad, PlusMinus: 0.1, Keeps: "all of the case"}
}

// StartAgainName is the name of StartAgain, of a case that stands in no other.
const StartAgainName = "start again"

// StartAgain returns the remedy that there always is, a new case, of pieces of these
// materials or parts.
func StartAgain(what string, minutes int, pieces []string, dimensions ...string) Remedy {
	return Remedy{Name: StartAgainName, How: Say("make " + what + " anew, and keep this one for a book that it fits"), Early: true, Late: true, Minutes: minutes,
		Frees: dimensions, Again: pieces, Whole: true, Keeps: "nothing"}
}
