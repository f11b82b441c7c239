package bench

import (
	"fmt"
	"slices"

	"forel/paper/stock"
)

// without tells the group what earlier lots use of its stock.
func (g *group) without(before []Plan) {
	g.gone = map[int]Use{}
	for _, p := range before {
		for _, earlier := range p.Groups {
			for _, u := range earlier.Used {
				was := earlier.Stock[u.Stock]
				k := slices.IndexFunc(g.Stock, func(s stock.Stock) bool { return same(s, was) && s.Owned() == was.Owned() })
				if k >= 0 && was.Owned() {
					g.gone[k] = Use{Sheets: g.gone[k].Sheets + u.Sheets, Length: g.gone[k].Length + u.Length}
				}
			}
		}
	}
}

// rest returns a kind of stock as earlier lots leave it. Of rolls of a length whole ones are
// counted, and the begun one only where it is the last.
func (g *group) rest(k int) stock.Stock {
	s := g.Stock[k]
	if !s.Owned() {
		return s
	}
	if !s.Roll {
		s.Count = max(0, s.Count-g.gone[k].Sheets)
		return s
	}
	left := max(0, s.Height*Length(max(1, s.Count))-g.gone[k].Length)
	if s.Count = int((left + slack) / s.Height); s.Count == 0 {
		s.Count, s.Height = 1, left
	}
	return s
}

// usedUp tells of stock of which earlier lots leave nothing.
func (g *group) usedUp(k int) bool {
	s := g.rest(k)
	return g.Stock[k].Owned() && (s.Count == 0 || s.Roll && s.Height <= slack)
}

// uncounted says that what is lacking of one kind of stock can be bought, where it takes what
// found no place; else nothing.
func (g *group) uncounted(k int, left []int) string {
	s := g.Stock[k]
	if s.Roll {
		s.Height = 0
	}
	if !g.allFit(left, s) {
		return ""
	}
	key := "count"
	if s.Roll && s.Count > 0 {
		key = "count and length"
	} else if s.Roll {
		key = "length"
	}
	return fmt.Sprintf("leave out the %s of %s: the plan then tells how much of it all lots take", key, s.Size())
}
