package jobfile

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/kinds"
	"forel/paper/stock"
)

const mostStock = 40 // kinds in one file

// stockKeys are the keys of a [[stock]].
var stockKeys = []string{
	"stock.material", "stock.name", "stock.thickness", "stock.size", "stock.roll", "stock.length", "stock.grain",
	"stock.count", "stock.price", "stock.trim", "stock.kerf", "stock.density", "stock.grammage",
}

// materials are what a [[stock]] can be of.
var materials = func() job.Setting {
	s := job.Setting{What: "what the stock is"}
	for _, m := range geometry.Materials {
		s.Words = append(s.Words, string(m))
	}
	return s
}()

var stockGrains = job.Setting{What: "along the first side of a sheet or across a roll, along the second side or the roll's length, or of no account",
	Words: []string{string(geometry.GrainHeight), string(geometry.GrainWidth), string(stock.NoGrain)}}

// readStock reads every [[stock]]; flags alone make one too.
func (r *reader) readStock() []stock.Stock {
	count := r.counts["stock"]
	if count == 0 && slices.ContainsFunc(stockKeys, r.has) {
		count = 1
	}
	var out []stock.Stock
	for n := range min(count, mostStock) {
		out = append(out, r.oneStock(numbered("stock", n+1)))
	}
	return out
}

// oneStock reads the [[stock]] whose keys begin with name.
func (r *reader) oneStock(name string) stock.Stock {
	s := stock.Stock{Grain: geometry.GrainHeight, Trim: stock.DefaultTrim(r.fileUnit), Per: stock.Metre}
	if r.fileUnit == geometry.IN {
		s.Per = stock.Yard
	}
	before := len(r.issues)
	get := func(word string) (value, bool) { return r.get(name + "." + word) }
	if v, ok := get("material"); ok {
		s.Material = geometry.Material(r.choice(v, materials))
	} else {
		r.refuse(r.stockAt(name, "material"), "missing", "give "+either(materials.Words))
	}
	r.title(name+".name", &s.Name)
	r.stockLength(name, "thickness", "the thickness as measured", 0.03, 10, &s.Thickness)
	r.stockShape(name, &s)
	if v, ok := get("grain"); ok {
		s.Grain = geometry.Grain(r.choice(v, stockGrains))
	}
	if v, ok := get("count"); ok {
		s.Count = int(r.number(v, "how many there are", 1, stock.MostCount, true))
		if s.Endless() {
			r.refuse(v.at, "a count of a roll without a length", "give its length, or leave the count out")
		}
	}
	if v, ok := get("price"); ok {
		price := r.number(v, "of a sheet, or of a metre of a roll, of a yard where units are in", 0, 1e6, false)
		s.Price = &price
	}
	r.stockLength(name, "trim", "what is taken off each edge first", 0, stock.MostTrim, &s.Trim)
	r.stockLength(name, "kerf", "what the blade takes away, 0 for a knife or a shear", 0, stock.MostKerf, &s.Kerf)
	if v, ok := get("density"); ok {
		s.Density = r.number(v, "kg/m³", 100, 3000, false)
	}
	if v, ok := get("grammage"); ok {
		s.Grammage = r.number(v, "g/m²", 20, 10_000, false)
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
	length, cut := r.get(name + ".length")
	switch {
	case !sheet && !rolled:
		r.refuse(r.stockAt(name, "size"), "missing", `give the size of a sheet, such as size = "26 x 38 in", or the width of a roll, such as roll = "54 in"`)
	case sheet && rolled:
		r.refuse(roll.at, "size and roll both", "keep size for sheets, roll for a roll")
	case sheet && cut:
		r.refuse(length.at, "a sheet has no length of its own", "leave it out, or give roll in place of size")
	}
	if sheet && size.kind != textKind {
		_, _, err := stock.ParseSize("", geometry.MM)
		r.reject(size, "is no size of a sheet", problem(err).Fix)
	} else if sheet {
		var err error
		if s.Width, s.Height, err = stock.ParseSize(size.text, r.unitOf(size)); err != nil {
			r.tell(size.at, problem(err))
		}
	}
	if rolled {
		s.Roll = true
		s.Width = r.length(roll, name+".roll", "the width of the roll", stock.LeastSide, stock.MostSide)
	}
	if cut {
		s.Height = r.length(length, name+".length", "how much there is of the roll", stock.LeastSide, stock.MostLength)
	}
}

// stockLength reads a length of a [[stock]] where it is set.
func (r *reader) stockLength(name, word, what string, lo, hi Length, to *Length) {
	if v, ok := r.get(name + "." + word); ok {
		*to = r.length(v, name+"."+word, what, lo, hi)
	}
}

// stockAt is where a key of a [[stock]] stands, or would.
func (r *reader) stockAt(name, word string) place {
	if v, ok := r.get(name + "." + word); ok {
		return v.at
	}
	return r.at(r.tables[name], name+"."+word)
}

// number reads a plain number within limits, both allowed.
func (r *reader) number(v value, what string, lo, hi float64, whole bool) float64 {
	n := math.NaN()
	switch v.kind {
	case numberKind:
		n = float(v.text)
	case textKind:
		if m := share.FindStringSubmatch(strings.TrimSpace(v.text)); m != nil && !strings.Contains(v.text, "%") && !twoWays.MatchString(m[1]) {
			n = float(strings.Replace(m[1], ",", ".", 1))
		}
	}
	right := fmt.Sprintf("give %s to %s (%s)", plain(lo), plain(hi), what)
	switch {
	case math.IsNaN(n) || math.IsInf(n, 0):
		r.reject(v, "is no number", right)
	case n < lo:
		r.reject(v, "is too small", right)
	case n > hi:
		r.reject(v, "is too large", right)
	case whole && n != math.Trunc(n):
		r.reject(v, "is no whole number", right)
	default:
		return n
	}
	return lo
}

// names reads what a maker calls materials, by which pieces of different stuff are
// kept apart when they are laid out.
func (r *reader) names() map[geometry.Material]string {
	out := map[geometry.Material]string{}
	for _, n := range kinds.Named() {
		name := ""
		if r.title(n.Key, &name); name != "" {
			out[n.Material] = name
		}
	}
	return out
}
