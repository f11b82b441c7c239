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
	"forel/geometry/slipcase"
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

func rows(c slipcase.Case, r geometry.Rounding) [][]string {
	var out [][]string
	for _, p := range c.Pieces {
		w, h := p.Size()
		out = append(out, []string{p.Name, fmt.Sprint(p.Count), string(p.Material), r.Number(w), r.Number(h), string(p.Grain)})
	}
	return out
}

// Text gives the list in aligned columns, in the maker's unit.
func Text(c slipcase.Case, r geometry.Rounding) []byte {
	var b bytes.Buffer
	if c.Job.Title != "" {
		fmt.Fprintf(&b, "%s\n\n", oneLine(c.Job.Title))
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
	return b.Bytes()
}

// Markdown gives the list as a table with the notes as a list.
func Markdown(c slipcase.Case, r geometry.Rounding) []byte {
	var b bytes.Buffer
	title := "Cut list"
	if c.Job.Title != "" {
		title += ": " + oneLine(c.Job.Title)
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
		b.WriteString("- " + n + "\n")
	}
	return b.Bytes()
}

// notes says what the sizes mean, how they were rounded, what the case
// measures and what to watch.
func notes(c slipcase.Case, r geometry.Rounding) []string {
	size := func(s slipcase.Size) string {
		return fmt.Sprintf("%s high, %s deep, %s thick", r.Format(s.Height), r.Format(s.Width), r.Format(s.Thickness))
	}
	var out []string
	for i, b := range c.Job.Books {
		if d := b.Taper(); d > 0 {
			out = append(out, fmt.Sprintf("%s is %s thinner at one edge: there it has %s of play", volume(c, i), r.Format(d), r.Format(d+c.Job.Clearance.Thickness)))
		}
	}
	out = append(out,
		"room inside: "+size(c.Cavity),
		"carcass outside: "+size(c.Outside),
		fmt.Sprintf("left at the mouth: height %s, thickness %s", r.Format(c.Mouth.Height), r.Format(c.Mouth.Thickness)),
		fmt.Sprintf("fit check: a side shows %s beyond the book at the fore-edge, %s at head or tail", r.Format(c.Fit.ForeEdge), r.Format(c.Fit.HeadOrTail)),
		"sizes are rounded "+r.String()+"; the templates and the JSON list are exact",
		"width runs from spine to mouth, on spine pieces and on head and tail cloth from side to side",
		"the three walls have one width, sides and spine wall one height: cut each at one setting",
	)
	if t := c.Job.Lining.Trim; c.Job.Lining.Thickness > 0 && c.Job.Lining.Order == slipcase.LinedBefore && t > 0 {
		out = append(out, "linings are cut "+r.Format(t)+" beyond their board all round and trimmed flush when dry")
	}
	for _, m := range c.Mistakable() {
		out = append(out, "take care: "+m+"; a bold mark on the template shows the spine edge")
	}
	return out
}

// volume names the nth book: "the book" where there is one.
func volume(c slipcase.Case, n int) string {
	switch {
	case len(c.Job.Books) == 1:
		return "the book"
	case c.Job.Books[n].Title != "":
		return oneLine(c.Job.Books[n].Title)
	}
	return fmt.Sprintf("volume %d", n+1)
}

// oneLine keeps a title from breaking a line of the list.
func oneLine(s string) string { return strings.Join(strings.Fields(s), " ") }

// escapeMarkdown keeps a title from being read as markup.
func escapeMarkdown(s string) string {
	var b strings.Builder
	for _, r := range s {
		if strings.ContainsRune("\\`*_{}[]<>#|", r) {
			b.WriteByte('\\')
		}
		b.WriteRune(r)
	}
	return b.String()
}
