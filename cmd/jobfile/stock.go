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

// stockPer is what the price of a roll is for.
var stockPer = job.Setting{Key: "stock.per", What: "the length of roll that its price is for; left out, a metre, or a yard where units are in", Words: []string{"metre", "yard"}}

// stockRows are the keys of the [[stock]] whose keys begin with name.
func (r *reader) stockRows(name string, s *stock.Stock) []kept {
	return []kept{
		{materials, (*string)(&s.Material)},
		textAt("stock.name", "what you call it", &s.Name),
		lengthAt("stock.thickness", "the thickness as measured", leastStock, mostStockThick, &s.Thickness),
		{job.Setting{Key: "stock.size", What: "the size of a sheet", Min: float64(stock.LeastSide), Max: float64(stock.MostSide)}, func(v value) {
			parse := stock.ParseSize
			if r.has(name + ".offcut") {
				parse = stock.ParseOffcut
			}
			size := r.size(v, parse)
			s.Width, s.Height = size.Width, size.Height
		}},
		lengthAt("stock.roll", "the width of the roll", stock.LeastSide, stock.MostSide, &s.Width),
		lengthAt("stock.length", "how much there is of the roll", stock.LeastSide, stock.MostLength, &s.Height),
		{stockGrains, (*string)(&s.Grain)},
		numberAt("stock.count", "how many there are", 1, stock.MostCount, &s.Count),
		numberAt("stock.price", "of a sheet, or of a metre of a roll, of a yard where units are in", 0, mostMoney, &s.Price),
		numberAt("stock.offcut", "the number on the label of an offcut, which is used before whole sheets", 1, mostNumber, &s.Offcut),
		lengthAt("stock.sold_by", "what a length off a roll is a whole number of where it is sold", 1, stock.MostSide, &s.SoldBy),
		textAt("stock.supplier", "who sells it", &s.Supplier),
		textAt("stock.ordered_as", "what the supplier calls it", &s.OrderedAs),
		{stockPer, func(v value) {
			s.Per = map[string]Length{"metre": stock.Metre, "yard": stock.Yard}[r.choice(v, stockPer)]
		}},
		lengthAt("stock.trim", "what is taken off each edge first", 0, stock.MostTrim, &s.Trim),
		lengthAt("stock.kerf", "what the blade takes away, 0 for a knife or a shear", 0, stock.MostKerf, &s.Kerf),
		numberAt("stock.density", "kg/m³", 100, 3000, &s.Density),
		numberAt("stock.grammage", "g/m²", 20, 10_000, &s.Grammage),
	}
}

var (
	stockSettings = settingsIn(new(reader).stockRows("stock", new(stock.Stock)))
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
	if r.has(name+".roll") && unit == geometry.IN {
		s.Per = stock.Yard
	}
	before := len(r.issues)
	r.keepAll(name, r.stockRows(name, &s))
	at := func(word string) place { return r.stockAt(name, word) }
	has := func(word string) bool { return r.has(name + "." + word) }
	s.Pile, s.Roll, s.At = r.piles[name], has("roll"), at("size").public()
	if s.Roll {
		s.At = at("roll").public()
	}
	if !has("material") {
		r.refuse(at("material"), "missing", "give "+either(materials.Words))
	}
	switch {
	case !has("size") && !s.Roll:
		r.refuse(at("size"), "missing", `give the size of a sheet, such as size = "26 x 38 in", or the width of a roll, such as roll = "54 in"`)
	case has("size") && s.Roll:
		r.refuse(at("roll"), "size and roll both", "keep size for sheets, roll for a roll")
	case has("size") && has("length"):
		r.refuse(at("length"), "a sheet has no length of its own", "leave it out, or give roll in place of size")
	}
	if has("count") && s.Endless() {
		r.refuse(at("count"), "a count of a roll without a length", "give its length, or leave the count out")
	}
	if has("offcut") && (s.Roll || s.Count != 1) {
		r.refuse(at("offcut"), "an offcut is one piece", "give its size and count = 1")
	}
	if has("sold_by") && !s.Roll {
		r.refuse(at("sold_by"), "a sheet is sold whole", "leave it out, or give roll in place of size")
	}
	if has("grammage") && has("density") {
		r.refuse(at("grammage"), "density and grammage both", "keep the one that you know")
	}
	if len(r.issues) == before {
		if err := s.Check(); err != nil {
			p := problem(err)
			r.tell(at("trim"), p)
			s.Trim = p.Mend.Value
		}
	}
	return s
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
