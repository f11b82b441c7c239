// Package stock is what pieces are cut from as it is bought: sheets of board
// and paper, cloth on a roll, with their grain, how many there are and what
// they cost; and a small library of usual sizes.
package stock

import (
	"cmp"
	"fmt"
	"math"
	"strings"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/wording"
	"forel/paper"
	"forel/paper/money"
)

// Length is a distance in millimetres.
type Length = geometry.Length

// NoGrain is the grain of stock without a direction, or whose direction is not
// known: pieces may be turned on it.
const NoGrain geometry.Grain = "none"

// Stock is one kind of sheet, or a roll, of one material.
type Stock struct {
	Name      string            // what the maker calls it; may be empty
	Material  geometry.Material //
	Thickness Length            // as measured; 0: whatever the job gives its material
	Roll      bool
	Width     Length         // of a sheet its first side, of a roll across it
	Height    Length         // of a sheet its second side, of a roll the length there is; 0: as much as is needed
	Grain     geometry.Grain // along the width, along the height (the length of a roll), or NoGrain
	Count     int            // how many there are; 0: as many as are needed, of a roll with a length one
	Price     *money.Amount  // of a sheet, or of Per of a roll, in the maker's money; nil: not known
	Per       Length         // the length of roll that Price is for: Metre or Yard
	SoldBy    Length         // a roll is cut off for a buyer in steps of it; 0: DefaultStep
	Supplier  string         // who sells it; may be empty
	OrderedAs string         // what the supplier calls it; empty: Name
	Trim      Length         // taken off each edge before its edges are relied on
	Kerf      Length         // what the blade takes away: 0 for a knife or a shear
	Density   float64        // kg/m³; 0: DefaultDensity
	Grammage  float64        // g/m² as sold; 0: from density and thickness
	Offcut    int            // the number on its label, of an offcut that is there once; 0: no offcut
	Pile      string         // where the maker keeps count of it, for the caller; may be empty
	Source    string         // where a size of the library comes from; empty for the maker's own
	At        job.Place      // where it was read, for messages
}

// What a length of roll is sold by.
const (
	Metre Length = 1000
	Yard  Length = 36 * geometry.Inch // exact: international yard and pound agreement, 1959
)

// DefaultStep returns what a length off a roll is a whole number of where it is sold:
// 100 mm, or 1/8 yd where rolls are sold by the yard (common practice, no source).
func DefaultStep(per Length) Length {
	if per == Yard {
		return Yard / 8
	}
	return 100
}

// Quantity returns how much of the stock so many sheets are, or a length off a roll: a
// number of sheets, or of Per rounded up to a hundredth of it.
func (s Stock) Quantity(sheets int, length Length) money.Amount {
	if !s.Roll {
		return money.Of(sheets)
	}
	return money.Of(int(math.Ceil(float64(length/s.Per)*100 - slack.MM()))).Shift(-2)
}

// Sold is Quantity as it is sold: a length off a roll is rounded up to whole steps.
func (s Stock) Sold(sheets int, length Length) money.Amount {
	if !s.Roll {
		return money.Of(sheets)
	}
	step := cmp.Or(s.SoldBy, DefaultStep(s.Per))
	steps := money.Of(int(math.Ceil(float64(length/step) - slack.MM())))
	return steps.Mul(money.Thousandths(float64(step))).DivRound(money.Thousandths(float64(s.Per)), 6)
}

// Unit is what a Quantity of a roll is counted in: "m" or "yd".
func (s Stock) Unit() string {
	if s.Per == Yard {
		return "yd"
	}
	return "m"
}

// Owned tells of stock that is there: so many sheets, or a roll of a length. The other
// kind is bought as it is needed.
func (s Stock) Owned() bool { return s.Count > 0 || s.Roll && s.Height > 0 }

// DefaultTrim returns what is taken off each edge of a sheet, which as bought is
// neither clean nor square: 5 mm, or 1/4 in where makers work in inches (common
// practice, no source).
func DefaultTrim(u geometry.Unit) Length {
	if u == geometry.IN {
		return geometry.Inch / 4
	}
	return 5
}

// Limits of stock that a maker gives, all allowed.
const (
	LeastSide   Length = 100
	LeastSliver Length = 10 // of an offcut
	MostSide    Length = 5000
	MostLength  Length = 200_000 // of a roll
	MostTrim    Length = 100
	MostKerf    Length = 10
	MostCount          = 100_000
)

// ParseSize reads the size of a sheet as paper.ParseSize does.
func ParseSize(text string, unit geometry.Unit) (paper.Sheet, error) {
	return paper.ParseSize(text, unit, "a sheet", LeastSide, MostSide)
}

// ParseOffcut is ParseSize of an offcut, which may be narrow.
func ParseOffcut(text string, unit geometry.Unit) (paper.Sheet, error) {
	return paper.ParseSize(text, unit, "an offcut", LeastSliver, MostSide)
}

// Usable returns the room between the trimmed edges; the height of a roll of
// which there is as much as is needed is 0.
func (s Stock) Usable() (width, height Length) {
	width = max(0, s.Width-2*s.Trim)
	if s.Height > 0 {
		height = max(0, s.Height-2*s.Trim)
	}
	return width, height
}

// Endless tells of a roll of which there is as much as is needed.
func (s Stock) Endless() bool { return s.Roll && s.Height == 0 }

// Grained tells whether the stock has a grain that pieces must follow.
func (s Stock) Grained() bool { return s.Grain != NoGrain && s.Grain != "" }

// Turned tells whether a piece, with its grain along its width or height, must
// be turned by a quarter on this stock, and whether it may be either way. A
// piece without a grain may.
func (s Stock) Turned(piece geometry.Grain) (turned, either bool) {
	if !s.Grained() || piece == "" || piece == NoGrain {
		return false, true
	}
	return piece != s.Grain, false
}

// Takes tells whether a piece fits between the trimmed edges the way its grain
// lets it lie.
func (s Stock) Takes(width, height Length, grain geometry.Grain) bool {
	w, h := s.Usable()
	fits := func(pw, ph Length) bool { return pw <= w+slack && (s.Endless() || ph <= h+slack) }
	turned, either := s.Turned(grain)
	return (either || !turned) && fits(width, height) || (either || turned) && fits(height, width)
}

// slack is what two ways of calculating one length may differ by.
const slack Length = 1e-6

// Size writes the stock's size: "26 × 38 in", "A1, 594 × 841 mm", "roll 54 in
// wide". It is written in the unit it is a round number of.
func (s Stock) Size() string {
	if s.Roll {
		return "roll " + s.side(s.Width) + " wide"
	}
	w, h := s.side(s.Width), s.side(s.Height)
	if s.Offcut > 0 {
		w = fmt.Sprintf("offcut %d, %s", s.Offcut, w)
	}
	size := w[:strings.LastIndex(w, " ")] + " × " + h
	for _, n := range paper.Sheets {
		if n.Width.Near(s.Width) && n.Height.Near(s.Height) {
			return n.Name + ", " + size
		}
	}
	return size
}

// side writes a side in inches where all are whole numbers of eighths and not of
// millimetres, else in millimetres to a tenth.
func (s Stock) side(l Length) string {
	const eighth = geometry.Inch / 8
	round := func(l, step Length) bool { return l.Round(step).Near(l) }
	height := s.Height
	if s.Roll {
		height = s.Width
	}
	if !(round(s.Width, 1) && round(height, 1)) && round(s.Width, eighth) && round(height, eighth) {
		return geometry.To64th.Pretty(l)
	}
	return wording.Decimal(l.MM(), 1) + " mm"
}

// Along says in words which way the grain, or the flutes, run.
func (s Stock) Along() string {
	switch {
	case !s.Grained():
		return "no " + s.Material.Direction()
	case s.Roll && s.Grain == geometry.GrainHeight:
		return s.Material.Direction() + " along the roll"
	case s.Roll:
		return s.Material.Direction() + " across the roll"
	case s.Grain == geometry.GrainHeight:
		return s.Material.Direction() + " along " + s.side(s.Height)
	}
	return s.Material.Direction() + " along " + s.side(s.Width)
}

// Has says how much of it there is: "6 of 700 × 1000 mm", "2.4 m of roll 1370 mm wide".
func (s Stock) Has() string {
	switch {
	case s.Roll && s.Height > 0 && s.Count > 1:
		return fmt.Sprintf("%d times %s of %s", s.Count, s.side(s.Height), s.Size())
	case s.Roll && s.Height > 0:
		return s.side(s.Height) + " of " + s.Size()
	case s.Count > 0:
		return fmt.Sprintf("%d of %s", s.Count, s.Size())
	}
	return s.Size()
}

// Check tells what is wrong with a stock's measures, nil if nothing is.
func (s Stock) Check() error {
	if s.Offcut > 0 && s.Trim == 0 { // as it was kept
		return nil
	}
	if w, h := s.Usable(); w < LeastSide/2-slack || !s.Endless() && h < LeastSide/2-slack {
		side := s.Width
		if !s.Endless() {
			side = min(side, s.Height)
		}
		most := job.Shown((side-LeastSide/2)/2, geometry.MM, -1)
		return job.Problem{Value: fmt.Sprintf("a trim of %.4g mm on each edge", s.Trim.MM()), Reason: "leaves nothing to cut from", Fix: "at most " + job.Show(most, geometry.MM, -1),
			Mend: job.Change{Key: "stock.trim", Value: most}}
	}
	return nil
}
