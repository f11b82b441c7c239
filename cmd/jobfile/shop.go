package jobfile

import (
	"bytes"
	"cmp"
	_ "embed"
	"fmt"
	"math"
	"regexp"
	"slices"
	"strings"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/wording"
	"forel/paper/stock"
)

// A shop file tells what a maker has: materials by name, printers, and habits, which are
// the sections of a job file that are not of one book. A job names a material or a printer
// and takes all of it from there; what the job says itself goes before.

// ShopName is the usual name of a shop file.
const ShopName = "shop.toml"

// shopVersion is the version of shop files that is written, and the latest that is read.
const shopVersion = 1

const (
	mostInShop   = 500       // materials, sheets or printers
	mostInLedger = 5000      // offcuts, or entries of what was used
	mostNumber   = 1_000_000 // of offcuts and takings
	sheetList    = "material.sheet"
	patternTable = "material.pattern"

	printerKey   = "print.printer"
	printerShort = "printer"
	cutterKey    = "machine.cutter"
	cutterShort  = "cutter"
)

// Words of a [[stock]] that are of a sheet alone, and those that a material has another
// way. All others may stand in a [[material]] too, for those of its sheets that leave them
// out.
var (
	sheetAlone    = []string{"size", "roll", "length", "count"}
	materialAlone = []string{"material", "name", "thickness", "offcut"}
)

// sheetWords are the words that a [[material.sheet]] has.
var sheetWords = func() (out []string) {
	for _, key := range stockKeys {
		if word := wordOf(key); !slices.Contains(materialAlone, word) {
			out = append(out, word)
		}
	}
	return out
}()

// wordOf returns the last word of a key.
func wordOf(key string) string { return key[strings.LastIndex(key, ".")+1:] }

// notHabits are the keys and tables of one job alone.
var notHabits = []string{"title", "book", "as_built", "extra"}

// shopWords are the keys and tables of a shop file.
var shopWords = func() *vocabulary {
	keys := []string{"version"}
	for _, key := range jobWords.keys {
		if table, _, _ := strings.Cut(key, "."); !slices.Contains(notHabits, table) {
			keys = append(keys, key)
		}
	}
	add := func(table string, words ...string) {
		for _, word := range words {
			keys = append(keys, table+"."+word)
		}
	}
	add("material", "name", "kind", "thickness", "measured_on", "known", "stretch")
	for _, word := range sheetWords {
		if !slices.Contains(sheetAlone, word) {
			add("material", word)
		}
		add(sheetList, word)
	}
	keys = append(keys, ledgerKeys...)
	add("printer", "name")
	add("printer", wordsIn("print")...)
	add("cutter", "name")
	add("cutter", wordsIn("machine")...)
	add(patternTable, wordsIn("pattern")...)
	w := newVocabulary("shop file", keys)
	w.short = jobWords.short
	return w
}()

// Shop is a shop file that was read. A nil Shop is none.
type Shop struct {
	source    string
	data      []byte
	r         *reader
	unit      geometry.Unit
	materials []entry
	printers  []entry
	cutters   []entry
	offcuts   []offcut
	broken    bool // it can't be read at all
	nameless  bool // a name in it can't be taken
}

// entry is a material or a printer of a shop.
type entry struct {
	key    string // of its table: material[2]
	name   string
	kind   string // of a material
	sheets []string
}

// name is that of the shop file; "" without one.
func (s *Shop) name() string { return s.some().source }

// some is the shop, or one that has nothing.
func (s *Shop) some() *Shop {
	if s == nil {
		return &Shop{}
	}
	return s
}

// reader returns a reader of a job that can take what the shop has.
func (s *Shop) reader(source string, hasFile bool) *reader {
	r := newReader(source, hasFile, jobWords)
	r.shop = s
	return r
}

// value returns what a table of the shop sets.
func (s *Shop) value(table, word string) (value, bool) {
	v, ok := s.r.file[table+"."+word]
	return v, ok
}

// ReadShop reads a shop file of no more than 1 MiB; source is its name, for messages. An
// error of type Issues holds all that is wrong with what the shop itself has; what does not
// suit a job is told of the job. Beside such an error the Shop is returned with what is
// sound, so that a job can be read all the same, and the rest be told.
func ReadShop(source string, data []byte) (*Shop, error) {
	s := &Shop{source: source, data: data, r: newReader(source, true, shopWords)}
	s.r.shop = s
	if issues := s.r.readTOML(data); issues != nil {
		s.broken = true
		s.r.clear()
		return s, issues
	}
	if newer := s.r.newer(shopVersion); newer != nil {
		s.broken = true
		s.r.clear()
		return s, newer
	}
	s.r.units()
	s.unit = s.r.fileUnit
	s.materials = s.entries("material")
	s.printers, s.cutters = s.entries("printer"), s.entries("cutter")
	for i := range s.materials {
		s.material(&s.materials[i])
	}
	s.readLedger()
	s.r.invalid()
	return s, s.r.told().Err()
}

// newer refuses a file of a later version, of which nothing else is told.
func (r *reader) newer(latest int) Issues {
	v, ok := r.file["version"]
	if !ok {
		return nil
	}
	n := float(v.text)
	switch {
	case v.kind == numberKind && n > float64(latest) && n < 1e6:
		return Issues{v.at.issue(job.Problem{Value: v.text, Reason: "is of a later forel than this one", Fix: "use that one"})}
	case v.kind != numberKind || n < 1 || n != math.Trunc(n):
		r.reject(v, "is no version of a "+r.words.file, fmt.Sprintf("write version = %d", latest))
	}
	return nil
}

// entries returns the tables of a list that have a name of their own.
func (s *Shop) entries(list string) (out []entry) {
	first := map[string]value{}
	for _, key := range s.r.each(list) {
		e := entry{key: key}
		v, ok := s.value(e.key, "name")
		if !ok {
			s.r.refuse(s.r.at(s.r.tables[e.key], e.key+".name"), "missing", "give the name that jobs call it by")
			s.nameless = true
			continue
		}
		before := len(s.r.issues)
		s.r.title(e.key+".name", &e.name)
		e.name = strings.TrimSpace(e.name)
		folded := strings.ToLower(e.name)
		switch was, twice := first[folded]; {
		case len(s.r.issues) > before: // that is told
		case e.name == "":
			s.r.refuse(v.at, "is empty", "give the name that jobs call it by")
		case list == "material" && !aName.MatchString(e.name) || folded == "auto":
			s.r.reject(v, "can be read as a length", "begin the name with a letter: grey board 2 mm")
		case twice:
			s.r.reject(v, fmt.Sprintf("is a name that is there already, on line %d", was.at.line), "give it another")
		}
		if len(s.r.issues) > before {
			s.nameless = true
			continue
		}
		first[folded] = v
		out = append(out, e)
	}
	return out
}

// aName is a text that is no length, whatever the unit.
var aName = regexp.MustCompile(`^\p{L}`)

// Limits of the thickness of a material, both allowed; what it is used for has its own.
const (
	thinnest Length = 0.01
	thickest Length = 30
)

// material reads what a material tells of itself, and finds its sheets.
func (s *Shop) material(e *entry) {
	r := s.r
	if v, ok := s.value(e.key, "kind"); ok {
		before := len(r.issues)
		if e.kind = r.choice(v, job.Setting{Key: "kind", What: "what the material is", Words: materialKinds}); len(r.issues) > before {
			e.kind = "" // whatever takes it
		}
	} else {
		r.refuse(r.at(r.tables[e.key], e.key+".kind"), "missing", "give "+either(materialKinds))
	}
	if v, ok := s.value(e.key, "thickness"); ok {
		r.readings(v, "stock.thickness", "the thickness as measured, once or several times", thinnest, thickest, nil)
	}
	r.date(e.key + ".measured_on")
	for _, sheet := range r.each(sheetList) {
		if r.owner[sheet] != e.key {
			continue
		}
		before := len(r.issues)
		trial := s.trial(*e, sheet)
		trial.oneStock("stock")
		r.issues = append(r.issues, trial.issues...)
		if len(r.issues) == before {
			e.sheets = append(e.sheets, sheet)
		}
	}
}

// lendSheet sets the keys of a [[stock]], but for its name, to what a sheet of a material is.
func (s *Shop) lendSheet(to map[string]value, stock string, of geometry.Material, e entry, sheet string) {
	at := s.r.at(s.r.tables[sheet], sheet)
	to[stock+".material"] = value{kind: textKind, text: string(of), at: at}
	weighed := false
	for _, word := range []string{"grammage", "density"} {
		_, has := s.value(sheet, word)
		weighed = weighed || has
	}
	for _, word := range sheetWords {
		v, ok := s.value(sheet, word)
		if !ok && !slices.Contains(sheetAlone, word) && !(weighed && (word == "grammage" || word == "density")) {
			v, ok = s.value(e.key, word)
		}
		if (word == "count" || word == "length") && nothing.MatchString(v.text) {
			continue // there is none: what is needed is to be bought
		}
		if _, sheets := s.value(sheet, "size"); ok && !(sheets && (word == "sold_by" || word == "per")) { // these are of rolls
			to[stock+"."+word] = v
		}
	}
}

// nothing is no sheets, or no length of a roll.
var nothing = regexp.MustCompile(`^\s*[+-]?0+([.,]0+)?\s*[a-z]*\s*$`)

// inHand tells whether there is something of a sheet, or as much as is needed.
func (s *Shop) inHand(sheet string) bool {
	for _, word := range []string{"count", "length"} {
		if v, ok := s.value(sheet, word); ok && nothing.MatchString(v.text) {
			return false
		}
	}
	return true
}

// find returns the material or printer of a name.
func find(all []entry, name string) (entry, bool) {
	i := slices.IndexFunc(all, func(e entry) bool { return strings.EqualFold(e.name, name) })
	if i < 0 {
		return entry{}, false
	}
	return all[i], true
}

// namesOf returns what there is, such as of one of some kinds; no kinds are all.
func namesOf(all []entry, kinds ...string) (names []string) {
	for _, e := range all {
		if len(kinds) == 0 || slices.Contains(kinds, e.kind) {
			names = append(names, e.name)
		}
	}
	return names
}

// nearestNames says which of some names may have been meant: the nearest, or a few.
func nearestNames(written string, names []string) string {
	if near := closest(written, names, (len([]rune(written))+1)/3); near != "" {
		return "did you mean " + wording.Quote(near)
	}
	var quoted []string
	for _, n := range names {
		quoted = append(quoted, wording.Quote(n))
	}
	if len(quoted) == 0 {
		return ""
	}
	return "there is " + wording.Some(quoted, 6)
}

// Offer is what a shop has for one thing that a job is made from.
type Offer struct {
	Material  string   `json:"material"`            // the key of a job file that names it
	Thickness string   `json:"thickness,omitempty"` // the keys that tell the same of a material of no shop
	Name      string   `json:"name,omitempty"`
	Known     string   `json:"known,omitempty"`
	Names     []string `json:"names"` // of the materials that will do
}

// Offers returns what the shop has for each thing that a job can be made from, and its
// printers and machines; the shop may be nil.
func (s *Shop) Offers() (out []Offer) {
	all := s.some()
	names := func(of []entry, kinds ...string) []string { return append([]string{}, namesOf(of, kinds...)...) }
	for _, slot := range slots {
		out = append(out, Offer{slot.material, slot.thickness, slot.name, slot.beside("known"), names(all.materials, slot.takes()...)})
	}
	return append(out, Offer{Material: printerKey, Names: names(all.printers)}, Offer{Material: cutterKey, Names: names(all.cutters)})
}

// Named returns the names that a key of a job file can have of the shop: of its materials,
// printers or machines. The error is of type Issues; the shop may be nil.
func (s *Shop) Named(key string) ([]string, error) {
	var keys []string
	for _, o := range slices.Backward(s.Offers()) {
		if o.Material == key {
			return o.Names, nil
		}
		keys = append(keys, o.Material)
	}
	return nil, Issues{{Problem: job.Problem{Reason: fmt.Sprintf("%.40q takes no name of a shop file", key), Fix: "give one such as " + wording.Or(keys[:3])}}}
}

// Added returns the text of the shop file with a material more: what a job file, which data
// is, is made from under the key of its thickness. An error of type Issues tells what keeps
// it from being added.
func (s *Shop) Added(source string, data []byte, thickness string) ([]byte, error) {
	state, err := Read(source, data)
	if err != nil {
		return nil, err
	}
	refuse := func(key, reason, fix string) ([]byte, error) {
		return nil, place{source: source, name: key}.wrong(reason, fix)
	}
	i := slices.IndexFunc(slots, func(s slot) bool { return s.thickness == thickness })
	if i < 0 {
		return refuse(thickness, "is no thickness of a material", "give that of a material of the job")
	}
	slot := slots[i]
	measured := value{text: state.Values[thickness]}
	name, kind := state.Values[slot.name], slot.takes()[0]
	switch {
	case blank(measured):
		return refuse(thickness, "is not measured", "measure it first")
	case name == "":
		return refuse(slot.name, "is missing", "say what you call it")
	case s != nil && slices.Contains(namesOf(s.materials), name):
		return refuse(slot.name, "is in the shop file already", "choose it there, or give this another name")
	}
	if word := slot.beside("kind"); word != "" && state.Values[word] == "corrugated" {
		kind = corrugatedKind
	}
	text := fmt.Sprintf("\n[[material]]\nname = %s\nkind = %s\nthickness = %s\n", textTOML(name), textTOML(kind), measured.spelt(state.Unit))
	for _, word := range []string{"known", "stretch", "grammage"} {
		if v := state.Values[slot.beside(word)]; v != "" && word == "known" {
			text += "known = " + textTOML(v) + "\n"
		} else if v != "" {
			text += word + " = " + v + "\n"
		}
	}
	e := newEdit(s.begun())
	e.append(text)
	_, err = ReadShop(s.named(), e.data)
	return e.data, err
}

// named is the name of the shop file, or what one is called that is to be.
func (s *Shop) named() string { return cmp.Or(s.name(), ShopName) }

// Data is the text of the shop file; nil where there is none.
func (s *Shop) Data() []byte { return bytes.Clone(s.some().data) }

// begun is the text of the shop file, or what one begins with.
func (s *Shop) begun() []byte {
	if s == nil {
		return []byte("version = 1\n")
	}
	return s.Data()
}

//go:embed shop.toml
var shopStarter []byte

// ShopStarter returns a shop file to begin with, which is invented.
func ShopStarter() []byte { return bytes.Clone(shopStarter) }

// List returns the names of what the shop has, with what is known of each, a line each.
func (s *Shop) List() []byte {
	rows := [][]string{{"what", "name", "thickness", "sheets"}}
	for _, e := range s.materials {
		thickness := ""
		if v, ok := s.value(e.key, "thickness"); ok {
			if l, _, ok := s.r.measure(s.r.mean(v), "stock.thickness", "", thinnest, thickest, nil); ok {
				thickness = geometry.Rounding{Unit: s.unit}.Thickness(l)
			}
		}
		var sheets []string
		for _, sheet := range e.sheets {
			sheets = append(sheets, s.sheet(e, sheet).Has())
		}
		rows = append(rows, []string{e.kind, e.name, thickness, strings.Join(sheets, "; ")})
	}
	for _, o := range s.offcuts {
		if !o.used {
			rows = append(rows, []string{"offcut", o.of.name, "", fmt.Sprintf("%d: %s", o.number, o.size)})
		}
	}
	for _, e := range s.printers {
		rows = append(rows, []string{"printer", e.name, "", ""})
	}
	for _, e := range s.cutters {
		rows = append(rows, []string{"machine", e.name, "", ""})
	}
	return []byte(wording.Aligned(rows, func(int) bool { return false }))
}

// sheet returns a sheet of a material.
func (s *Shop) sheet(e entry, sheet string) stock.Stock {
	trial := s.trial(e, sheet)
	return trial.oneStock("stock")
}

// trial returns a reader with a sheet of a material as its one [[stock]].
func (s *Shop) trial(e entry, sheet string) *reader {
	r := s.lentReader()
	s.lendSheet(r.lent, "stock", geometry.Board, e, sheet)
	return r
}

// lentReader returns a reader of nothing but what the shop lends.
func (s *Shop) lentReader() *reader {
	r := s.reader(s.source, false)
	r.lent, r.fileUnit = map[string]value{}, s.unit
	return r
}
