// Package order writes what is to be ordered, a block for each supplier: as text, as a
// table for a spreadsheet, and as a page to print or send.
package order

import (
	"bytes"
	"fmt"
	"strings"

	"forel/geometry"
	"forel/geometry/wording"
	"forel/paper/money"
	"forel/paper/order"
	"forel/render"
	"forel/render/data"
	"forel/render/document"
)

// Options say how lengths are shown and in what money prices are.
type Options struct {
	document.Options
	Currency string // may be empty
}

// columns are those of every block.
var columns = []document.Column{{Head: "order", Right: true, Bold: true}, {Head: "what", Broken: true}, {Head: "size", Broken: true}, {Head: "thickness"},
	{Head: "weight"}, {Head: "grain", Broken: true}, {Head: "price", Right: true}, {Head: "cost", Right: true}}

// rows returns a row for each line of a block.
func rows(b order.Block, r geometry.Rounding) (out [][]string) {
	for _, l := range b.Lines {
		row := []string{quantity(l), name(l), "", "", "", "", "", ""}
		if l.Material == "" {
			if l.Pack.IsPositive() {
				row[2] = "of " + grams(l.Pack)
			}
		} else {
			row[2], row[3], row[5] = l.Stock.Size(), r.Thickness(l.Thickness), strings.TrimPrefix(l.Stock.Along(), "grain ")
		}
		if l.Stock.Grammage > 0 {
			row[4] = wording.Decimal(l.Stock.Grammage, 1) + " g/m²"
		}
		if l.Price != nil {
			cost, _ := l.Cost()
			row[6], row[7] = money.Number(*l.Price)+per(l), money.Number(cost)
		} else {
			row[6], row[7] = "–", "–"
		}
		out = append(out, row)
	}
	return out
}

// per says what a price is for.
func per(l order.Line) string {
	if l.Unit == order.Gram {
		return " a kg"
	}
	return " a " + l.Unit
}

// name says what is ordered: by the supplier's name, with the maker's own behind it.
func name(l order.Line) string {
	said := wording.OneLine(l.Name)
	if l.Own != "" {
		said += " (" + wording.OneLine(l.Own) + ")"
	}
	return said
}

// quantity says how much is ordered: "3 sheets", "1.4 m", "120 g".
func quantity(l order.Line) string {
	if l.Unit == order.Gram {
		return grams(l.Quantity)
	}
	return Quantity(l.Quantity, l.Unit)
}

// Quantity writes a number of what things are sold by: "0.374 sheets", "1.4 m".
func Quantity(n money.Amount, unit string) string {
	if (unit == order.Sheet || unit == order.Pack) && !n.Equal(money.Of(1)) {
		unit += "s"
	}
	return n.String() + " " + unit
}

// grams writes a weight.
func grams(g money.Amount) string {
	if g.GreaterThanOrEqual(money.Of(1000)) {
		return g.Shift(-3).String() + " kg"
	}
	return g.String() + " g"
}

// heading names a block.
func heading(b order.Block) string {
	if b.Supplier == "" {
		return "Supplier not given"
	}
	return wording.OneLine(b.Supplier)
}

// sum says what lines come to; empty where none has a price.
func sum(what string, lines []order.Line, currency string) string {
	total, any, whole := order.Total(lines)
	switch {
	case !any:
		return ""
	case whole:
		return what + ": " + money.In(total, currency)
	}
	return what + ", of what has a price: " + money.In(total, currency)
}

// titles names what the order is for.
func titles(o order.Order) string {
	return wording.Cases(len(o.Jobs), func(n int) string { return o.Jobs[n] })
}

// notes are what is to be said of an order, a sentence each, without capital and full stop.
func notes(o order.Order) (out []string) {
	for _, w := range o.Owned {
		unit := order.Sheet
		if w.Stock.Roll {
			unit = w.Stock.Unit()
		}
		out = append(out, fmt.Sprintf("not ordered, since it is there: %s of %s, %s", Quantity(w.Takes, unit), wording.OneLine(w.Name), w.Stock.Size()))
	}
	if n := o.Terms.SparePieces; n > 0 {
		out = append(out, fmt.Sprintf("reckoned with %s of each kind", wording.Count(n, "spare piece")))
	}
	if o.Terms.Spare.IsPositive() {
		out = append(out, fmt.Sprintf("reckoned with %s %% more than is used up, then rounded up to what is sold", o.Terms.Spare))
	}
	var usual []string
	rolls := map[string][]string{} // by the unit they are sold by
	for _, l := range o.Lines() {
		if l.Stock.Source != "" {
			usual = append(usual, fmt.Sprintf("%s on %s (%s)", wording.OneLine(l.Name), l.Stock.Size(), l.Stock.Source))
		}
		if l.Stock.Roll && l.Stock.SoldBy == 0 {
			rolls[l.Unit] = append(rolls[l.Unit], wording.OneLine(l.Name))
		}
	}
	if len(usual) > 0 {
		out = append(out, "without [[stock]] in the job, reckoned with usual sizes: "+strings.Join(usual, "; "))
	}
	for _, step := range []struct{ unit, words string }{{"m", "100 mm"}, {"yd", "1/8 yd"}} {
		if names := rolls[step.unit]; names != nil {
			out = append(out, fmt.Sprintf("lengths of %s are rounded up to %s (common practice, no source); stock.sold_by gives your shop's own step", wording.And(names), step.words))
		}
	}
	if o.Glued > 0 {
		out = append(out, glue(o))
	}
	return out
}

// care stands where something is bought that needs it.
var care = wording.Careful(wording.Adhesive)

// glue says how the adhesive was reckoned.
func glue(o order.Order) string {
	a := o.Adhesive
	source := "a usual figure (common practice, no source; data sheets of white glues for wood ask for 120 to 200 g/m², from memory): your maker's own goes into adhesive.coverage"
	if a.Typed() {
		source = "your own figure"
	}
	said := fmt.Sprintf("adhesive is reckoned for %s m² of cloth and paper at %s g/m², %s; board joints take little", wording.Decimal(order.SquareMetres(o.Glued), 2), a.Covers(), source)
	if a.AtHand.IsPositive() {
		said += fmt.Sprintf("; %s are at hand", grams(a.AtHand))
	}
	return said
}

// Text returns the order as text: first what it costs in all.
func Text(o order.Order, at Options) []byte {
	var b bytes.Buffer
	fmt.Fprintf(&b, "Order list: %s\n", titles(o))
	if s := sum("cost in all", o.Lines(), at.Currency); s != "" && len(o.Blocks) > 1 {
		b.WriteString(s + "\n")
	}
	for _, k := range o.Blocks {
		fmt.Fprintf(&b, "\n%s\n\n", heading(k))
		b.WriteString(document.Table{Columns: columns, Rows: rows(k, at.Round)}.Text())
		if s := sum("sum", k.Lines, at.Currency); s != "" {
			b.WriteString(s + "\n")
		}
	}
	if len(o.Blocks) == 0 {
		b.WriteString("\nNothing: all of it is there.\n")
	}
	b.WriteString("\n")
	for _, n := range notes(o) {
		b.WriteString(n + "\n")
	}
	fmt.Fprintf(&b, "\n%s\n", care)
	return b.Bytes()
}

// CSV returns the order for a spreadsheet (RFC 4180): lengths in exact millimetres, a row
// for each line.
func CSV(o order.Order, at Options) []byte {
	out := [][]string{{"supplier", "ordered_as", "own_name", "material", "quantity", "unit", "width_mm", "height_mm", "thickness_mm", "grammage_g_m2", "grain", "pack_g", "price", "cost", "currency"}}
	mm := func(l geometry.Length) string {
		if l == 0 {
			return ""
		}
		return wording.Decimal(data.MM(l).Value(), 3)
	}
	for _, b := range o.Blocks {
		for _, l := range b.Lines {
			row := []string{b.Supplier, l.Name, l.Own, string(l.Material), l.Quantity.String(), l.Unit, mm(l.Stock.Width), mm(l.Stock.Height), mm(l.Thickness), "", string(l.Stock.Grain), "", "", "", ""}
			if l.Material == "" {
				row[3] = "adhesive"
			}
			if l.Stock.Grammage > 0 {
				row[9] = wording.Decimal(l.Stock.Grammage, 3)
			}
			if l.Pack.IsPositive() {
				row[11] = l.Pack.String()
			}
			if cost, known := l.Cost(); known {
				row[12], row[13], row[14] = money.Number(*l.Price), money.Number(cost), at.Currency
			}
			out = append(out, row)
		}
	}
	return data.CSV(out)
}

// Document draws the order, to print or to send.
func Document(o order.Order, at Options) *document.Document {
	d := &document.Document{Options: at.Options, Title: "Order list", Running: titles(o), Foot: "Order list"}
	d.Add(d.Opening(titles(o), "Order list"))
	for _, k := range o.Blocks {
		table := d.Table(heading(k), document.Table{Columns: columns, Rows: rows(k, at.Round), Size: render.NoteSize, Ticks: []string{""}, Full: true})
		table[0].Bookmark, table[0].Above = heading(k), 5
		d.Add(table...)
		if s := sum("sum", k.Lines, at.Currency); s != "" {
			d.Say(wording.Capital(s), render.BodySize, true, 1)
		}
	}
	if len(o.Blocks) == 0 {
		d.Say("Nothing: all of it is there.", render.BodySize, false, 3)
	}
	if s := sum("cost in all", o.Lines(), at.Currency); s != "" && len(o.Blocks) > 1 {
		d.Say(wording.Capital(s), render.HeadSize, true, 4)
	}
	d.Notes(notes(o)...)
	d.Say(care, render.NoteSize, true, 3)
	return d
}
