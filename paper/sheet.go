// Package paper deals with the sheets that patterns are printed on: their
// sizes, what a printer reaches of them, and how a pattern is tiled over them.
package paper

import (
	"fmt"
	"strings"

	"forel/geometry"
)

// Length is a distance in millimetres.
type Length = geometry.Length

// Sheet is a size of paper, upright: Width is no more than Height.
type Sheet struct {
	Name          string
	Width, Height Length
}

// Sheets are the sizes known by name.
var Sheets = []Sheet{
	{"A4", 210, 297}, // ISO 216
	{"A3", 297, 420}, // ISO 216
	{"Letter", 8.5 * geometry.Inch, 11 * geometry.Inch}, // ANSI/ASME Y14.1, size A
	{"Legal", 8.5 * geometry.Inch, 14 * geometry.Inch},  // US practice
	{"Tabloid", 11 * geometry.Inch, 17 * geometry.Inch}, // ANSI/ASME Y14.1, size B
}

// Limits of a sheet given by its size.
const (
	LeastSheet Length = 100
	MostSheet  Length = 2000
)

// ParseSheet reads a sheet's name, in any case, or its two sides with an x
// between them, such as "210 x 297 mm" or "8 1/2 x 11 in". A side without a
// unit takes the other's, or else the unit given. Sides are 100 to 2000 mm.
func ParseSheet(text string, unit geometry.Unit) (Sheet, error) {
	name := strings.TrimSpace(text)
	known := make([]string, len(Sheets))
	for i, s := range Sheets {
		if strings.EqualFold(s.Name, name) {
			return s, nil
		}
		known[i] = s.Name
	}
	sides := strings.FieldsFunc(name, func(r rune) bool { return r == 'x' || r == 'X' || r == '×' })
	if len(sides) != 2 {
		return Sheet{}, fmt.Errorf(`unknown sheet %.40q; give %s or its size, such as "210 x 297 mm"`, text, strings.Join(known, ", "))
	}
	// "8 1/2 x 11 in": the unit at the end holds for both.
	if !hasUnit(sides[0]) && hasUnit(sides[1]) {
		second := strings.TrimSpace(sides[1])
		sides[0] += " " + strings.TrimLeft(second, "0123456789.,/- ¼½¾⅛⅜⅝⅞")
	}
	var l [2]Length
	for i, side := range sides {
		var err error
		if l[i], err = geometry.ParseLength(side, unit); err != nil {
			return Sheet{}, err
		}
		if l[i] < LeastSheet || l[i] > MostSheet {
			return Sheet{}, fmt.Errorf("a sheet side of %.4g mm is outside what is printed on; give %.0f to %.0f mm", l[i].MM(), LeastSheet.MM(), MostSheet.MM())
		}
	}
	return Sheet{Width: min(l[0], l[1]), Height: max(l[0], l[1])}, nil
}

func hasUnit(side string) bool {
	return strings.TrimLeft(strings.TrimSpace(side), "0123456789.,/- ¼½¾⅛⅜⅝⅞") != ""
}

// String gives the sheet's name, or its size in millimetres.
func (s Sheet) String() string {
	if s.Name != "" {
		return s.Name
	}
	return fmt.Sprintf("%.4g x %.4g mm", s.Width.MM(), s.Height.MM())
}

// Setup is how patterns are printed.
type Setup struct {
	Sheet   Sheet
	Margin  Length // on every side, what the printer does not reach
	Overlap Length // of neighbouring sheets of one pattern
}

// Limits of a Setup, both allowed.
const (
	MostMargin   Length = 40
	LeastOverlap Length = 5
	MostOverlap  Length = 40
)

// Foot is the height kept free at the bottom of each sheet for its rulers and
// words.
const Foot Length = 14

// Least room a sheet must leave between its margins: across for the rulers
// and words, along for the pattern.
const (
	leastAcross Length = 165
	leastAlong  Length = 150
)

// Check tells why patterns can't be printed with this setup, nil if they can.
func (s Setup) Check() error {
	if !(s.Margin >= 0 && s.Margin <= MostMargin) { // false for NaN too
		return fmt.Errorf("a margin of %.4g mm; give 0 to %.4g mm", s.Margin.MM(), MostMargin.MM())
	}
	if !(s.Overlap >= LeastOverlap && s.Overlap <= MostOverlap) {
		return fmt.Errorf("an overlap of %.4g mm; give %.4g to %.4g mm", s.Overlap.MM(), LeastOverlap.MM(), MostOverlap.MM())
	}
	across, along := s.Sheet.Width-2*s.Margin, s.Sheet.Height-2*s.Margin
	if across < leastAcross || along < leastAlong+Foot {
		return fmt.Errorf("%v with margins of %.4g mm leaves %.4g x %.4g mm to print on; at least %.4g x %.4g mm is needed",
			s.Sheet, s.Margin.MM(), across.MM(), along.MM(), leastAcross.MM(), (leastAlong + Foot).MM())
	}
	return nil
}

// usable gives what of a sheet can take patterns, from its upper left corner.
func (s Setup) usable(lying bool) (width, height Length, area geometry.Box) {
	width, height = s.Sheet.Width, s.Sheet.Height
	if lying {
		width, height = height, width
	}
	return width, height, geometry.Bx(s.Margin, s.Margin, width-s.Margin, height-s.Margin-Foot)
}

// DefaultSetup gives A4 with a margin of 10 mm, which the printers at home
// reach (common practice, no source), and an overlap of 10 mm.
func DefaultSetup() Setup { return Setup{Sheet: Sheets[0], Margin: 10, Overlap: 10} }
