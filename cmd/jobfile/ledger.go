package jobfile

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/wording"
	"forel/paper/money"
	"forel/paper/stock"
)

// The ledger of a shop file: offcuts that were kept, each with the number on its label, and
// for each taking what it took, so that the last can be taken back. An offcut that was used
// stays in it, marked by the taking that used it.

var ledgerKeys = []string{
	"offcut.number", "offcut.material", "offcut.size", "offcut.grain", "offcut.date", "offcut.from", "offcut.price", "offcut.taking", "offcut.used_by",
	"used.taking", "used.material", "used.size", "used.roll", "used.count", "used.length", "used.was",
	"taking.number", "taking.date", "taking.by", "taking.left", "taking.used",
}

// offcut is one that the ledger holds.
type offcut struct {
	key    string // of its table: offcut[2]
	number int
	of     entry
	size   string
	used   bool
}

// readLedger reads the offcuts, and holds the numbers of takings against their limits.
func (s *Shop) readLedger() {
	r := s.r
	first := map[int]value{}
	for _, key := range r.each("offcut") {
		o := offcut{key: key}
		before := len(r.issues)
		if v, ok := s.needed(o.key, "number", "give the number on its label"); ok {
			o.number = int(r.number(v, job.Setting{What: "the number on its label", Min: 1, Max: mostNumber}, true))
			if was, twice := first[o.number]; twice && len(r.issues) == before {
				r.reject(v, fmt.Sprintf("is a number that is there already, on line %d", was.at.line), "give it another")
			}
			first[o.number] = v
		}
		if v, ok := s.needed(o.key, "material", "give the name of its material"); ok {
			if o.of, ok = find(s.materials, strings.TrimSpace(v.text)); !ok {
				r.reject(v, "is no material of "+s.source, nearestNames(v.text, namesOf(s.materials)))
			}
		}
		if _, ok := s.needed(o.key, "size", `give it, such as size = "540 x 990 mm"`); ok && len(r.issues) == before {
			lent := s.lentReader()
			s.lendOffcut(lent.lent, "stock", geometry.Board, o)
			is := lent.oneStock("stock")
			r.issues = append(r.issues, lent.issues...)
			is.Offcut = 0
			o.size = is.Size()
		}
		r.date(o.key + ".date")
		s.ledgerNumber(o.key, "taking", "the number of the taking", 1, mostNumber)
		var by value
		if by, o.used = s.value(o.key, "used_by"); o.used && (by.kind != textKind || blank(by)) { // a maker says in words by what
			s.ledgerNumber(o.key, "used_by", "the number of the taking, or what it was used for in quotes", 1, mostNumber)
		}
		if len(r.issues) == before {
			s.offcuts = append(s.offcuts, o)
		}
	}
	for _, key := range r.each("taking") {
		s.needed(key, "number", "give the number of the taking")
		s.ledgerNumber(key, "number", "the number of the taking", 1, mostNumber)
		s.ledgerNumber(key, "left", "how many offcuts it left", 0, mostInLedger)
		s.ledgerNumber(key, "used", "how many offcuts it used", 0, mostInLedger)
	}
	for _, key := range r.each("used") {
		s.readUsed(key)
	}
}

// readUsed holds an entry of what was used against its limits: so many sheets of a size, or a
// length of a roll.
func (s *Shop) readUsed(key string) {
	s.needed(key, "taking", "give the number of the taking")
	s.ledgerNumber(key, "taking", "the number of the taking", 1, mostNumber)
	s.needed(key, "material", "give the name of the material")
	v, roll := s.value(key, "length")
	if !roll {
		s.needed(key, "size", "give the size of the sheet as the material has it")
		s.needed(key, "count", "give how many sheets were taken")
		s.ledgerNumber(key, "count", "how many sheets were taken", 1, stock.MostCount)
		return
	}
	s.r.length(v, "stock.length", "the length that was taken", 0, stock.MostLength)
	for _, word := range []string{"roll", "was"} {
		if v, ok := s.needed(key, word, "give the roll as the material has it, and the length that it had"); ok {
			s.r.length(v, "stock.length", "a length", 0, stock.MostLength)
		}
	}
}

// ledgerNumber holds a number of the ledger, where it is set, against its limits.
func (s *Shop) ledgerNumber(key, word, what string, lo, hi float64) {
	s.r.keep(key+"."+word, numberAt("", what, lo, hi, new(int)))
}

// needed returns what a table of the shop sets, and tells where it is missing.
func (s *Shop) needed(table, word, fix string) (value, bool) {
	v, ok := s.value(table, word)
	if !ok {
		s.r.refuse(s.r.at(s.r.tables[table], table+"."+word), "missing", fix)
	}
	return v, ok
}

// lendOffcut sets the keys of a [[stock]], but for its name, to what an offcut is. It is worth
// its part of the sheet that it was cut from, and its edges are trimmed.
func (s *Shop) lendOffcut(to map[string]value, name string, of geometry.Material, o offcut) {
	at := s.r.file[o.key+".size"].at
	set := func(word, text string, k kind) { to[name+"."+word] = value{kind: k, text: text, at: at} }
	set("material", string(of), textKind)
	for _, word := range []string{"size", "grain"} {
		if v, ok := s.value(o.key, word); ok {
			to[name+"."+word] = v
		}
	}
	set("count", "1", numberKind)
	if v, ok := s.value(o.key, "price"); ok {
		to[name+".price"] = v
	} else if o.used { // it is there no more
		set("price", "0", numberKind)
	} else {
		set("price", s.worth(o).String(), numberKind)
	}
	set("trim", "0", numberKind)
	set("offcut", strconv.Itoa(o.number), numberKind)
	for _, word := range []string{"kerf", "density", "grammage"} {
		if v, ok := s.value(o.of.key, word); ok {
			to[name+"."+word] = v
		}
	}
}

// worth returns what an offcut is worth: as much of the price of its sheet as its area is of that.
// It is zero where the sheets that it can be of have no price, or not the same for an area.
func (s *Shop) worth(o offcut) (worth money.Amount) {
	lent := s.lentReader()
	size, _ := s.value(o.key, "size")
	lent.lent["stock.size"], lent.lent["stock.offcut"] = size, value{kind: numberKind, text: "1"}
	var off stock.Stock
	lent.keepAll("", lent.stockRows("stock", &off))
	for i, key := range s.cutFrom(o) {
		sheet := s.sheet(o.of, key)
		long := sheet.Height
		if sheet.Roll {
			long = sheet.Per
		}
		whole := money.Thousandths(float64(sheet.Width) * float64(long))
		if sheet.Price == nil || !whole.IsPositive() {
			return money.Amount{}
		}
		part := sheet.Price.Mul(money.Thousandths(float64(off.Width)*float64(off.Height))).DivRound(whole, 2)
		if i > 0 && !part.Equal(worth) {
			return money.Amount{}
		}
		worth = part
	}
	return worth
}

// cutFrom returns the sheets that an offcut can be of: those of its material that its taking
// used, or where that is not known all of them.
func (s *Shop) cutFrom(o offcut) (sheets []string) {
	taking, known := s.value(o.key, "taking")
	is := func(a, b, word string) bool {
		one, ok := s.value(a, word)
		other, also := s.value(b, word)
		return ok && also && one.text == other.text
	}
	for _, used := range s.r.each("used") {
		of, _ := s.value(used, "taking")
		material, _ := s.value(used, "material")
		if e, ok := find(s.materials, strings.TrimSpace(material.text)); !known || of.text != taking.text || !ok || e.key != o.of.key {
			continue
		}
		for _, sheet := range o.of.sheets {
			if !slices.Contains(sheets, sheet) && (is(sheet, used, "size") || is(sheet, used, "roll")) {
				sheets = append(sheets, sheet)
			}
		}
	}
	if len(sheets) == 0 {
		return o.of.sheets
	}
	return sheets
}

// sheetsOf returns the sheets of a material that are in hand; where none is, all of them, to
// be bought.
func (s *Shop) sheetsOf(e entry) []string {
	if in := slices.DeleteFunc(slices.Clone(e.sheets), func(sheet string) bool { return !s.inHand(sheet) }); len(in) > 0 {
		return in
	}
	return e.sheets
}

// Taking is what a plan takes from the shop and leaves there.
type Taking struct {
	By     string // for what: the titles of the jobs
	Date   string // as in 2026-11-28; "": none
	Sheets []Used
	Kept   []Kept
}

// Used is how much a plan takes of a pile, by stock.Stock.Pile: sheets, or a length of a roll,
// or the one offcut.
type Used struct {
	Pile   string
	Sheets int
	Length Length
}

// Uses adds to what is taken of a pile.
func (t *Taking) Uses(pile string, sheets int, length Length) {
	i := slices.IndexFunc(t.Sheets, func(u Used) bool { return u.Pile == pile })
	if i < 0 {
		i, t.Sheets = len(t.Sheets), append(t.Sheets, Used{Pile: pile})
	}
	t.Sheets[i].Sheets += sheets
	t.Sheets[i].Length += length
}

// Kept is an offcut that a plan leaves.
type Kept struct {
	Material      string // its name in the shop
	Width, Height Length
	Grain         geometry.Grain
	Runs          string // "grain", or "flutes"
	From          string // where it lies in the plan: "sheet 1"
	Number        int    // that the shop gives it
}

// Has tells whether the shop has a material of a name.
func (s *Shop) Has(material string) bool {
	_, ok := find(s.some().materials, material)
	return ok
}

// Numbered returns what is kept with the numbers that the shop gives it, its sides rounded
// down to a tenth of a millimetre.
func (s *Shop) Numbered(kept []Kept) []Kept {
	down := func(l Length) Length { return Length(math.Floor((l.MM()+1e-6)*10) / 10) }
	next := s.largest("offcut.number")
	for i := range kept {
		kept[i].Number = next + 1 + i
		kept[i].Width, kept[i].Height = down(kept[i].Width), down(kept[i].Height)
	}
	return kept
}

// largest returns the largest number in a key of a list, such as offcut.number.
func (s *Shop) largest(key string) (most int) {
	list, word, _ := strings.Cut(key, ".")
	for _, key := range s.r.each(list) {
		if v, ok := s.value(key, word); ok && v.kind == numberKind {
			most = max(most, int(min(max(float(v.text), 0), mostNumber)))
		}
	}
	return most
}

// Take returns the text of the shop file after a taking: sheets and offcuts that are used
// are taken off, and what is kept is put into the ledger. All else in the file stays as it is.
func (s *Shop) Take(t Taking) ([]byte, error) {
	e := newEdit(s.Data())
	number := 1 + max(s.largest("taking.number"), s.largest("used.taking"), s.largest("offcut.taking"), s.largest("offcut.used_by"))
	var log strings.Builder
	used := 0
	for _, u := range t.Sheets {
		if list, _, _ := strings.Cut(u.Pile, "["); list == "offcut" {
			used++
			e.set(u.Pile+".used_by", strconv.Itoa(number))
			continue
		}
		text, err := s.takeOff(e, u, number)
		if err != nil {
			return nil, err
		}
		log.WriteString(text)
	}
	date := ""
	if t.Date != "" {
		date = "date = " + t.Date + "\n"
	}
	for _, k := range s.Numbered(t.Kept) {
		fmt.Fprintf(&log, "\n[[offcut]]\nnumber = %d\nmaterial = %s\nsize = %s\ngrain = %s\n%sfrom = %s\ntaking = %d\n",
			k.Number, textTOML(k.Material), textTOML(sizeText(k.Width, k.Height)), textTOML(string(k.Grain)), date, textTOML(t.By+", "+k.From), number)
	}
	if log.Len() == 0 && used == 0 {
		return nil, s.r.at(0, "").wrong("nothing in it changes: the plan takes nothing that is counted there, and leaves nothing worth keeping", "give sheets a count, or leave --take out")
	}
	fmt.Fprintf(&log, "\n[[taking]]\nnumber = %d\n%sby = %s\nleft = %d\nused = %d\n", number, date, textTOML(t.By), len(t.Kept), used)
	e.append(log.String())
	return e.data, s.again(e.data)
}

// again reads a changed file.
func (s *Shop) again(data []byte) error {
	_, err := ReadShop(s.source, data)
	return err
}

// sizeText writes the size of an offcut, which is whole tenths of a millimetre.
func sizeText(w, h Length) string {
	return wording.Decimal(w.MM(), 1) + " x " + wording.Decimal(h.MM(), 1) + " mm"
}

// takeOff takes what is used off the count or the length of a sheet, and returns the entry
// for it; nothing where there is as much as is needed.
func (s *Shop) takeOff(e *edit, u Used, number int) (string, error) {
	owner, _ := s.value(s.r.owner[u.Pile], "name")
	entry := fmt.Sprintf("\n[[used]]\ntaking = %d\nmaterial = %s\n", number, textTOML(strings.TrimSpace(owner.text)))
	if v, ok := s.value(u.Pile, "count"); ok && u.Sheets > 0 {
		have := int(float(v.text))
		if have == 0 {
			return "", nil // they are bought for it
		}
		size, _ := s.value(u.Pile, "size")
		e.set(u.Pile+".count", strconv.Itoa(max(0, have-u.Sheets)))
		return entry + fmt.Sprintf("size = %s\ncount = %d\n", textTOML(size.text), min(have, u.Sheets)), nil
	}
	if v, ok := s.value(u.Pile, "length"); ok && u.Length > 0 {
		if n, ok := s.value(u.Pile, "count"); ok && float(n.text) > 1 {
			return "", n.at.wrong("several rolls of one length, of which one is to become shorter", "write a [["+sheetList+"]] for each roll, with its length and without a count")
		}
		was, _ := e.get(u.Pile + ".length")
		have, p, ok := s.r.measure(v, "stock.length", "", 0, stock.MostLength, nil)
		if !ok {
			return "", Issues{v.at.issue(p)}
		}
		if have == 0 {
			return "", nil // likewise
		}
		left := max(0, have-u.Length)
		if left < stock.LeastSide {
			left = 0
		}
		roll, _ := e.get(u.Pile + ".roll")
		e.set(u.Pile+".length", textTOML(fmt.Sprintf("%s mm", wording.Decimal(float64(int(left.MM()*10+1e-6))/10, 1))))
		return entry + fmt.Sprintf("roll = %s\nlength = %s\nwas = %s\n", roll, textTOML(wording.Decimal(u.Length.MM(), 3)+" mm"), was), nil
	}
	return "", nil
}

// Undo returns the text of the shop file without its last taking. It is refused where what
// the taking left was used since.
func (s *Shop) Undo() ([]byte, error) {
	number := s.largest("taking.number")
	if number == 0 {
		return nil, s.r.at(0, "").wrong("nothing was taken", "leave --undo out")
	}
	e := newEdit(s.Data())
	of := func(list, word string) (keys []string) {
		for _, key := range s.r.each(list) {
			if v, ok := s.value(key, word); ok && v.kind == numberKind && int(float(v.text)) == number {
				keys = append(keys, key)
			}
		}
		return keys
	}
	taking := of("taking", "number")[0]
	left, back := of("offcut", "taking"), of("offcut", "used_by")
	for _, key := range left {
		if v, ok := s.value(key, "used_by"); ok {
			n, _ := s.value(key, "number")
			return nil, v.at.wrong("offcut "+n.text+", which the last taking left, was used since", "the taking stays")
		}
	}
	for word, keys := range map[string][]string{"left": left, "used": back} {
		if v, ok := s.value(taking, word); ok && int(float(v.text)) != len(keys) {
			return nil, v.at.wrong(fmt.Sprintf("%s offcuts were %s by the last taking, and %d of them are in the file", v.text, word, len(keys)), "the taking stays: put the file right by hand")
		}
	}
	for _, key := range of("used", "taking") {
		if err := s.putBack(e, key); err != nil {
			return nil, err
		}
	}
	for _, key := range back {
		e.remove(key + ".used_by")
	}
	for _, keys := range [][]string{of("taking", "number"), of("used", "taking"), left} {
		for _, key := range slices.Backward(keys) {
			e.removeBlock(key)
		}
	}
	return e.data, s.again(e.data)
}

// putBack adds what a taking used to the count or the length of its sheet.
func (s *Shop) putBack(e *edit, used string) error {
	text := func(word string) string { v, _ := s.value(used, word); return v.text }
	refuse := func(reason string) error {
		return s.r.at(s.r.tables[used], used).wrong(reason, "the taking stays: put the file right by hand")
	}
	m, ok := find(s.materials, text("material"))
	if !ok {
		return refuse("there is no material " + wording.Quote(text("material")) + " any more")
	}
	for _, sheet := range m.sheets {
		if size, ok := s.value(sheet, "size"); ok && text("size") == size.text {
			count, ok := s.value(sheet, "count")
			if !ok {
				continue
			}
			e.set(sheet+".count", strconv.Itoa(int(float(count.text)+float(text("count")))))
			return nil
		}
		roll, ok := e.get(sheet + ".roll")
		length, counted := s.value(sheet, "length")
		if of, _ := e.get(used + ".roll"); !ok || !counted || of != roll {
			continue
		}
		is, _, sound := s.r.measure(length, "stock.length", "", 0, stock.MostLength, nil)
		was, _ := e.get(used + ".was")
		before, taken := geometry.Length(0), geometry.Length(0)
		if l, err := geometry.ParseLength(unquote(was), s.unit); err == nil {
			before = l
		}
		if l, err := geometry.ParseLength(text("length"), geometry.MM); err == nil {
			taken = l
		}
		if rest := max(0, before-taken); sound && ((is-rest).Abs() < 0.11 || is == 0 && rest < stock.LeastSide) {
			e.set(sheet+".length", was) // as it was written
		} else {
			e.set(sheet+".length", textTOML(wording.Decimal((is+taken).MM(), 1)+" mm"))
		}
		return nil
	}
	return refuse("there is no such sheet of " + wording.Quote(text("material")) + " with a count any more")
}

// removeBlock takes a table out with the empty line above it.
func (e *edit) removeBlock(name string) {
	t, ok := e.table(name)
	if !ok {
		return
	}
	from := t.from
	if from > 1 && e.data[from-1] == '\n' && e.data[from-2] == '\n' {
		from--
	}
	e.splice(from, t.to, "")
}
