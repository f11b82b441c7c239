package paper

import (
	"fmt"
	"strings"

	"forel/geometry"
	"forel/geometry/job"
)

// Gauged is the length that a printer is gauged by: a rule of so much in the
// file is measured on the print.
const Gauged Length = 200

// What Gauged may measure on a print. A printer is off by a few parts in a
// thousand; more than three in a hundred is a scaling setting gone wrong
// (common practice, no source).
const (
	LeastMeasured = Gauged * 97 / 100
	MostMeasured  = Gauged * 103 / 100
)

// Measured is what a rule of 200 mm (Gauged) measured on a print of this
// printer, across the sheet as it is fed and along it. Zero is not measured: the
// printer is taken to be true.
type Measured struct{ Across, Along Length }

// Scale returns what the printer makes of a millimetre on a page, across the page
// and down it: 0.996 where 200 mm came out as 199.2. A page that lies has the
// sheet's two ways swapped.
func (m Measured) Scale(lying bool) (x, y float64) {
	scale := func(l Length) float64 {
		if l == 0 {
			return 1
		}
		return float64(l / Gauged)
	}
	x, y = scale(m.Across), scale(m.Along)
	if lying {
		x, y = y, x
	}
	return x, y
}

// True tells whether nothing is to be corrected.
func (m Measured) True() bool {
	x, y := m.Scale(false)
	return x == 1 && y == 1
}

// String says what was measured, as pages state it: "corrected: across 200 mm
// printed as 199.2". It is empty where nothing is to be corrected.
func (m Measured) String() string {
	if m.True() {
		return ""
	}
	var ways []string
	for _, w := range []struct {
		name string
		l    Length
	}{{"across", m.Across}, {"along", m.Along}} {
		if w.l != 0 {
			ways = append(ways, fmt.Sprintf("%s 200 mm printed as %.5g", w.name, w.l.MM()))
		}
	}
	return "corrected: " + strings.Join(ways, ", ")
}

func (m Measured) check() error {
	for _, l := range []Length{m.Across, m.Along} {
		if l != 0 && !(l >= LeastMeasured && l <= MostMeasured) { // true for NaN too
			return job.Problem{Reason: fmt.Sprintf("200 mm measured as %.5g mm", l.MM()), Fix: fmt.Sprintf("give %.4g to %.4g mm", LeastMeasured.MM(), MostMeasured.MM())}
		}
	}
	return nil
}

// Printable returns the area of a page, upright or lying, that may be drawn on:
// from the page's upper left corner, Y downward, in true millimetres as they
// are measured on the print. It is the sheet without its margins; where the
// printer was measured to print too small, the file is drawn larger by as much
// and the area is smaller so that the file's ink stays off the margins too. Where
// it prints too large the area is no larger than the sheet has.
func (s Setup) Printable(lying bool) geometry.Box {
	b := s.Reach(lying)
	x, y := s.Measured.Scale(lying)
	return about(b, min(x, 1), min(y, 1))
}

// InFile returns how a page is drawn in a file so that it prints true: every place
// goes away from a centre by the factors x and y. They are one for a printer
// that is true. Which place of a sheet a printer's error leaves where it is can't
// be known: the centre is that of the printable area, and the print is off by
// no more than a shift.
func (s Setup) InFile(lying bool) (x, y float64, center geometry.Point) {
	x, y = s.Measured.Scale(lying)
	return 1 / x, 1 / y, s.Reach(lying).Center()
}

// Size returns the width and height of a page, upright or lying.
func (s Setup) Size(lying bool) (width, height Length) {
	if lying {
		return s.Sheet.Height, s.Sheet.Width
	}
	return s.Sheet.Width, s.Sheet.Height
}

// Reach returns what the margins leave of a page: the area of one that is not at
// true size, whose scale nothing corrects.
func (s Setup) Reach(lying bool) geometry.Box {
	m := s.Margins
	if lying {
		m = m.turned()
	}
	return m.of(s.Size(lying))
}

// about returns a box scaled about its centre.
func about(b geometry.Box, x, y float64) geometry.Box {
	c, half := b.Center(), geometry.Pt(b.Width()*Length(x)/2, b.Height()*Length(y)/2)
	return geometry.Box{Min: c.Sub(half), Max: c.Add(half)}
}
