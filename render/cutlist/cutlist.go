// Package cutlist writes the list of pieces with their sizes: as text for the
// bench, as Markdown and CSV for documents and spreadsheets, as JSON for other
// programs.
package cutlist

import (
	"bytes"
	"fmt"

	"forel/geometry"
	"forel/geometry/plan"
	"forel/geometry/wording"
	"forel/render/document"
)

// table lists the pieces.
func table(c plan.Plan, r geometry.Rounding) document.Table {
	unit := " (" + r.Unit.String() + ")"
	t := document.Table{Columns: []document.Column{{Head: "piece"}, {Head: "cut", Right: true}, {Head: "of"}, {Head: "width" + unit, Right: true}, {Head: "height" + unit, Right: true},
		{Head: geometry.Directions(c.Pieces) + " along"}}}
	for _, p := range c.Pieces {
		w, h := p.Size()
		t.Rows = append(t.Rows, []string{p.Name, fmt.Sprint(p.Count), string(p.Material), r.Number(w), r.Number(h), string(p.Grain)})
	}
	return t
}

// Text returns the list in the maker's unit, with its notes, as text or in Markdown.
func Text(c plan.Plan, r geometry.Rounding, f document.Form) []byte {
	var b bytes.Buffer
	title := f.Says(wording.OneLine(c.Title))
	switch {
	case !f.Plain && title == "":
		title = "Cut list"
	case !f.Plain:
		title = "Cut list: " + title
	}
	if title != "" {
		fmt.Fprintf(&b, "%s%s\n\n", f.Head, title)
	}
	b.WriteString(f.Table(table(c, r)) + "\n")
	for _, n := range notes(c, r) {
		b.WriteString(f.Item + f.Says(n) + "\n")
	}
	names, margins := placing(c, r)
	for i, name := range names {
		if f.Plain {
			b.WriteString("\n")
		}
		fmt.Fprintf(&b, "%splacing the %s\n", f.Item, name)
		for _, m := range margins[i] {
			b.WriteString(f.Under + f.Says(m) + "\n")
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
		out = append(out, wording.OneLine(remark.In(r.Format)))
	}
	for _, w := range c.Warnings {
		out = append(out, "take care: "+wording.OneLine(w))
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

// placing returns, for each piece that has them, its name and the margins to rule
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
