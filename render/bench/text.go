package bench

import (
	"bytes"
	"fmt"
	"strings"

	"forel/geometry"
	"forel/geometry/wording"
	"forel/paper/bench"
	"forel/paper/money"
	"forel/render/document"
)

// shoppingTable returns the shopping list.
func shoppingTable(p bench.Plan, r geometry.Rounding) document.Table {
	_, priced, _ := total(p)
	var bought []geometry.Piece
	for _, g := range p.Groups {
		bought = append(bought, geometry.Piece{Material: g.Material})
	}
	runs := geometry.Directions(bought)
	t := document.Table{Size: noteSize, Ticks: []string{""}}
	t.Columns = []document.Column{{Head: "material", Broken: true}, {Head: "buy", Right: true, Bold: true}, {Head: "size", Broken: true}, {Head: runs, Broken: true},
		{Head: "pieces", Right: true}, {Head: "in pieces", Right: true}, {Head: "worth keeping", Right: true}, {Head: "waste", Right: true}, {Head: "weight", Right: true}, {Head: "cost", Right: true}}
	for _, g := range p.Groups {
		for i, u := range g.Used {
			s := g.Stock[u.Stock]
			row := []string{label(g, r), buy(g, u, r), s.Size(), strings.TrimPrefix(s.Along(), runs+" "), "", "", "", "", "", ""}
			if priced {
				row[len(row)-1] = cost(g, u)
			}
			if i == 0 {
				in, kept, waste := shares(g)
				n := 0
				for _, sh := range g.Sheets {
					n += len(sh.Pieces)
				}
				copy(row[4:], []string{fmt.Sprint(n), percent(in), percent(kept), percent(waste), grams(g.Weight.Bought, r)})
			}
			t.Rows = append(t.Rows, row)
		}
	}
	return t
}

// total adds up what has a price; whole tells whether everything has.
func total(p bench.Plan) (sum money.Amount, any, whole bool) {
	whole = true
	for _, g := range p.Groups {
		for _, u := range g.Used {
			c, known := g.Cost(u)
			if !known {
				whole = false
				continue
			}
			sum, any = sum.Add(c), true
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
		return "cost in all: " + money.Number(sum)
	}
	return "cost of what has a price: " + money.Number(sum)
}

// cutTable returns the order of the cuts of a group.
func cutTable(p bench.Plan, g bench.Group, r geometry.Rounding) document.Table {
	t := document.Table{Size: noteSize, Ticks: []string{""}}
	t.Columns = []document.Column{{Head: "cut", Right: true}, {Head: "setting", Right: true}, {Head: "fence", Right: true, Bold: true}, {Head: "exactly " + r.Unit.String(), Right: true},
		{Head: "of"}, {Head: "gives", Broken: true}, {Head: "leaves", Broken: true}}
	for _, c := range g.Cuts {
		setting := "–"
		if c.Setting > 0 {
			setting = fmt.Sprint(c.Setting)
		}
		t.Rows = append(t.Rows, []string{fmt.Sprint(c.Number), setting, r.Pretty(c.Fence), exactly(c.Fence, r), part(c.Part), gives(p, g, c), leaves(p, g, c)})
	}
	return t
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
	sheets := wording.Count(len(g.Sheets), "sheet")
	if len(g.Sheets) > 0 && g.Sheets[0].Roll {
		sheets = wording.Count(len(g.Sheets), "length")
	}
	return fmt.Sprintf("%s: %s, %s at %s of the fence", label(g, r), sheets, wording.Count(len(g.Cuts), "cut"), wording.Count(g.Settings, "setting"))
}

// offcuts tells of what is worth keeping, a line a group.
func offcuts(g bench.Group, r geometry.Rounding) string {
	var out []string
	for _, s := range g.Sheets {
		for _, o := range s.Offcuts {
			if o.Kept() {
				out = append(out, o.Name+": "+r.PrettySize(o.Clean.Width(), o.Clean.Height()))
			}
		}
	}
	return strings.Join(out, "; ")
}

// Text returns the shopping list and a summary in the maker's unit, the lists to tick off where
// they are in Markdown; with cuts, the order of the cuts too.
func Text(p bench.Plan, r geometry.Rounding, cuts bool, f document.Form) []byte {
	var b bytes.Buffer
	fmt.Fprintf(&b, "%sShopping list: %s\n\n", f.Head, f.Says(titles(p)))
	write(&b, p, r, f)
	b.WriteString("\n")
	for _, g := range p.Groups {
		fmt.Fprintf(&b, "%s%s\n", f.Item, f.Says(summary(g, r)))
		if o := offcuts(g, r); o != "" {
			fmt.Fprintf(&b, "%sworth keeping: %s\n", f.Under, o)
		}
	}
	if f.Plain {
		b.WriteString("\n")
	}
	for _, n := range remarks(p, r, r.Format) {
		fmt.Fprintf(&b, "%s%s\n", f.Item, f.Says(n))
	}
	if cuts {
		for _, g := range p.Groups {
			fmt.Fprintf(&b, "\n%sOrder of the cuts: %s\n\n%s", f.Chapter, f.Says(label(g, r)), f.Table(cutTable(p, g, r)))
		}
		fmt.Fprintf(&b, "\n%s\n", cautions)
	}
	return b.Bytes()
}

// Shopping returns one shopping list for plans that are carried out one after the other,
// and then the list of each.
func Shopping(plans []bench.Plan, lists [][]byte, r geometry.Rounding) []byte {
	if len(lists) == 1 {
		return lists[0]
	}
	var b bytes.Buffer
	all := bench.Total(plans)
	fmt.Fprintf(&b, "Shopping list: %s, cut in %d lots, each from sheets of its own\n\n", titles(all), len(plans))
	write(&b, all, r, document.Plain)
	for i, list := range lists {
		fmt.Fprintf(&b, "\nLot %d. %s", i+1, list)
	}
	return b.Bytes()
}

func write(b *bytes.Buffer, p bench.Plan, r geometry.Rounding, f document.Form) {
	b.WriteString(f.Table(shoppingTable(p, r)))
	t := totalLine(p)
	if !f.Plain {
		t = wording.Capital(t)
	}
	if t != "" {
		fmt.Fprintf(b, "\n%s\n", t)
	}
}
