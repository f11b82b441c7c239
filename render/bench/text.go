package bench

import (
	"bytes"
	"fmt"
	"strings"
	"unicode/utf8"

	"forel/geometry"
	"forel/paper/bench"
)

// column is a column of a table.
type column struct {
	head  string
	right bool // flush right
}

// shoppingTable gives the shopping list with its columns.
func shoppingTable(p bench.Plan, r geometry.Rounding) ([]column, [][]string) {
	_, priced, _ := total(p)
	columns := []column{{"material", false}, {"buy", true}, {"size", false}, {"grain", false}, {"pieces", true}, {"in pieces", true},
		{"worth keeping", true}, {"waste", true}, {"weight", true}, {"cost", true}}
	var rows [][]string
	for _, g := range p.Groups {
		for i, u := range g.Used {
			s := g.Stock[u.Stock]
			row := []string{label(g, r), buy(g, u, r), s.Size(), strings.TrimPrefix(s.Along(), "grain "), "", "", "", "", "", ""}
			if priced {
				row[len(row)-1] = money(u.Cost)
			}
			if i == 0 {
				in, kept, waste := shares(g)
				n := 0
				for _, sh := range g.Sheets {
					n += len(sh.Pieces)
				}
				copy(row[4:], []string{fmt.Sprint(n), percent(in), percent(kept), percent(waste), grams(g.Weight.Bought, r)})
			}
			rows = append(rows, row)
		}
	}
	return columns, rows
}

// total adds up what has a price; whole tells whether everything has.
func total(p bench.Plan) (sum float64, any, whole bool) {
	whole = true
	for _, g := range p.Groups {
		for _, u := range g.Used {
			if u.Cost == nil {
				whole = false
				continue
			}
			sum, any = sum+*u.Cost, true
		}
	}
	return sum, any, whole && any
}

// totalLine says what all costs; empty where nothing has a price.
func totalLine(p bench.Plan) string {
	sum, any, whole := total(p)
	switch {
	case !any:
		return ""
	case whole:
		return fmt.Sprintf("cost in all: %.2f", sum)
	}
	return fmt.Sprintf("cost of what has a price: %.2f", sum)
}

// cutTable gives the order of the cuts of a group.
func cutTable(p bench.Plan, g bench.Group, r geometry.Rounding) ([]column, [][]string) {
	columns := []column{{"cut", true}, {"setting", true}, {"fence", true}, {"exactly " + r.Unit.String(), true}, {"of", false}, {"gives", false}, {"leaves", false}}
	var rows [][]string
	for _, c := range g.Cuts {
		setting := "–"
		if c.Setting > 0 {
			setting = fmt.Sprint(c.Setting)
		}
		rows = append(rows, []string{fmt.Sprint(c.Number), setting, r.Pretty(c.Fence), exactly(c.Fence, r), part(c.Part), gives(p, g, c), leaves(p, g, c)})
	}
	return columns, rows
}

// exactly writes a length in the maker's unit, finer than it can be set.
func exactly(l Length, r geometry.Rounding) string {
	if r.Unit == geometry.IN {
		return fmt.Sprintf("%.4f", float64(l/geometry.Inch))
	}
	return fmt.Sprintf("%.2f", l.MM())
}

// summary tells in a line a group what work there is.
func summary(g bench.Group, r geometry.Rounding) string {
	sheets := count(len(g.Sheets), "sheet")
	if len(g.Sheets) > 0 && g.Sheets[0].Roll {
		sheets = count(len(g.Sheets), "length")
	}
	return fmt.Sprintf("%s: %s, %s at %s of the fence", label(g, r), sheets, count(len(g.Cuts), "cut"), count(g.Settings, "setting"))
}

// offcuts tells of what is worth keeping, a line a group.
func offcuts(g bench.Group, r geometry.Rounding) string {
	var out []string
	for _, s := range g.Sheets {
		for _, o := range s.Offcuts {
			if o.Kept() {
				out = append(out, o.Name+": "+r.PrettyNumber(o.Clean.Width())+" × "+r.Pretty(o.Clean.Height()))
			}
		}
	}
	return strings.Join(out, "; ")
}

// Text gives the shopping list and a summary in the maker's unit; with cuts, the
// order of the cuts too.
func Text(p bench.Plan, r geometry.Rounding, cuts bool) []byte {
	var b bytes.Buffer
	fmt.Fprintf(&b, "Shopping list: %s\n\n", titles(p))
	write(&b, p, r)
	b.WriteString("\n")
	for _, g := range p.Groups {
		b.WriteString(summary(g, r) + "\n")
		if o := offcuts(g, r); o != "" {
			fmt.Fprintf(&b, "  worth keeping: %s\n", o)
		}
	}
	b.WriteString("\n")
	for _, n := range remarks(p, r, r.Format) {
		b.WriteString(n + "\n")
	}
	if cuts {
		for _, g := range p.Groups {
			fmt.Fprintf(&b, "\nOrder of the cuts: %s\n\n", label(g, r))
			columns, rows := cutTable(p, g, r)
			aligned(&b, columns, rows)
		}
		fmt.Fprintf(&b, "\n%s\n", cautions)
	}
	return b.Bytes()
}

func write(b *bytes.Buffer, p bench.Plan, r geometry.Rounding) {
	columns, rows := shoppingTable(p, r)
	aligned(b, columns, rows)
	if t := totalLine(p); t != "" {
		fmt.Fprintf(b, "\n%s\n", t)
	}
}

// aligned writes a table in columns; one that is empty throughout is left out.
func aligned(b *bytes.Buffer, columns []column, rows [][]string) {
	wide := make([]int, len(columns))
	for i := range columns {
		for _, row := range rows {
			if row[i] != "" {
				wide[i] = max(wide[i], utf8.RuneCountInString(row[i]), utf8.RuneCountInString(columns[i].head))
			}
		}
	}
	line := func(cell func(i int) string) {
		var out strings.Builder
		for i, c := range columns {
			if wide[i] == 0 {
				continue
			}
			space := strings.Repeat(" ", wide[i]-utf8.RuneCountInString(cell(i)))
			if c.right {
				out.WriteString(space + cell(i) + "  ")
			} else {
				out.WriteString(cell(i) + space + "  ")
			}
		}
		b.WriteString(strings.TrimRight(out.String(), " ") + "\n")
	}
	line(func(i int) string { return columns[i].head })
	for _, row := range rows {
		line(func(i int) string { return row[i] })
	}
}

// Markdown gives the shopping list and a summary, the lists to tick off; with
// cuts, the order of the cuts too.
func Markdown(p bench.Plan, r geometry.Rounding, cuts bool) []byte {
	var b bytes.Buffer
	fmt.Fprintf(&b, "# Shopping list: %s\n\n", escape(titles(p)))
	columns, rows := shoppingTable(p, r)
	ruled(&b, columns, rows)
	if t := totalLine(p); t != "" {
		fmt.Fprintf(&b, "\n%s\n", capital(t))
	}
	b.WriteString("\n")
	for _, g := range p.Groups {
		fmt.Fprintf(&b, "- %s\n", escape(summary(g, r)))
		if o := offcuts(g, r); o != "" {
			fmt.Fprintf(&b, "  - worth keeping: %s\n", o)
		}
	}
	for _, n := range remarks(p, r, r.Format) {
		fmt.Fprintf(&b, "- %s\n", escape(n))
	}
	if cuts {
		for _, g := range p.Groups {
			fmt.Fprintf(&b, "\n## Order of the cuts: %s\n\n", escape(label(g, r)))
			columns, rows := cutTable(p, g, r)
			ruled(&b, columns, rows)
		}
		fmt.Fprintf(&b, "\n%s\n", cautions)
	}
	return b.Bytes()
}

func ruled(b *bytes.Buffer, columns []column, rows [][]string) {
	line := func(cells []string) { b.WriteString("| " + strings.Join(cells, " | ") + " |\n") }
	heads, rules := make([]string, len(columns)), make([]string, len(columns))
	for i, c := range columns {
		heads[i], rules[i] = c.head, "---"
		if c.right {
			rules[i] = "--:"
		}
	}
	line(heads)
	line(rules)
	for _, row := range rows {
		out := make([]string, len(row))
		for i, cell := range row {
			out[i] = escape(cell)
		}
		line(out)
	}
}

// escape keeps what a maker wrote from being read as markup.
func escape(s string) string {
	var b strings.Builder
	for _, r := range s {
		if strings.ContainsRune("\\`*_{}[]<>#|", r) {
			b.WriteByte('\\')
		}
		b.WriteRune(r)
	}
	return b.String()
}
