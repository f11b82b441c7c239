// Package quote writes what a case costs: a page for the client, without what is the
// maker's own business; a costing for the maker, every line of it; the same as text and as
// a table for a spreadsheet.
package quote

import (
	"fmt"
	"slices"

	"forel/geometry"
	"forel/geometry/wording"
	"forel/geometry/work"
	"forel/paper/money"
	"forel/paper/quote"
	"forel/render/document"
	"forel/render/order"
)

// Length is a distance in millimetres.
type Length = geometry.Length

// part is a part of the costing: a table with what it comes to.
type part struct {
	head    string
	columns []document.Column
	rows    [][]string
	sum     string // below it; may be empty
}

// paid is the head of the last part.
const paid = "What is to be paid"

// The columns of the costing.
var (
	lineColumns = []document.Column{{Head: "what", Broken: true}, {Head: "quantity", Right: true}, {Head: "price", Right: true, Broken: true}, {Head: "amount", Right: true, Bold: true}}
	caseColumns = []document.Column{{Head: "case", Broken: true}, {Head: "material", Right: true}, {Head: "spoilage", Right: true}, {Head: "work", Right: true}, {Head: "together", Right: true, Bold: true},
		{Head: "alone", Right: true}, {Head: "less", Right: true}}
	sumColumns = []document.Column{{Head: "sum", Broken: true}, {Head: "amount", Right: true, Bold: true}}
)

// Costing is a quote with what each case comes to when it is made alone; none for one case.
type Costing struct {
	quote.Quote
	Alone []money.Amount
}

// parts returns the costing.
func (q Costing) parts(r geometry.Rounding) (all []part) {
	rows := [][]string{}
	for _, l := range q.Materials {
		rows = append(rows, []string{material(l, r), quantity(l), price(l), amount(l)})
	}
	if q.Terms.Spoilage.IsPositive() {
		rows = append(rows, []string{"spoilage", quantity(q.Spoilt), "", money.Number(q.Spoilt.Amount)})
	}
	sum := quote.Sum(q.Materials).Add(q.Spoilt.Amount)
	all = append(all, part{"Material", lineColumns, rows, "material: " + q.in(sum)})
	for _, c := range q.Cases {
		head := "Work"
		if len(q.Cases) > 1 {
			head += ": " + wording.OneLine(c.Title)
		}
		rows := [][]string{}
		for _, l := range c.Labour {
			rows = append(rows, []string{l.Text, quantity(l), price(l), amount(l)})
		}
		all = append(all, part{head, lineColumns, rows, "work: " + q.in(c.Work)})
	}
	if len(q.Cases) > 1 {
		all = append(all, q.sideBySide())
	}
	return append(all, part{paid, sumColumns, q.sums(true), q.paid()})
}

// sideBySide returns what each case costs, made with the others and alone.
func (q Costing) sideBySide() part {
	out := part{head: "The cases side by side", columns: caseColumns}
	var together, alone money.Amount
	for i, c := range q.Cases {
		row := []string{wording.OneLine(c.Title), money.Number(c.Material), money.Number(c.Spoilage), money.Number(c.Work), money.Number(c.Price), "", ""}
		together = together.Add(c.Price)
		if i < len(q.Alone) {
			alone = alone.Add(q.Alone[i])
			row[5], row[6] = money.Number(q.Alone[i]), money.Number(q.Alone[i].Sub(c.Price))
		}
		out.rows = append(out.rows, row)
	}
	if q.Alone != nil {
		out.sum = fmt.Sprintf("together %s, each alone %s: %s less", q.in(together), q.in(alone), q.in(alone.Sub(together)))
		if alone.LessThan(together) {
			out.sum = fmt.Sprintf("together %s, each alone %s", q.in(together), q.in(alone))
		}
	}
	return out
}

// sums returns what is added up to what is to be paid. Inside tells what cases are made of,
// which is the maker's business.
func (q Costing) sums(inside bool) (rows [][]string) {
	add := func(what string, a money.Amount) { rows = append(rows, []string{what, money.Number(a)}) }
	lines := len(q.Cases)
	if inside && len(q.Cases) == 1 {
		c := q.Cases[0]
		add("material", c.Material)
		if q.Terms.Spoilage.IsPositive() {
			add("spoilage", c.Spoilage)
		}
		add("work", c.Work)
	} else {
		for _, c := range q.Cases {
			add(wording.OneLine(c.Title), c.Price)
		}
	}
	for _, c := range q.Cases {
		for _, e := range c.Extra {
			lines++
			what := wording.OneLine(e.Text)
			if len(q.Cases) > 1 {
				what += ", " + wording.OneLine(c.Title)
			}
			add(what, e.Amount)
		}
	}
	if t := q.Terms; t.Tax != nil {
		if inside || lines > 1 {
			add("price before "+t.TaxWord(), q.Net)
		}
		add(fmt.Sprintf("%s, %s %%", t.TaxWord(), t.Tax), q.tax())
	}
	if !q.Rounding.IsZero() {
		add("rounding", q.Rounding)
	}
	return append(rows, []string{"to be paid", money.Number(q.Total)})
}

// paid says what is to be paid.
func (q Costing) paid() string { return "to be paid: " + q.in(q.Total) }

func (q Costing) tax() money.Amount { return q.Quote.Tax }

// in writes an amount in the maker's money.
func (q Costing) in(a money.Amount) string { return money.In(a, wording.OneLine(q.Terms.Currency)) }

// material names what a line of material is: "grey board 2 mm, 700 × 1000 mm".
func material(l quote.Line, r geometry.Rounding) string {
	if l.Group == nil {
		return wording.OneLine(l.Text)
	}
	return wording.OfThickness(wording.OneLine(l.Text), r.Thickness(l.Group.Thickness)) + ", " + l.Group.Stock[l.Use.Stock].Size()
}

// quantity writes how much of it: "0.374 sheets", "35 min", "8 %".
func quantity(l quote.Line) string {
	return order.Quantity(l.Quantity, l.Unit)
}

// price writes what one of it costs: "4.80", of work "34.00 an hour".
func price(l quote.Line) string {
	switch {
	case l.Price == nil:
		return "–"
	case l.IsWork():
		return money.Number(*l.Price) + " an hour"
	}
	return money.Number(*l.Price) + " a " + l.Unit
}

// amount writes what it comes to.
func amount(l quote.Line) string {
	if l.Price == nil {
		return "–"
	}
	return money.Number(l.Amount)
}

// incomplete says what a quote lacks; empty where it is complete.
func (q Costing) incomplete(r geometry.Rounding) string {
	if len(q.Missing) == 0 {
		return ""
	}
	return "this quote is not complete; it lacks " + wording.And(q.Lacks(r))
}

// Lacks names what has no price.
func (q Costing) Lacks(r geometry.Rounding) (out []string) {
	for _, l := range q.Missing {
		what := "the price of " + wording.OneLine(l.Text)
		switch {
		case l.IsWork():
			what = "what an hour of work costs"
		case l.Group != nil:
			what = wording.OfThickness(what, r.Thickness(l.Group.Thickness))
		}
		if !slices.Contains(out, what) {
			out = append(out, what)
		}
	}
	return out
}

// ofOffcuts tells how offcuts are reckoned that the plan uses.
func (q Costing) ofOffcuts() []string {
	var free []string
	some := false
	for _, l := range q.Materials {
		if l.Group == nil {
			continue
		}
		if n := l.Group.Stock[l.Use.Stock].Offcut; n > 0 {
			some = true
			if l.Price != nil && l.Price.IsZero() {
				free = append(free, fmt.Sprint(n))
			}
		}
	}
	switch {
	case !some:
		return nil
	case q.Terms.Material == quote.ByWhole:
		return []string{"offcuts are counted at nothing: their sheets were reckoned whole"}
	case free == nil:
		return []string{"an offcut is reckoned at its part of the price of its sheet"}
	case len(free) == 1:
		return []string{"offcut " + free[0] + " is counted at nothing: give a price in its [[offcut]], or to the sheets of its material, in the shop file"}
	}
	return []string{"offcuts " + wording.And(free) + " are counted at nothing: give a price in their [[offcut]], or to the sheets of their material, in the shop file"}
}

// notes are what is to be said of a costing, a sentence each, without capital and full
// stop.
func (q Costing) notes() (out []string) {
	if q.Terms.Material == quote.ByWhole {
		out = append(out, "material is reckoned as it is sold: whole sheets, lengths as shops cut them, whole packs")
	} else {
		out = append(out, "material is reckoned by the share that is used up, pieces and waste; offcuts worth keeping stay yours")
	}
	out = append(out, q.ofOffcuts()...)
	out = append(out, "stock that is there already is reckoned at its price too", "drying is not reckoned as work")
	if len(q.Cases) > 1 {
		out = append(out, "the cost of shared sheets is parted by the area of the pieces")
	}
	out = append(out, "each line is rounded to 0.01, halves up, then lines are added up; what is to be paid is rounded last")
	if q.Terms.Tax != nil {
		out = append(out, "tax is only arithmetic here, at the rate that was typed in: whether it is owed, and how much, is for local rules and those who know them")
	}
	return append(out, wording.Lower(trimmed(work.TimesNote)))
}

// trimmed leaves out the full stop at the end.
func trimmed(s string) string {
	if n := len(s); n > 0 && s[n-1] == '.' {
		return s[:n-1]
	}
	return s
}
