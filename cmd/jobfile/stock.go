package jobfile

import (
	"slices"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/kinds"
	"forel/geometry/plan"
	"forel/paper/stock"
)

const mostStock = 40 // kinds in one file

// Limits of the thickness of stock, both allowed.
const (
	leastStock     Length = 0.03
	mostStockThick Length = 10
)

// materials are what a [[stock]] can be of.
var materials = func() job.Setting {
	s := job.Setting{Key: "stock.material", What: "what the stock is"}
	for _, m := range geometry.Materials {
		s.Words = append(s.Words, string(m))
	}
	return s
}()

var stockGrains = job.Setting{Key: "stock.grain", What: "along the first side of a sheet or across a roll, along the second side or the roll's length, or of no account",
	Words: []string{string(geometry.GrainHeight), string(geometry.GrainWidth), string(stock.NoGrain)}}

// keepOffcut is what is worth keeping of a sheet.
var keepOffcut = lengthAt("offcuts.least", "the shorter side of the smallest offcut worth keeping", 10, 1000, new(Length)).Setting

// stockPer is what the price of a roll is for.
var stockPer = job.Setting{Key: "stock.per", What: "the length of roll that its price is for; left out, a metre, or a yard where units are in", Words: []string{"metre", "yard"}}

// stockKept are the keys of a [[stock]].
func stockKept(s *stock.Stock) []kept {
	return []kept{
		{materials, (*string)(&s.Material)},
		textAt("stock.name", "what you call it", &s.Name),
		lengthAt("stock.thickness", "the thickness as measured", leastStock, mostStockThick, &s.Thickness),
		{job.Setting{Key: "stock.size", What: "the size of a sheet", Min: float64(stock.LeastSide), Max: float64(stock.MostSide)}, nil}, // see stockShape
		lengthAt("stock.roll", "the width of the roll", stock.LeastSide, stock.MostSide, &s.Width),
		lengthAt("stock.length", "how much there is of the roll", stock.LeastSide, stock.MostLength, &s.Height),
		{stockGrains, (*string)(&s.Grain)},
		numberAt("stock.count", "how many there are", 1, stock.MostCount, &s.Count),
		numberAt("stock.price", "of a sheet, or of a metre of a roll, of a yard where units are in", 0, mostMoney, &s.Price),
		numberAt("stock.offcut", "the number on the label of an offcut, which is used before whole sheets", 1, mostNumber, &s.Offcut),
		lengthAt("stock.sold_by", "what a length off a roll is a whole number of where it is sold", 1, stock.MostSide, &s.SoldBy),
		textAt("stock.supplier", "who sells it", &s.Supplier),
		textAt("stock.ordered_as", "what the supplier calls it", &s.OrderedAs),
		{stockPer, nil}, // see oneStock
		lengthAt("stock.trim", "what is taken off each edge first", 0, stock.MostTrim, &s.Trim),
		lengthAt("stock.kerf", "what the blade takes away, 0 for a knife or a shear", 0, stock.MostKerf, &s.Kerf),
		numberAt("stock.density", "kg/m³", 100, 3000, &s.Density),
		numberAt("stock.grammage", "g/m²", 20, 10_000, &s.Grammage),
	}
}

var (
	stockSettings = settingsIn(stockKept(new(stock.Stock)))
	stockKeys     = keysOf(stockSettings)
)

// readStock reads every [[stock]]; flags alone make one too.
func (r *reader) readStock() []stock.Stock {
	count := r.ownStock()
	var out []stock.Stock
	for n := range count + r.lentStock {
		out = append(out, r.oneStock(numbered("stock", n+1)))
	}
	return out
}

// ownStock returns how many [[stock]] the job itself has.
func (r *reader) ownStock() int {
	set := func(key string) bool { _, ok := r.flags[key]; return ok }
	if r.counts["stock"] == 0 && slices.ContainsFunc(stockKeys, set) {
		return 1
	}
	return min(r.counts["stock"], mostStock)
}

// oneStock reads the [[stock]] whose keys begin with name.
func (r *reader) oneStock(name string) stock.Stock {
	unit := r.fileUnit
	if v, ok := r.lent[name+".material"]; ok {
		unit = r.unitOf(v)
	}
	s := stock.Stock{Grain: geometry.GrainHeight, Trim: stock.DefaultTrim(unit), Per: stock.Metre}
	if _, roll := r.get(name + ".roll"); roll && unit == geometry.IN {
		s.Per = stock.Yard
	}
	before := len(r.issues)
	get := func(word string) (value, bool) { return r.get(name + "." + word) }
	if _, ok := get("material"); !ok {
		r.refuse(r.stockAt(name, "material"), "missing", "give "+either(materials.Words))
	}
	for _, k := range stockKept(&s) {
		r.keep(name+"."+wordOf(k.Key), k)
	}
	r.stockShape(name, &s)
	if v, ok := get("count"); ok && s.Endless() {
		r.refuse(v.at, "a count of a roll without a length", "give its length, or leave the count out")
	}
	if v, ok := get("offcut"); ok && (s.Roll || s.Count != 1) {
		r.refuse(v.at, "an offcut is one piece", "give its size and count = 1")
	}
	s.Pile = r.piles[name]
	s.At = r.stockAt(name, "size").public()
	if s.Roll {
		s.At = r.stockAt(name, "roll").public()
	}
	if v, ok := get("sold_by"); ok && !s.Roll {
		r.refuse(v.at, "a sheet is sold whole", "leave it out, or give roll in place of size")
	}
	if v, ok := get("per"); ok {
		s.Per = map[string]Length{"metre": stock.Metre, "yard": stock.Yard}[r.choice(v, stockPer)]
	}
	if v, ok := get("grammage"); ok {
		if _, both := get("density"); both {
			r.refuse(v.at, "density and grammage both", "keep the one that you know")
		}
	}
	if len(r.issues) == before {
		if err := s.Check(); err != nil {
			p := problem(err)
			r.tell(r.stockAt(name, "trim"), p)
			s.Trim = p.Mend.Value
		}
	}
	return s
}

// stockShape reads whether the stock is a sheet or a roll, and its size.
func (r *reader) stockShape(name string, s *stock.Stock) {
	size, sheet := r.get(name + ".size")
	roll, rolled := r.get(name + ".roll")
	s.Roll = rolled
	length, cut := r.get(name + ".length")
	switch {
	case !sheet && !rolled:
		r.refuse(r.stockAt(name, "size"), "missing", `give the size of a sheet, such as size = "26 x 38 in", or the width of a roll, such as roll = "54 in"`)
	case sheet && rolled:
		r.refuse(roll.at, "size and roll both", "keep size for sheets, roll for a roll")
	case sheet && cut:
		r.refuse(length.at, "a sheet has no length of its own", "leave it out, or give roll in place of size")
	}
	parse := stock.ParseSize
	if _, offcut := r.get(name + ".offcut"); offcut {
		parse = stock.ParseOffcut
	}
	if sheet {
		is := r.size(size, parse)
		s.Width, s.Height = is.Width, is.Height
	}
}

// stockAt is where a key of a [[stock]] stands, or would.
func (r *reader) stockAt(name, word string) place {
	if v, ok := r.get(name + "." + word); ok {
		return v.at
	}
	if v, ok := r.lent[name+".material"]; ok {
		return v.at
	}
	return r.at(r.tables[name], name+"."+word)
}

// names reads what a maker calls materials, by which pieces of different stuff are
// kept apart when they are laid out. Two kinds may each have a key for one material.
func (r *reader) names(of plan.Kind) map[geometry.Material]string {
	out, read := map[geometry.Material]string{}, map[string]string{}
	for _, n := range kinds.Named() {
		name, ok := read[n.Key]
		if !ok {
			r.title(n.Key, &name)
			read[n.Key] = name
		}
		if name != "" && slices.Contains(of.Named, n) {
			out[n.Material] = name
		}
	}
	return out
}
