// Package paper deals with the sheets that templates are printed on: their
// sizes, what a printer reaches of them, and how a template is tiled over them.
package paper

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/wording"
)

// Length is a distance in millimetres.
type Length = geometry.Length

// Sheet is a size of paper. One to print on is upright: Width is no more than Height.
type Sheet struct {
	Name          string
	Width, Height Length
}

// Sheets are the sizes known by name, those that are most printed on first. The
// B series is ISO's; the Japanese one of the same names (JIS P 0138, from
// memory) is a little larger and is given by its sides.
var Sheets = []Sheet{
	{"A4", 210, 297}, // ISO 216
	{"A3", 297, 420},
	{"Letter", 8.5 * geometry.Inch, 11 * geometry.Inch}, // ANSI/ASME Y14.1, size A
	{"Legal", 8.5 * geometry.Inch, 14 * geometry.Inch},  // US practice
	{"Tabloid", 11 * geometry.Inch, 17 * geometry.Inch}, // ANSI/ASME Y14.1, size B
	{"A0", 841, 1189}, // ISO 216 again
	{"A1", 594, 841},
	{"A2", 420, 594},
	{"A5", 148, 210},
	{"A6", 105, 148},
	{"B0", 1000, 1414}, // ISO 216, B series
	{"B1", 707, 1000},
	{"B2", 500, 707},
	{"B3", 353, 500},
	{"B4", 250, 353},
	{"B5", 176, 250},
	{"B6", 125, 176},
}

// Limits of a sheet given by its size.
const (
	LeastSheet Length = 100
	MostSheet  Length = 2000
)

// ParseSheet reads the size of a sheet to print on, as ParseSize does, each side 100 to 2000
// mm, and stands it upright.
func ParseSheet(text string, unit geometry.Unit) (Sheet, error) {
	s, err := ParseSize(text, unit, "a sheet", LeastSheet, MostSheet)
	s.Width, s.Height = min(s.Width, s.Height), max(s.Width, s.Height)
	return s, err
}

// ParseSize reads the size of something flat, in a sentence "a sheet": the name of one of
// Sheets, in any case, or its two sides, each from least to most, as geometry.ParseSides
// reads them and in the order written. The error is a job.Problem without a key or a
// *geometry.ParseError.
func ParseSize(text string, unit geometry.Unit, of string, least, most Length) (Sheet, error) {
	for _, s := range Sheets {
		if strings.EqualFold(s.Name, strings.TrimSpace(text)) {
			return s, nil
		}
	}
	wrong := job.Problem{Value: wording.Quote(text), Reason: "is no size of " + of}
	s, err := sides(text, unit)
	switch {
	case errors.Is(err, geometry.ErrSides):
		wrong.Fix = `give both sides, such as "210 x 297 mm", or a name: A4, another of A0 to A6 or B0 to B6, Letter, Legal, Tabloid`
		return Sheet{}, wrong
	case err != nil:
		return Sheet{}, err
	case s.within(least, most):
		return s, nil
	}
	wrong.Fix = job.Limited("each side of it", least, most, unit)
	for _, u := range []geometry.Unit{geometry.MM, geometry.IN} {
		if o, err := sides(text, u); err == nil && o != s && o.within(least, most) {
			wrong.Fix += "; if it was " + u.Plural() + ", write " + wording.Quote(text+" "+u.String())
		}
	}
	return Sheet{}, wrong
}

// sides reads a size of any sides.
func sides(text string, unit geometry.Unit) (s Sheet, err error) {
	s.Width, s.Height, err = geometry.ParseSides(text, unit)
	return s, err
}

func (s Sheet) within(least, most Length) bool {
	return min(s.Width, s.Height) >= least && max(s.Width, s.Height) <= most
}

// String returns the sheet's name, or its size in millimetres.
func (s Sheet) String() string {
	if s.Name != "" {
		return s.Name
	}
	return fmt.Sprintf("%.4g x %.4g mm", s.Width.MM(), s.Height.MM())
}

// Setup is how templates are printed.
type Setup struct {
	Sheet    Sheet
	Margins  Margins  // what the printer does not reach
	Overlap  Length   // of neighbouring sheets of one template
	Measured Measured // how true the printer is
}

// Limits of a Setup, both allowed.
const (
	LeastOverlap Length = 5
	MostOverlap  Length = 40
)

// The foot of a sheet: the height its rulers take, with the words beside them;
// how much more it is where the words stand above, on a sheet that leaves less
// than footAcross between its margins.
const (
	footRulers Length = 14
	FootWords  Length = 12
	footAcross Length = 165
)

// Foot returns the height kept free at the bottom of a sheet for its rulers and
// words, and whether the words stand above the rulers.
func (s Setup) Foot(lying bool) (height Length, above bool) {
	if s.Printable(lying).Width() < footAcross {
		return footRulers + FootWords, true
	}
	return footRulers, false
}

// Least room a sheet must leave between its margins: across for the rulers,
// along for the template, with the foot below it.
const (
	leastAcross Length = 120
	leastAlong  Length = 150
)

// Check tells why templates can't be printed with this setup, nil if they can. The
// error is a job.Problem without a key.
func (s Setup) Check() error {
	for _, m := range s.Margins.sides() {
		if !(m >= 0 && m <= MostMargin) { // false for NaN too
			return job.Problem{Reason: fmt.Sprintf("a margin of %.4g mm", m.MM()), Fix: fmt.Sprintf("give 0 to %.4g mm", MostMargin.MM())}
		}
	}
	if !(s.Overlap >= LeastOverlap && s.Overlap <= MostOverlap) {
		return job.Problem{Reason: fmt.Sprintf("an overlap of %.4g mm", s.Overlap.MM()), Fix: fmt.Sprintf("give %.4g to %.4g mm", LeastOverlap.MM(), MostOverlap.MM())}
	}
	if err := s.Measured.check(); err != nil {
		return err
	}
	if across, along, foot := s.left(); !s.enough() {
		p := job.Problem{
			Reason: fmt.Sprintf("%v with margins of %v leaves %.4g x %.4g mm to print on, of which at least %.4g x %.4g mm is needed", s.Sheet, s.Margins, across.MM(), along.MM(), leastAcross.MM(), (leastAlong + foot).MM()),
			Fix:    "print on a larger sheet: " + s.Larger(Setup.enough),
		}
		for tenths := Length(10 * MostMargin); tenths >= 0; tenths-- {
			t := s
			if t.Margins = EvenMargins(tenths / 10); t.enough() {
				p.Fix += fmt.Sprintf(", or leave no margin over %.4g mm", (tenths / 10).MM())
				break
			}
		}
		return p
	}
	return nil
}

// left returns what an upright sheet leaves between its margins, and what of it is its
// foot.
func (s Setup) left() (across, along, foot Length) {
	foot, _ = s.Foot(false)
	room := s.Printable(false)
	return room.Width(), room.Height(), foot
}

// enough tells whether that is enough.
func (s Setup) enough() bool {
	across, along, foot := s.left()
	return across >= leastAcross && along >= leastAlong+foot
}

// Larger names the first sheet, of those printed on at a desk and then of all, that does
// in place of this one, the margins as they are.
func (s Setup) Larger(does func(Setup) bool) string {
	for _, sheet := range Sheets {
		if s.Sheet = sheet; does(s) {
			return sheet.Name
		}
	}
	return Sheets[0].Name
}

// wide is the least width of a sheet on which words take a corner, and pieces stand
// close together: a roll, or a sheet of a plotter.
const wide Length = 450

// Wide tells whether a sheet is wide enough for words beside templates.
func (s Setup) Wide() bool { return s.Sheet.Width > wide }

// Takes tells whether a sheet, upright or lying, has room for something so large.
func (s Setup) Takes(width, height Length) bool {
	return slices.ContainsFunc(s.areas(), func(a geometry.Box) bool { return width <= a.Width() && height <= a.Height() })
}

// areas returns what of a sheet can take templates, from its upper left corner: of an upright
// one, then of one that lies. A square sheet never lies: nothing would tell that it does.
func (s Setup) areas() []geometry.Box {
	area := func(lying bool) geometry.Box {
		b := s.Printable(lying)
		foot, _ := s.Foot(lying)
		b.Max.Y -= foot
		return b
	}
	return []geometry.Box{area(false), area(s.Sheet.Width != s.Sheet.Height)}
}

// DefaultSetup returns A4 with a margin of 10 mm, which the printers at home
// reach (common practice, no source), and an overlap of 10 mm.
func DefaultSetup() Setup { return Setup{Sheet: Sheets[0], Margins: EvenMargins(10), Overlap: 10} }
