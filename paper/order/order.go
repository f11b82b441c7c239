// Package order is what is to be bought for a plan of the work at the bench, in a seller's
// terms: sheets, lengths as a shop cuts them, adhesive, a block for each supplier.
package order

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"forel/geometry"
	"forel/paper/bench"
	"forel/paper/money"
	"forel/paper/stock"
)

// Length is a distance in millimetres.
type Length = geometry.Length

// Terms are what a maker buys beyond what a plan needs.
type Terms struct {
	Spare       money.Amount // percent more of all that is used up
	SparePieces int          // so many more of each piece, laid on the sheets with the others
}

// Adhesive is what a maker glues with. Weights are in grams.
type Adhesive struct {
	Name      string        // what the maker calls it; may be empty
	Coverage  money.Amount  // g/m²; zero: DefaultCoverage
	Pack      money.Amount  // what it is sold in; zero: by weight
	Price     *money.Amount // of a pack, or of a kilogram where it has none; nil: not known
	AtHand    money.Amount  // what there is
	Supplier  string        // who sells it; may be empty
	OrderedAs string        // what the supplier calls it; empty: Name
}

// DefaultCoverage is how much adhesive a square metre takes, in g/m². Data sheets of white
// glues for wood ask for 120 to 200 g/m² (from memory); what cloth and paper take at the
// bench is common practice, no source.
var DefaultCoverage = money.Of(150)

// Typed tells whether the maker has given the coverage.
func (a Adhesive) Typed() bool { return !a.Coverage.IsZero() }

// Covers returns how much a square metre takes, in g/m².
func (a Adhesive) Covers() money.Amount {
	if a.Typed() {
		return a.Coverage
	}
	return DefaultCoverage
}

// Needs returns what an area in mm² takes, in grams, rounded up to one.
func (a Adhesive) Needs(area float64) money.Amount {
	const squareMetre = 1e6
	return money.UpToStep(money.Thousandths(area/squareMetre).Mul(a.Covers()), money.Of(1))
}

// Glued returns the area that is glued in a plan, in mm²: cloth and paper are pasted over
// the whole of what is cut, once. The joints of boards take little.
func Glued(p bench.Plan) (area float64) {
	for _, g := range p.Groups {
		for _, s := range g.Sheets {
			for _, q := range s.Pieces {
				area += GluedOf(g, q)
			}
		}
	}
	return area
}

// GluedOf returns what of the area of one placed piece is glued, in mm².
func GluedOf(g bench.Group, q bench.Placed) float64 {
	switch g.Material.Like() {
	case geometry.Lining, geometry.Cloth, geometry.Paper:
		return float64(q.Width) * float64(q.Height)
	}
	return 0
}

// Line is one thing to be ordered.
type Line struct {
	Name      string            // as it is ordered
	Own       string            // what the maker calls it, where that is another name
	Material  geometry.Material // empty for adhesive
	Stock     stock.Stock       // of a sheet or a roll
	Thickness Length            //
	Needed    money.Amount      // by the plan; of adhesive in grams, what is at hand taken off
	Quantity  money.Amount      // as it is sold, with what is spare
	Unit      string            // that Quantity is in: "sheet", "m", "yd", "pack", "g"
	Pack      money.Amount      // of adhesive, in grams; zero: by weight
	Price     *money.Amount     // of one; of adhesive by weight of a kilogram; nil: not known
}

// Cost returns what the line comes to; known is false where it has no price.
func (l Line) Cost() (cost money.Amount, known bool) {
	if l.Price == nil {
		return cost, false
	}
	quantity := l.Quantity
	if l.Unit == Gram {
		quantity = quantity.Shift(-3)
	}
	return money.ToCent(l.Price.Mul(quantity)), true
}

// What lines are counted in, beside stock.Unit.
const (
	Sheet = "sheet"
	Pack  = "pack"
	Gram  = "g"
)

// Block is what is ordered of one supplier.
type Block struct {
	Supplier string // empty: none was given
	Lines    []Line
}

// Order is all that is to be ordered.
type Order struct {
	Jobs     []string
	Blocks   []Block // in order of the suppliers' names, none last
	Owned    []Owned // what the plan takes from what is there
	Terms    Terms
	Adhesive Adhesive
	Glued    float64 // mm²
}

// Owned is stock that is there, of which the plan takes some.
type Owned struct {
	Name  string
	Stock stock.Stock
	Takes money.Amount // sheets, or m or yd off a roll
}

// Of returns the order for a plan, which was laid out with bench.Options.Buy.
func Of(p bench.Plan, t Terms, a Adhesive) Order {
	o := Order{Terms: t, Adhesive: a, Glued: Glued(p)}
	for _, j := range p.Jobs {
		o.Jobs = append(o.Jobs, j.Title())
	}
	for _, g := range p.Groups {
		for _, u := range g.Used {
			s := g.Stock[u.Stock]
			if s.Owned() {
				o.Owned = append(o.Owned, Owned{Called(g), s, s.Quantity(u.Sheets, u.Length)})
				continue
			}
			o.add(s.Supplier, bought(p, g, u, t))
		}
	}
	if l := glue(o.Glued, t, a); !l.Quantity.IsZero() {
		o.add(a.Supplier, l)
	}
	slices.SortStableFunc(o.Blocks, func(a, b Block) int {
		if (a.Supplier == "") != (b.Supplier == "") {
			return strings.Compare(b.Supplier, a.Supplier)
		}
		return strings.Compare(strings.ToLower(a.Supplier), strings.ToLower(b.Supplier))
	})
	return o
}

// add puts a line into the block of its supplier.
func (o *Order) add(supplier string, l Line) {
	i := slices.IndexFunc(o.Blocks, func(b Block) bool { return b.Supplier == supplier })
	if i < 0 {
		i = len(o.Blocks)
		o.Blocks = append(o.Blocks, Block{Supplier: supplier})
	}
	o.Blocks[i].Lines = append(o.Blocks[i].Lines, l)
}

// bought returns the line of what is bought of a stock.
func bought(p bench.Plan, g bench.Group, u bench.Use, t Terms) Line {
	s := g.Stock[u.Stock]
	more := money.Of(1).Add(t.Spare.Shift(-2))
	l := Line{Material: g.Material, Stock: weighed(p, g, s), Thickness: g.Thickness, Price: s.Price, Needed: s.Quantity(u.Sheets, u.Length), Unit: Sheet}
	l.Name, l.Own = named(s.OrderedAs, Called(g))
	if s.Roll {
		l.Unit = s.Unit()
		l.Quantity = s.Sold(0, u.Length*Length(more.InexactFloat64()))
	} else {
		used := money.Thousandths(float64(u.Sheets) * g.UsedUp(u)) // what is worth keeping will do for some of it
		l.Quantity = decimal.Max(l.Needed, money.UpToStep(used.Mul(more), money.Of(1)))
	}
	return l
}

// Called returns what a material is called: by its maker's name, else as a shop would.
func Called(g bench.Group) string {
	if g.Name != "" || g.Material != g.Material.Like() {
		return g.Label()
	}
	return g.Material.Words()
}

// weighed returns a stock with the grammage that a job tells of its material.
func weighed(p bench.Plan, g bench.Group, s stock.Stock) stock.Stock {
	for _, j := range p.Jobs {
		s = s.OrWeighs(j.Plan.Grammage(g.Material))
	}
	return s
}

// glue returns the line of the adhesive; its quantity is zero where there is enough.
func glue(area float64, t Terms, a Adhesive) Line {
	l := Line{Unit: Gram, Pack: a.Pack, Price: a.Price}
	l.Name, l.Own = named(a.OrderedAs, cmp.Or(a.Name, "adhesive"))
	need := a.Needs(area * (1 + t.Spare.InexactFloat64()/100)).Sub(a.AtHand)
	if !need.IsPositive() {
		return l
	}
	l.Needed, l.Quantity = need, money.UpToStep(need, money.Of(10))
	if a.Pack.IsPositive() {
		l.Unit, l.Quantity = Pack, money.UpToStep(need, a.Pack).Div(a.Pack)
	}
	return l
}

// named returns the name that a thing is ordered by, and the maker's own where it is
// another.
func named(ordered, own string) (name, other string) {
	if ordered == "" || ordered == own {
		return own, ""
	}
	return ordered, own
}

// Total adds up what has a price; whole tells whether everything has.
func Total(lines []Line) (sum money.Amount, any, whole bool) {
	whole = true
	for _, l := range lines {
		if c, known := l.Cost(); known {
			sum, any = sum.Add(c), true
		} else {
			whole = false
		}
	}
	return sum, any, whole && any
}

// Lines returns those of all suppliers.
func (o Order) Lines() (all []Line) {
	for _, b := range o.Blocks {
		all = append(all, b.Lines...)
	}
	return all
}

// SquareMetres returns an area in mm² rounded up to a hundredth of a square metre.
func SquareMetres(area float64) float64 { return math.Ceil(area/1e4-1e-9) / 100 }
