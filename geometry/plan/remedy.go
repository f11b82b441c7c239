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

// What the usual remedies of many kinds can do.
const (
	mostLining Length = 1 // the thickest paper or thin card that lines a side
	mostPad    Length = 2 // the thickest card that pads a wall
)

// LineSides returns the remedies of paper on one of the two sides that bound a dimension,
// and on both.
func LineSides(dimension string) []Remedy {
	const both = "line both sides"
	line := func(name, sides string, per float64, minutes int, without ...string) Remedy {
		return Remedy{Name: name, Without: without, How: Say("paste paper or thin card of %s on the inside of " + sides + ", trimmed to lie clear of what is turned in at the mouth or over it, and dry it under a weight"), Early: true, Late: true, Minutes: minutes,
			Gives: map[string]float64{dimension: per}, Most: mostLining, PlusMinus: 0.04, Keeps: "all of the case"}
	}
	return []Remedy{line("line one side", "one side", -1, 30, both), line(both, "each side", -2, 45)}
}

// PadWalls returns the remedies of card on one wall of a dimension, and on the two walls
// that bound it.
func PadWalls(dimension, wall, walls string) []Remedy {
	pad := func(name, on string, per float64, minutes int, without ...string) Remedy {
		return Remedy{Name: "pad " + name, Without: without, How: Say("paste card of %s on the inside of " + on + ", and paper like the lining over it"), Early: true, Late: true, Minutes: minutes,
			Gives: map[string]float64{dimension: per}, Most: mostPad, PlusMinus: 0.1, Keeps: "all of the case"}
	}
	return []Remedy{pad("the "+wall, "the "+wall, -1, 35, "pad "+walls), pad(walls, walls+" each", -2, 55)}
}

// StartAgainName is the name of StartAgain, of a case that stands in no other.
const StartAgainName = "start again"

// StartAgain returns the remedy that there always is, a new case, of pieces of these
// materials or parts.
func StartAgain(what string, minutes int, pieces []string, dimensions ...string) Remedy {
	return Remedy{Name: StartAgainName, How: Say("make " + what + " anew, and keep this one for a book that it fits"), Early: true, Late: true, Minutes: minutes,
		Frees: dimensions, Again: pieces, Whole: true, Keeps: "nothing"}
}
