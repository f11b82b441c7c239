package stock

import "forel/geometry"

// Where the sizes of the library come from.
const (
	fromISO216   = "ISO 216"
	fromANSI     = "ANSI/ASME Y14.1"
	fromBasis    = "US basis size of text paper" // from memory
	fromPractice = "a usual size"                // common practice, no source
)

// Usual returns the sizes a material is commonly sold in where makers work in
// the unit given, the one to try first at the head. The grain of a sheet runs
// along its longer side, that of a roll along its length (common practice, no
// source).
func Usual(m geometry.Material, u geometry.Unit) []Stock {
	const in = geometry.Inch
	sheet := func(name string, w, h Length, source string) Stock {
		return Stock{Name: name, Material: m, Width: w, Height: h, Grain: geometry.GrainHeight, Trim: DefaultTrim(u), Source: source}
	}
	roll := func(width Length, per Length) Stock {
		return Stock{Material: m, Roll: true, Width: width, Grain: geometry.GrainHeight, Per: per, Trim: DefaultTrim(u), Source: fromPractice}
	}
	like := m.Like()
	switch {
	case like == geometry.Cloth && u == geometry.IN:
		return []Stock{roll(54*in, Yard)}
	case like == geometry.Cloth:
		return []Stock{roll(1370, Metre)}
	case (like == geometry.Lining || like == geometry.Paper) && u == geometry.IN:
		return []Stock{sheet("", 25*in, 38*in, fromBasis), sheet("ANSI E", 34*in, 44*in, fromANSI)}
	case like == geometry.Lining || like == geometry.Paper:
		return []Stock{sheet("B1", 707, 1000, fromISO216), sheet("B0", 1000, 1414, fromISO216)}
	case u == geometry.IN:
		return []Stock{sheet("", 26*in, 38*in, fromPractice), sheet("", 40*in, 60*in, fromPractice)}
	}
	return []Stock{sheet("A1", 594, 841, fromISO216), sheet("A0", 841, 1189, fromISO216), sheet("B0", 1000, 1414, fromISO216)}
}
