// Package lessons writes what was measured of a case beside what was planned, and what
// many such records teach, as text.
package lessons

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"

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
	rows := [][]string{{"name", "planned", "expected", "measured", ""}}
	n := func(l Length) string { return geometry.FineNumber(l, u) }
	var open []Line
	for _, l := range all {
		if len(l.Readings) == 0 {
			open = append(open, l)
			continue
		}
		rows = append(rows, []string{l.Key, n(l.Planned), l.expected(u), l.read(u), l.verdict(u)})
	}
	if len(rows) > 1 {
		fmt.Fprintf(&b, "taken down (%s; %s)\n\n%s", u, expectation, wording.Aligned(rows, numbers))
	} else {
		b.WriteString("nothing is taken down yet\n")
	}
	if len(open) > 0 {
		fmt.Fprintf(&b, "\nto be measured, with --reading NAME=LENGTHS or a flag of its own\n(%s; %s)\n", u, expectation)
		for _, at := range moments(open) {
			rows := [][]string{{"name", "planned", "expected", "what"}}
			for _, l := range at {
				rows = append(rows, []string{l.Key, n(l.Planned), l.expected(u), l.Name})
			}
			fmt.Fprintf(&b, "\n%s:\n%s", at[0].when(), table(rows))
		}
	}
	return []byte(b.String())
}

// expectation says what is meant by expected.
const expectation = "expected: what 19 of 20 cases keep within"

func (l Line) expected(u geometry.Unit) string {
	return geometry.FineNumber(l.Low, u) + " to " + geometry.FineNumber(l.High, u)
}

// read lists what was measured.
func (l Line) read(u geometry.Unit) string {
	read := make([]string, len(l.Readings))
	for i, r := range l.Readings {
		read[i] = geometry.FineNumber(r, u)
	}
	return strings.Join(read, "; ")
}

// when says when a length is measured.
func (l Line) when() string { return cmp.Or(l.When, "at any time") }

// moments parts lines by when they are measured.
func moments(all []Line) (out [][]Line) {
	for i, l := range all {
		if i == 0 || l.When != all[i-1].When {
			out = append(out, nil)
		}
		out[len(out)-1] = append(out[len(out)-1], l)
	}
	return out
}

// numbers tells that the second column has what is planned.
func numbers(column int) bool { return column == 1 }

// table writes rows whose last column is broken, so that all is as wide as a terminal at most.
func table(rows [][]string) string {
	const terminal, least = 100, 16
	last := len(rows[0]) - 1
	bare := make([][]string, len(rows))
	for i, row := range rows {
		bare[i] = row[:last]
	}
	room := terminal
	for line := range strings.Lines(wording.Aligned(bare, numbers)) {
		room = min(room, terminal-2-utf8.RuneCountInString(strings.TrimSpace(line)))
	}
	var out [][]string
	for _, row := range rows {
		for i, part := range strings.Split(wording.Wrap(row[last], max(room, least)), "\n") {
			if i > 0 {
				row = make([]string, last+1)
			}
			out = append(out, append(slices.Clone(row[:last]), part))
		}
	}
	return wording.Aligned(out, numbers)
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
