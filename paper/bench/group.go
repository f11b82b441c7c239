package bench

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/plan"
	"forel/paper/stock"
)

// order is that in which materials are cut.
var order = []geometry.Material{geometry.Board, geometry.Card, geometry.Corrugated, geometry.Lining, geometry.Cloth, geometry.Paper}

// group is a Group being made, with the pieces to be placed.
type group struct {
	Group
	jobs    []Job // all of the plan
	items   []item
	weighs  float64       // g/m² as a job tells of it; 0: none does
	unit    geometry.Unit // of the first job
	from    []int         // jobs
	lacking bool          // a piece is larger than every sheet
	buys    bool          // what there is is used up before more is bought
	lot     bool          // others are cut from the same stock
	gone    map[int]Use   // what earlier lots use, by index into Stock
}

// item is one piece to be placed.
type item struct {
	job      int
	piece    geometry.Piece
	w, h     Length
	together string  // the key of those that come off one strip
	exact    [2]bool // its width, its height decide the fit or must be the same as in other pieces
}

// round returns the least size for cutting that is trimmed later: 5 mm or a quarter of an
// inch is set fast on any fence (common practice, no source).
func round(u geometry.Unit) geometry.Rounding {
	if u == geometry.IN {
		return geometry.Rounding{Step: geometry.Inch / 4, Unit: u}
	}
	return geometry.Rounding{Step: 5, Unit: u}
}

// trimmed tells whether a piece is cut larger first: it is trimmed flush with what it goes
// on, or, as cloth, cut to its pattern.
func trimmed(p geometry.Piece) bool { return p.Trimmed || p.Material.Like() == geometry.Cloth }

// fits tells whether a stock takes the piece.
func (it item) fits(s stock.Stock) bool { return s.Takes(it.w, it.h, it.piece.Grain) }

// loose returns pieces that need not come off one strip.
func loose(items []item) []item {
	items = slices.Clone(items)
	for i := range items {
		items[i].together = ""
	}
	return items
}

// allFit tells whether a stock takes each of some items.
func (g *group) allFit(which []int, s stock.Stock) bool {
	return !slices.ContainsFunc(which, func(i int) bool { return !g.items[i].fits(s) })
}

// name names a piece for messages, with its job.
func (g *group) name(it item) string {
	return fmt.Sprintf("%s of %s", it.piece.Name, g.jobs[it.job].Title())
}

// gather sorts the pieces of all jobs by what they are cut from. What is trimmed later may
// be rounded up.
func gather(jobs []Job, up bool) []*group {
	type key struct {
		m    geometry.Material
		name string
		t    int64 // micrometres
	}
	byKey := map[key]*group{}
	var groups []*group
	for n, j := range jobs {
		for _, p := range j.Plan.Pieces {
			t := j.Plan.Thickness(p.Material)
			k := key{p.Material, j.Names[p.Material], int64(t.Round(0.001)*1000 + 0.5)}
			if k.name != "" { // of one name it is one stuff, whatever it is used for
				k.m = ""
			}
			g := byKey[k]
			if g == nil {
				g = &group{Group: Group{Material: p.Material, Name: k.name, Thickness: t}, jobs: jobs, unit: j.Unit}
				byKey[k] = g
				groups = append(groups, g)
			}
			if g.weighs == 0 {
				g.weighs = j.Plan.Grammage(p.Material)
			}
			if !slices.Contains(g.from, n) {
				g.from = append(g.from, n)
			}
			w, h := p.Rough()
			if up && trimmed(p) {
				r := round(j.Unit)
				w, h = ceil(w, r), ceil(h, r)
			}
			for range p.Count {
				g.items = append(g.items, item{job: n, piece: p, w: w, h: h, together: together(j.Plan, n, p), exact: exact(j.Plan, p)})
			}
		}
	}
	slices.SortStableFunc(groups, func(a, b *group) int {
		return cmp.Or(cmp.Compare(slices.Index(order, a.Material.Like()), slices.Index(order, b.Material.Like())),
			cmp.Compare(a.Thickness, b.Thickness), strings.Compare(a.Name, b.Name))
	})
	return groups
}

// together returns the key of the pieces of one job that come off one strip. What is
// only of one length is cut at one setting of the fence; a strip of its own would
// take more sheets.
func together(p plan.Plan, job int, q geometry.Piece) string {
	for i, e := range p.Equals {
		if width, height := e.Has(q.Name); e.Strip && (width || height) {
			return fmt.Sprintf("strip %d of job %d", i+1, job+1)
		}
	}
	return ""
}

// exact tells which sides of a piece decide the fit or must be the same as those of others.
func exact(p plan.Plan, q geometry.Piece) (sides [2]bool) {
	for _, m := range p.Materials {
		if m.Of == q.Material && m.Fitted && !trimmed(q) {
			return [2]bool{true, true}
		}
	}
	for _, e := range p.Equals {
		width, height := e.Has(q.Name)
		sides[0], sides[1] = sides[0] || width, sides[1] || height
	}
	return sides
}

// same tells whether two jobs speak of one pile.
func same(a, b stock.Stock) bool {
	return a.Pile == b.Pile && a.Offcut == b.Offcut && a.Name == b.Name && a.Material == b.Material && a.Roll == b.Roll && a.Grain == b.Grain &&
		a.Width.Near(b.Width) && a.Height.Near(b.Height) && a.Thickness.Near(b.Thickness)
}

// equal tells whether they say the same of it.
func equal(a, b stock.Stock) bool {
	return same(a, b) && a.Count == b.Count && a.Per == b.Per && a.Trim.Near(b.Trim) && a.Kerf.Near(b.Kerf) && a.Density == b.Density &&
		a.Grammage == b.Grammage && (a.Price == nil) == (b.Price == nil) && (a.Price == nil || a.Price.Equal(*b.Price)) &&
		a.SoldBy.Near(b.SoldBy) && a.Supplier == b.Supplier && a.OrderedAs == b.OrderedAs
}

// supply gives every group its stock: what its own jobs have of the material,
// one pile once; else what any job has; else the first usual size that takes
// all its pieces.
func supply(groups []*group, jobs []Job, before []Plan) job.Problems {
	var bad job.Problems
	counted := map[string]*group{} // limited stock is in one group alone
	pile := func(s stock.Stock) string {
		return fmt.Sprintf("%s %d %s %s %v %v %v", s.Pile, s.Offcut, s.Material, s.Name, s.Width, s.Height, s.Thickness)
	}
	for _, p := range before {
		for _, g := range p.Groups {
			for _, u := range g.Used {
				counted[pile(g.Stock[u.Stock])] = &group{Group: g, unit: p.Jobs[0].Unit}
			}
		}
	}
	for _, g := range groups {
		from := g.from
		if !slices.ContainsFunc(from, func(n int) bool { return slices.ContainsFunc(jobs[n].Stock, g.takes) }) {
			from = numbers(len(jobs))
		}
		for _, n := range from {
			for _, s := range jobs[n].Stock {
				if !g.takes(s) {
					continue
				}
				i := slices.IndexFunc(g.Stock, func(have stock.Stock) bool { return same(have, s) })
				switch {
				case i < 0:
					g.Stock = append(g.Stock, s)
				case !equal(g.Stock[i], s):
					bad = append(bad, job.Problem{Key: s.At.Key, At: s.At, Reason: fmt.Sprintf("%s: stock %s is not the same in every job", jobs[n].Title(), s.Size()),
						Fix: "leave it out there, since the stock of one job serves all, or give it a name of its own"})
				}
			}
		}
		for _, s := range g.Stock {
			k := pile(s)
			if first := counted[k]; s.Owned() && first != nil && !(first.Label() == g.Label() && first.Thickness.Near(g.Thickness)) {
				fix := "leave its count out, or give each its own [[stock]], told apart by thickness or by name"
				switch {
				case s.Offcut > 0:
					fix = "give its thickness"
				case s.Count == 0:
					fix = "leave its length out, or give each its own [[stock]], told apart by thickness or by name"
				}
				bad = append(bad, job.Problem{Key: s.At.Key, At: s.At, Reason: fmt.Sprintf("%s: a counted stock serves both %s and %s", s.Size(), first.describe(), g.describe()), Fix: fix})
			}
			counted[k] = g
		}
		if g.onlyOffcuts() { // or nothing
			g.Assumed = true
			g.Stock = append(g.Stock, g.usual())
		}
	}
	return bad
}

// buy lets the group take more of what there is too little of: where all its stock is
// owned, the same is bought.
func (g *group) buy() {
	g.buys = true
	if slices.ContainsFunc(g.Stock, func(s stock.Stock) bool { return !s.Owned() }) {
		return
	}
	for _, s := range slices.Clone(g.Stock) {
		if s.Offcut > 0 {
			continue // there is one of it
		}
		if s.Count, s.Pile = 0, ""; s.Roll {
			s.Height = 0
		}
		if !slices.ContainsFunc(g.Stock, func(have stock.Stock) bool { return equal(have, s) }) {
			g.Stock = append(g.Stock, s)
		}
	}
}

// takes tells whether a stock is of the group's material. A pile of the maker's is of what it
// is called, and of nothing that has no name.
func (g *group) takes(s stock.Stock) bool {
	named := s.Name != "" && strings.EqualFold(s.Name, g.Name) && s.Thickness > 0
	return (s.Material == g.Material || named) && (s.Thickness == 0 || s.Thickness.Near(g.Thickness)) &&
		(s.Name == "" || g.Name == "" && s.Pile == "" || strings.EqualFold(s.Name, g.Name))
}

// asLarge cuts pieces to their own size whose rounded one no stock takes.
func (g *group) asLarge() {
	for i := range g.items {
		it := &g.items[i]
		if !slices.ContainsFunc(g.Stock, it.fits) {
			it.w, it.h = it.piece.Rough()
		}
	}
}

// usual returns the first usual size that takes all pieces, the last if none does.
func (g *group) usual() stock.Stock {
	sizes := stock.Usual(g.Material, g.unit)
	for _, s := range sizes {
		if !slices.ContainsFunc(g.items, func(it item) bool { return !it.fits(s) }) {
			return s
		}
	}
	return sizes[len(sizes)-1]
}

// describe names a group with its thickness, for messages.
func (g *group) describe() string {
	return g.Label() + " of " + rounding(g.unit).Thickness(g.Thickness)
}

// rounding is how lengths are shown in messages.
func rounding(u geometry.Unit) geometry.Rounding {
	if u == geometry.IN {
		return geometry.To32nd
	}
	return geometry.ToTenthMM
}
