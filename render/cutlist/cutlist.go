// Package cutlist writes the list of pieces with their sizes: as text for the
// bench, as Markdown and CSV for documents and spreadsheets, as JSON for other
// programs.
package cutlist

import (
	"bytes"
	"fmt"
	"strings"
	"unicode/utf8"

	"forel/geometry"
	"forel/geometry/plan"
)

var heads = []string{"piece", "cut", "of", "width", "height", "grain along"}

// numeric tells which columns are set flush right.
var numeric = []bool{false, true, false, true, true, false}

// headsIn gives the heads with the unit of width and height.
func headsIn(u geometry.Unit) []string {
	h := append([]string(nil), heads...)
	h[3] += " (" + u.String() + ")"
	h[4] += " (" + u.String() + ")"
	return h
}

func rows(c plan.Plan, r geometry.Rounding) [][]string {
	var out [][]string
	for _, p := range c.Pieces {
		w, h := p.Size()
		out = append(out, []string{p.Name, fmt.Sprint(p.Count), string(p.Material), r.Number(w), r.Number(h), string(p.Grain)})
	}
	return out
}

// Text gives the list in aligned columns, in the maker's unit.
func Text(c plan.Plan, r geometry.Rounding) []byte {
	var b bytes.Buffer
	if t := oneLine(c.Title); t != "" {
		fmt.Fprintf(&b, "%s\n\n", t)
	}
	table := append([][]string{headsIn(r.Unit)}, rows(c, r)...)
	wide := make([]int, len(heads))
	for _, line := range table {
		for i, cell := range line {
			wide[i] = max(wide[i], utf8.RuneCountInString(cell))
		}
	}
	for _, line := range table {
		var out strings.Builder
		for i, cell := range line {
			space := strings.Repeat(" ", wide[i]-utf8.RuneCountInString(cell))
			if numeric[i] {
				out.WriteString(space + cell + "  ")
			} else {
				out.WriteString(cell + space + "  ")
			}
		}
		b.WriteString(strings.TrimRight(out.String(), " ") + "\n")
	}
	b.WriteString("\n")
	for _, n := range notes(c, r) {
		b.WriteString(n + "\n")
	}
	names, margins := placing(c, r)
	for i, name := range names {
		fmt.Fprintf(&b, "\nplacing the %s\n", name)
		for _, m := range margins[i] {
			b.WriteString("  " + m + "\n")
		}
	}
	return b.Bytes()
}

// Markdown gives the list as a table with the notes as a list.
func Markdown(c plan.Plan, r geometry.Rounding) []byte {
	var b bytes.Buffer
	title := "Cut list"
	if t := oneLine(c.Title); t != "" {
		title += ": " + t
	}
	fmt.Fprintf(&b, "# %s\n\n", escapeMarkdown(title))
	line := func(cells []string) { b.WriteString("| " + strings.Join(cells, " | ") + " |\n") }
	line(headsIn(r.Unit))
	rule := make([]string, len(heads))
	for i := range rule {
		rule[i] = "---"
		if numeric[i] {
			rule[i] = "--:"
		}
	}
	line(rule)
	for _, cells := range rows(c, r) {
		line(cells)
	}
	b.WriteString("\n")
	for _, n := range notes(c, r) {
		b.WriteString("- " + escapeMarkdown(n) + "\n")
	}
	names, margins := placing(c, r)
	for i, name := range names {
		fmt.Fprintf(&b, "- placing the %s\n", name)
		for _, m := range margins[i] {
			b.WriteString("  - " + escapeMarkdown(m) + "\n")
		}
	}
	return b.Bytes()
}

// notes says what the sizes mean, how they were rounded, what the case
// measures and what to watch.
func notes(c plan.Plan, r geometry.Rounding) []string {
	var out []string
	for _, f := range c.Facts {
		out = append(out, f.Name+": "+f.Says().In(r.Format))
	}
	out = append(out,
		"sizes are rounded "+r.String()+"; the templates and the JSON list are exact",
		c.Runs)
	for _, remark := range c.Remarks {
		out = append(out, oneLine(remark.In(r.Format)))
	}
	for _, w := range c.Warnings {
		out = append(out, "take care: "+oneLine(w))
	}
	for _, m := range c.Mistaken {
		how := "write its name on each"
		if m.Marked {
			how = "a bold mark on the template shows the spine edge"
		}
		out = append(out, "take care: "+m.Says+"; "+how)
	}
	return out
}

// placing gives, for each piece that has them, its name and the margins to rule
// or to check when it is placed.
func placing(c plan.Plan, r geometry.Rounding) (names []string, margins [][]string) {
	for _, p := range c.Pieces {
		if len(p.Margins) == 0 || p.Material == geometry.Lining {
			continue // what is said of linings is said once
		}
		var lines []string
		for _, m := range p.Margins {
			lines = append(lines, r.Format(m.Length)+" "+m.Name)
		}
		names, margins = append(names, p.Name), append(margins, lines)
	}
	return names, margins
}

// oneLine keeps a title from breaking a line of the list.
func oneLine(s string) string { return strings.Join(strings.Fields(s), " ") }

// markup is what Markdown reads otherwise than as itself (CommonMark 0.31.2, 2.4, from
// memory: a backslash before any of it takes it as it is).
const markup = "\\`*_{}[]<>#|&~"

// escapeMarkdown keeps what a maker wrote from being read as markup.
func escapeMarkdown(s string) string {
	var b strings.Builder
	for _, r := range s {
		if strings.ContainsRune(markup, r) {
			b.WriteByte('\\')
		}
		b.WriteRune(r)
	}
	return b.String()
}
