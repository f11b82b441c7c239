package quote

import (
	"cmp"
	"fmt"
	"slices"

	"forel/geometry/work"
	"forel/paper/bench"
	"forel/paper/money"
	"forel/paper/order"
)

// Line is one line of a reckoning. Its amount is in whole cents.
type Line struct {
	Text     string
	Quantity money.Amount
	Unit     string        // that Quantity is in: "sheet", "m", "yd", "kg", "pack", "min", "%"
	Price    *money.Amount // of one, of work an hour; nil: not known, and the amount is zero
	Amount   money.Amount
	Group    *bench.Group // of material: what it is; nil: adhesive, or no material
	Use      bench.Use
}

// minute is what work is counted in.
const minute = "min"

// IsWork tells whether the line is of work.
func (l Line) IsWork() bool { return l.Unit == minute }

// Case is one case of a quote.
type Case struct {
	Title    string
	Material money.Amount // its part of the material
	Spoilage money.Amount // its part of what is spoilt
	Labour   []Line       // a line a step
	Work     money.Amount // what they come to
	Price    money.Amount // material, spoilage and work
	Extra    []Line       // the maker's own
}

// Quote is what cases cost that are made together.
type Quote struct {
	Terms     Terms
	Plan      bench.Plan
	Materials []Line
	Spoilt    Line
	Cases     []Case
	Net       money.Amount // all cases with their extra lines
	Tax       money.Amount
	Rounding  money.Amount // from Net and Tax to Total
	Total     money.Amount // what is to be paid
	Missing   []Line       // what has no price: without it the quote is not complete
}

// Of reckons what the cases of a plan cost, which was laid out with bench.Options.Buy. Each
// has its extra lines, and a time for its tasks.
func Of(p bench.Plan, t Terms, glue order.Adhesive, extra [][]Extra, times []work.Times) Quote {
	q := Quote{Terms: t, Plan: p}
	q.Cases = make([]Case, len(p.Jobs))
	for i := range p.Groups {
		g := &p.Groups[i]
		lines, weights := q.materials(g)
		for n, l := range lines {
			q.add(l, weights[n])
		}
	}
	if l, weights := q.glue(p, glue); l.Quantity.IsPositive() {
		q.add(l, weights)
	}
	q.spoil()
	for i, j := range p.Jobs {
		c := &q.Cases[i]
		c.Title = j.Title()
		q.labour(c, j, times[i])
		c.Price = c.Material.Add(c.Spoilage).Add(c.Work)
		q.Net = q.Net.Add(c.Price)
		for _, e := range extra[i] {
			l := Line{Text: e.Text, Quantity: money.Of(1), Amount: money.ToCent(e.Amount)}
			c.Extra = append(c.Extra, l)
			q.Net = q.Net.Add(l.Amount)
		}
	}
	if t.Tax != nil {
		q.Tax = money.ToCent(money.Percent(q.Net, *t.Tax))
	}
	gross := q.Net.Add(q.Tax)
	q.Total = money.ToStep(gross, t.RoundTo)
	q.Rounding = q.Total.Sub(gross)
	return q
}

// add adds a line of material, parted among the cases by their weights.
func (q *Quote) add(l Line, weights []money.Amount) {
	q.Materials = append(q.Materials, l)
	if l.Price == nil {
		q.Missing = append(q.Missing, l)
	}
	for i, part := range money.Share(l.Amount, weights) {
		q.Cases[i].Material = q.Cases[i].Material.Add(part)
	}
}

// materials returns the lines of a group, with the area of each that is each case's. What
// is there and what is bought of one stock are one line.
func (q *Quote) materials(g *bench.Group) (lines []Line, weights [][]money.Amount) {
	for _, u := range g.Used {
		l, w := q.material(g, u), areas(q.Plan, *g, u)
		i := slices.IndexFunc(lines, func(o Line) bool {
			a, b := g.Stock[o.Use.Stock], g.Stock[u.Stock]
			return a.Size() == b.Size() && a.Name == b.Name && (a.Price == nil && b.Price == nil || a.Price != nil && b.Price != nil && a.Price.Equal(*b.Price))
		})
		if i < 0 {
			lines, weights = append(lines, l), append(weights, w)
			continue
		}
		lines[i].Quantity = lines[i].Quantity.Add(l.Quantity)
		lines[i] = lines[i].priced()
		for n := range w {
			weights[i][n] = weights[i][n].Add(w[n])
		}
	}
	return lines, weights
}

// material returns the line of one stock: what of it is used up, or all that is bought.
func (q *Quote) material(g *bench.Group, u bench.Use) Line {
	s := g.Stock[u.Stock]
	l := Line{Text: order.Called(*g), Unit: order.Sheet, Price: s.Price, Group: g, Use: u}
	if s.Roll {
		l.Unit = s.Unit()
	}
	if q.Terms.Material == ByWhole && s.Offcut > 0 { // its sheet was reckoned whole
		nothing := money.Of(0)
		l.Price = &nothing
	}
	if q.Terms.Material == ByWhole {
		l.Quantity = s.Sold(u.Sheets, u.Length)
	} else {
		l.Quantity = s.Quantity(u.Sheets, u.Length).Mul(money.Thousandths(g.UsedUp(u))).Round(3)
	}
	return l.priced()
}

// priced returns a line with what it comes to.
func (l Line) priced() Line {
	if l.Price != nil {
		l.Amount = money.ToCent(l.Price.Mul(l.Quantity))
	}
	return l
}

// areas returns how much of the pieces that are cut from a stock is each case's.
func areas(p bench.Plan, g bench.Group, u bench.Use) []money.Amount {
	return weights(len(p.Jobs), []bench.Group{g}, func(_ bench.Group, s bench.Sheet, q bench.Placed) float64 {
		if s.Stock != u.Stock {
			return 0
		}
		return float64(q.Width) * float64(q.Height)
	})
}

// weights adds up something of all placed pieces of groups, for each case.
func weights(cases int, groups []bench.Group, of func(bench.Group, bench.Sheet, bench.Placed) float64) []money.Amount {
	sums := make([]float64, cases)
	for _, g := range groups {
		for _, s := range g.Sheets {
			for _, q := range s.Pieces {
				sums[q.Job] += of(g, s, q)
			}
		}
	}
	out := make([]money.Amount, len(sums))
	for i, s := range sums {
		out[i] = money.Thousandths(s)
	}
	return out
}

// glue returns the line of the adhesive, and how much of it each case takes.
func (q *Quote) glue(p bench.Plan, a order.Adhesive) (Line, []money.Amount) {
	l := Line{Text: cmp.Or(a.Name, "adhesive"), Price: a.Price, Unit: "kg"}
	grams := a.Needs(order.Glued(p))
	l.Quantity = grams.Shift(-3)
	if a.Pack.IsPositive() {
		l.Unit, l.Quantity = order.Pack, grams.DivRound(a.Pack, 3)
		if q.Terms.Material == ByWhole {
			l.Quantity = money.UpToStep(grams, a.Pack).DivRound(a.Pack, 3)
		}
	}
	return l.priced(), weights(len(p.Jobs), p.Groups, func(g bench.Group, _ bench.Sheet, q bench.Placed) float64 { return order.GluedOf(g, q) })
}

// spoil reckons what is spoilt of the material.
func (q *Quote) spoil() {
	var sum money.Amount
	parts := make([]money.Amount, len(q.Cases))
	for i, c := range q.Cases {
		sum, parts[i] = sum.Add(c.Material), c.Material
	}
	rate := q.Terms.Spoilage
	q.Spoilt = Line{Text: "spoilage", Quantity: rate, Unit: "%", Amount: money.ToCent(money.Percent(sum, rate))}
	for i, part := range money.Share(q.Spoilt.Amount, parts) {
		q.Cases[i].Spoilage = part
	}
}

// labour reckons the work of a case, step by step. Drying is not paid for.
func (q *Quote) labour(c *Case, j bench.Job, times work.Times) {
	const minutes = 60
	for n, s := range j.Plan.Steps {
		took := times.Of(s.Spells...)
		if took == 0 {
			continue
		}
		l := Line{Text: fmt.Sprintf("%d. %s", n+1, s.Title), Quantity: money.Thousandths(took.Minutes()), Unit: minute, Price: q.Terms.Hour}
		if q.Terms.Hour != nil {
			l.Amount = q.Terms.Hour.Mul(l.Quantity).DivRound(money.Of(minutes), 2)
		} else if !slices.ContainsFunc(q.Missing, Line.IsWork) {
			q.Missing = append(q.Missing, l)
		}
		c.Labour, c.Work = append(c.Labour, l), c.Work.Add(l.Amount)
	}
}

// Sum adds up lines.
func Sum(lines []Line) (sum money.Amount) {
	for _, l := range lines {
		sum = sum.Add(l.Amount)
	}
	return sum
}
