// Package lessons writes what was measured of a case beside what was planned, and what
// many such records teach, as text.
package lessons

import (
	"fmt"
	"strings"

	"forel/geometry"
	"forel/geometry/fit"
	"forel/geometry/wording"
)

// Length is a distance in millimetres.
type Length = geometry.Length

// Line is a quantity with what was measured of it last.
type Line struct {
	fit.Quantity
	Low, High Length   // what 19 of 20 cases were expected to keep between
	Readings  []Length // none: not measured yet
	Date      string
	Slip      bool // it is so far off that it is more likely a slip
}

// Record returns a table of what was measured of a case beside what was planned. Lengths
// are written finely, in the unit u.
func Record(title string, all []Line, u geometry.Unit) []byte {
	var b strings.Builder
	if t := wording.OneLine(title); t != "" {
		fmt.Fprintf(&b, "%s\n\n", t)
	}
	rows := [][]string{{"", "(" + u.String() + ")", "planned", "19 of 20 keep within", "measured", ""}}
	n := func(l Length) string { return geometry.FineNumber(l, u) }
	var open []Line
	for _, l := range all {
		if len(l.Readings) == 0 {
			open = append(open, l)
			continue
		}
		read := make([]string, len(l.Readings))
		for i, r := range l.Readings {
			read[i] = n(r)
		}
		rows = append(rows, []string{l.Key, l.Name, n(l.Planned), n(l.Low) + " to " + n(l.High), strings.Join(read, "; "), l.verdict(u)})
	}
	if len(rows) > 1 {
		b.WriteString(wording.Aligned(rows, func(i int) bool { return i == 2 }))
	} else {
		b.WriteString("nothing is taken down yet\n")
	}
	if len(open) > 0 {
		fmt.Fprintf(&b, "\nto be measured, with --reading NAME=LENGTHS or a flag of its own (%s)\n", u)
		rows := [][]string{{"", "", "planned", "19 of 20 keep within", "when"}}
		for _, l := range open {
			rows = append(rows, []string{l.Key, l.Name, n(l.Planned), n(l.Low) + " to " + n(l.High), l.When})
		}
		b.WriteString(wording.Aligned(rows, func(i int) bool { return i == 2 }))
	}
	return []byte(b.String())
}

// verdict says how what was measured compares with what was expected, and of play whether
// it is too little or too much.
func (l Line) verdict(u geometry.Unit) string {
	const shown = 0.005 // what is not seen in the figures
	v := fit.Counting(l.Sort, l.Readings)
	var said []string
	switch {
	case l.Slip:
		said = append(said, wording.FarOff+" put it right in the file")
	case v < l.Low-shown:
		said = append(said, geometry.Fine(l.Low-v, u)+" under what was expected")
	case v > l.High+shown:
		said = append(said, geometry.Fine(v-l.High, u)+" over what was expected")
	default:
		said = append(said, "as expected")
	}
	switch {
	case l.Sort != fit.Play:
	case v < l.Tight:
		said = append(said, "too tight: under "+geometry.Settable(l.Tight, u))
	case l.Loose > 0 && v > l.Loose:
		said = append(said, "too loose: over "+geometry.Settable(l.Loose, u))
	}
	return strings.Join(said, "; ")
}
