package bench

import (
	"reflect"
	"slices"

	"forel/paper/money"
)

// purchase works out what to buy and what it weighs and costs.
func (g *group) purchase() {
	for k, s := range g.Stock {
		s = s.OrWeighs(g.weighs)
		u := Use{Stock: k}
		for _, sh := range g.Sheets {
			if sh.Stock != k {
				continue
			}
			u.Area += float64(sh.Width) * float64(sh.Height)
			if sh.Roll {
				if u.Length > 0 {
					u.Length += g.kerf()
				} else {
					u.Length = s.Trim // the end of the roll is cut square
				}
				u.Length += sh.Height
			} else {
				u.Sheets++
			}
		}
		if u.Area == 0 {
			continue
		}
		if s.Roll {
			u.Area = float64(s.Width) * float64(u.Length)
		}
		g.Used = append(g.Used, u)
		grams, source := s.Grams(u.Area, g.Thickness)
		g.Weight.Bought += grams
		g.Weight.Source = source
		for _, sh := range g.Sheets {
			for _, p := range sh.Pieces {
				if sh.Stock == k {
					grams, _ := s.Grams(p.Area, g.Thickness)
					g.Weight.Pieces += grams
				}
			}
		}
	}
}

// Cost returns what a use costs at the price of its stock; known is false where that has
// none.
func (g Group) Cost(u Use) (cost money.Amount, known bool) {
	s := g.Stock[u.Stock]
	if s.Price == nil {
		return cost, false
	}
	return money.ToCent(s.Price.Mul(s.Quantity(u.Sheets, u.Length))), true
}

// Slim returns the plan without its cuts, and its jobs without their cases: what is left
// tells what to buy.
func (p Plan) Slim() Plan {
	jobs, groups := make([]Job, len(p.Jobs)), slices.Clone(p.Groups)
	for i := range groups {
		groups[i].Cuts = nil
	}
	return Plan{jobs, groups}
}

// Total returns what plans that are carried out one after the other come to, to buy by: it
// has no cuts.
func Total(plans []Plan) (out Plan) {
	for _, p := range plans {
		out.Jobs = append(out.Jobs, p.Jobs...)
		for _, g := range p.Groups {
			i := slices.IndexFunc(out.Groups, func(o Group) bool {
				return o.Label() == g.Label() && o.Thickness == g.Thickness && reflect.DeepEqual(o.Stock, g.Stock)
			})
			if i < 0 {
				i = len(out.Groups)
				out.Groups = append(out.Groups, Group{Material: g.Material, Name: g.Name, Thickness: g.Thickness, Stock: g.Stock, Assumed: g.Assumed, Weight: Weight{Source: g.Weight.Source}})
			}
			o := &out.Groups[i]
			o.Sheets = append(o.Sheets, g.Sheets...)
			o.Weight.Bought += g.Weight.Bought
			o.Weight.Pieces += g.Weight.Pieces
			for _, u := range g.Used {
				o.use(u)
			}
		}
	}
	return out
}

// use adds what is needed of one kind of stock.
func (g *Group) use(u Use) {
	i := slices.IndexFunc(g.Used, func(o Use) bool { return o.Stock == u.Stock })
	if i < 0 {
		g.Used = append(g.Used, u)
		return
	}
	o := &g.Used[i]
	o.Sheets, o.Length, o.Area = o.Sheets+u.Sheets, o.Length+u.Length, o.Area+u.Area
}
