package quote

import (
	"bytes"
	"fmt"

	"forel/geometry"
	"forel/geometry/wording"
	"forel/paper/money"
	"forel/paper/quote"
	"forel/render/data"
	"forel/render/document"
)

// title names what is quoted.
func (q Costing) title() string {
	return wording.Cases(len(q.Cases), func(n int) string { return q.Cases[n].Title })
}

// Text returns the costing as text: first what is to be paid, and what is not reckoned in.
func Text(q Costing, r geometry.Rounding) []byte {
	var b bytes.Buffer
	fmt.Fprintf(&b, "Costing: %s\n%s\n", q.title(), q.paid())
	if lacks := q.incomplete(r); lacks != "" {
		b.WriteString(lacks + "\n")
	}
	for _, p := range q.parts(r) {
		fmt.Fprintf(&b, "\n%s\n\n", p.head)
		b.WriteString(document.Table{Columns: p.columns, Rows: p.rows}.Text())
		if p.sum != "" && p.sum != q.paid() { // that stands at the top
			b.WriteString(p.sum + "\n")
		}
	}
	b.WriteString("\n")
	for _, n := range q.notes() {
		b.WriteString(n + "\n")
	}
	return b.Bytes()
}

// CSV returns the costing for a spreadsheet (RFC 4180), a row a line. The rows of material,
// spoilage, work, extra lines, tax and rounding add up to that of what is to be paid.
func CSV(q Costing, r geometry.Rounding) []byte {
	out := [][]string{{"line", "case", "what", "quantity", "unit", "price", "amount", "currency"}}
	add := func(kind, of string, l quote.Line, what string) {
		row := []string{kind, of, what, l.Quantity.String(), l.Unit, "", "", q.Terms.Currency}
		if l.Unit == "" {
			row[3] = ""
		}
		if l.Price != nil {
			row[5] = money.Number(*l.Price)
		}
		if l.Price != nil || l.Unit == "" || l.Unit == "%" {
			row[6] = money.Number(l.Amount)
		}
		out = append(out, row)
	}
	for _, l := range q.Materials {
		add("material", "", l, material(l, r))
	}
	add("spoilage", "", q.Spoilt, "spoilage")
	for _, c := range q.Cases {
		for _, l := range c.Labour {
			add("work", c.Title, l, l.Text)
		}
		for _, l := range c.Extra {
			add("extra", c.Title, l, l.Text)
		}
	}
	if t := q.Terms; t.Tax != nil {
		add("tax", "", quote.Line{Quantity: *t.Tax, Unit: "%", Amount: q.tax()}, t.TaxWord())
	}
	add("rounding", "", quote.Line{Amount: q.Rounding}, "rounding")
	add("to be paid", "", quote.Line{Amount: q.Total}, "to be paid")
	for _, m := range q.Lacks(r) {
		out = append(out, []string{"missing", "", m, "", "", "", "", ""})
	}
	return data.CSV(out)
}

// columnsWith returns columns with a mark of money at the head of the last.
func columnsWith(columns []document.Column, currency string) []document.Column {
	out := append(columns[:len(columns)-1:len(columns)-1], columns[len(columns)-1])
	if currency != "" {
		out[len(out)-1].Head += " " + currency
	}
	return out
}
