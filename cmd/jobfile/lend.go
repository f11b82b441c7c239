package jobfile

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"forel/geometry"
	"forel/geometry/kinds"
	"forel/geometry/plan"
	"forel/geometry/wording"
)

// lend takes from the shop what the job names, and the habits of the shop.
func (r *reader) lend() {
	r.lendHabits()
	r.lendPrinter()
	r.lendCutter()
	r.lendMaterials()
	covering := "side_paper.name" // of what covers the sides, or of the cloth all round
	if v, ok := r.get("covering"); ok && strings.EqualFold(strings.TrimSpace(v.text), "cloth") {
		covering = "cloth.name"
	}
	r.lendPattern("pattern", covering)
	r.lendPattern("lining_pattern", "lining.name")
}

// lendHabits takes the sections of a job file that the shop file has.
func (r *reader) lendHabits() {
	r.lent = map[string]value{}
	if r.shop == nil {
		return
	}
	for key, v := range r.shop.r.file {
		if key != "units" && !strings.HasPrefix(key, "stock") && slices.Contains(jobWords.keys, key) {
			r.lent[key] = v
		}
	}
}

// lendPrinter takes [print] from the printer that the job names.
func (r *reader) lendPrinter() {
	r.lendTable(printerKey, "printer", r.shop.some().printers, "overlap", "ink")
}

// lendCutter takes [machine] from the machine that the job names.
func (r *reader) lendCutter() { r.lendTable(cutterKey, "cutter", r.shop.some().cutters) }

// lendTable takes a table from what a key of it names. A habit is of another one, but for
// some words.
func (r *reader) lendTable(key, what string, all []entry, habits ...string) {
	v, ok := r.get(key)
	if !ok {
		return
	}
	delete(r.lent, key)
	table, _, _ := strings.Cut(key, ".")
	e, ok := r.named(v, what, "set the keys of "+bracketed(table), all)
	if !ok {
		return
	}
	for _, word := range wordsIn(table) {
		if was, ok := r.shop.value(e.key, word); ok {
			r.lent[table+"."+word] = was
		} else if !slices.Contains(habits, word) {
			delete(r.lent, table+"."+word)
		}
	}
	r.taken = append(r.taken, what+" "+e.name)
}

// named finds what a value names among what the shop has.
func (r *reader) named(v value, what, instead string, all []entry, kinds ...string) (e entry, ok bool) {
	name := strings.TrimSpace(unquote(strings.TrimSpace(v.text)))
	switch e, ok = find(all, name); {
	case v.kind != textKind:
		r.reject(v, "is no name of a "+what, "give one of the shop file, in quotes, or "+instead)
	case name == "":
		r.refuse(v.at, "is empty", "give the name of a "+what+" of the shop file, or leave it out")
	case ok:
		return e, true
	case what == "material" && !aName.MatchString(name):
		r.reject(v, "is no name of a "+what, "give one of the shop file, or "+instead)
	case r.shop == nil:
		r.reject(v, "is to be in a shop file, and there is none", "put "+ShopName+" beside the job, name it with --shop, or "+instead)
	case r.shop.broken || r.shop.nameless: // that is told, and may be the reason
	default:
		fix := nearestNames(name, namesOf(all, kinds...))
		if fix == "" {
			fix = "write [[" + what + "]] there, with this name"
		}
		r.reject(v, "is no "+what+" of "+r.shop.source, fix)
	}
	return entry{}, false
}

// unquote takes quotes away that a shell left.
func unquote(text string) string {
	if len(text) > 1 && text[0] == '"' && text[len(text)-1] == '"' {
		return text[1 : len(text)-1]
	}
	return text
}

// lendMaterials takes what the job is made from.
func (r *reader) lendMaterials() {
	r.slots = map[string]entry{}
	for _, s := range slots {
		v, ok := r.reference(s)
		if !ok {
			continue
		}
		instead := "set " + s.thickness
		if v.at.name == s.thickness { // it stands there itself
			instead = "give its thickness"
		}
		e, ok := r.named(v, "material", instead, r.shop.some().materials, s.takes()...)
		if !ok {
			continue
		}
		if e.kind != "" && !slices.Contains(s.takes(), e.kind) {
			fix := nearestNames("", namesOf(r.shop.materials, s.takes()...))
			if fix == "" {
				fix = "give one that is " + wording.Or(s.takes())
			}
			kind := r.shop.r.file[e.key+".kind"].at
			r.reject(v, fmt.Sprintf("is %s (%s:%d), and this takes %s", e.kind, kind.source, kind.line, wording.Or(s.takes())), fix)
			continue
		}
		r.lendMaterial(s, e)
	}
}

// aReference is a text where a length could stand that can't be meant for one.
var aReference = regexp.MustCompile(`^"?\p{L}`)

// reference returns the value that names the material of a slot, and takes it away where it
// stands in the place of a length. A habit of the shop does not hold where the job tells
// itself what it is made from.
func (r *reader) reference(s slot) (v value, ok bool) {
	if v, ok = r.get(s.material); ok && !v.at.shop {
		return v, true
	}
	if wordOf(s.thickness) != "thickness" {
		for _, from := range []map[string]value{r.flags, r.file, r.lent} {
			v, ok := from[s.thickness]
			if !ok {
				continue
			}
			text := strings.TrimSpace(v.text)
			if v.kind == textKind && aReference.MatchString(text) && !strings.EqualFold(text, "auto") {
				delete(from, s.thickness)
				return v, true
			}
		}
	}
	said := func(key string) bool {
		_, flag := r.flags[key]
		_, file := r.file[key]
		return flag || file
	}
	if ok && !said(s.thickness) && !said(s.name) {
		return v, true
	}
	return value{}, false
}

// lendMaterial sets what a slot is to what a material of the shop is.
func (r *reader) lendMaterial(s slot, e entry) {
	set := func(key string, v value, ok bool) {
		if key == "" {
			return
		}
		if delete(r.lent, key); ok {
			r.lent[key] = v
		}
	}
	named, _ := r.shop.value(e.key, "name")
	named.text = e.name
	set(s.name, named, true)
	thickness, measured := r.shop.value(e.key, "thickness")
	known, ok := r.shop.value(e.key, "known")
	if !ok && thickness.kind == listKind {
		known, ok = value{kind: textKind, text: "measured", at: thickness.at}, true
	}
	set(s.beside("known"), known, ok)
	set(s.thickness, r.mean(thickness), measured)
	for _, word := range []string{"stretch", "grammage"} {
		v, ok := r.shop.value(e.key, word)
		set(s.beside(word), v, ok)
	}
	if key := s.beside("kind"); key != "" {
		word := map[string]string{cardKind: "solid", corrugatedKind: "corrugated"}[e.kind]
		kind, _ := r.shop.value(e.key, "kind")
		kind.text = word
		set(key, kind, word != "")
	}
	r.slots[s.name] = e
	r.taken = append(r.taken, strings.TrimRight(strings.ReplaceAll(strings.TrimSuffix(s.name, "name"), "_", " "), ". ")+" "+e.name)
}

// mean returns several readings of a thickness as one, to a micrometre; what can't be read
// is left as it is, to be told.
func (r *reader) mean(v value) value {
	if v.kind != listKind || len(v.items) == 0 {
		return v
	}
	var sum Length
	for _, item := range v.items {
		l, _, ok := r.measure(item, "stock.thickness", "", thinnest, thickest, nil)
		if !ok {
			return item
		}
		sum += l
	}
	mean := (sum / Length(len(v.items))).MM()
	return value{kind: textKind, text: strconv.FormatFloat(mean, 'f', 3, 64) + " mm", at: v.at}
}

// lendPattern takes a table of a pattern from the material of a slot.
func (r *reader) lendPattern(table, slot string) {
	e, ok := r.slots[slot]
	if !ok {
		return
	}
	for _, word := range wordsIn(table) {
		delete(r.lent, table+"."+word)
		if v, ok := r.shop.value(e.key, "pattern."+word); ok {
			r.lent[table+"."+word] = v
		}
	}
}

// strayMaterials tells of materials that the job names and its kind has no use for.
func (r *reader) strayMaterials(of plan.Kind) {
	for _, s := range slots {
		v, named := r.get(s.material)
		has := func(k plan.Kind) bool {
			return slices.ContainsFunc(k.Named, func(n plan.Named) bool { return n.Key == s.name })
		}
		if !named || v.at.shop || has(of) {
			continue
		}
		r.foreign(s.material, v, of, kinds.All[slices.IndexFunc(kinds.All, has)])
	}
}

// lendStock takes the sheets of the materials that the job is made from, and other [[stock]]
// of the shop, but for materials of which the job has stock of its own.
func (r *reader) lendStock(of plan.Kind) {
	if r.shop == nil {
		return
	}
	r.strayMaterials(of)
	own := map[geometry.Material]bool{}
	first := r.ownStock()
	for n := range first {
		if v, ok := r.get(numbered("stock", n+1) + ".material"); ok {
			own[geometry.Material(strings.ToLower(strings.TrimSpace(v.text)))] = true
		}
	}
	r.lentStock, r.piles = 0, map[string]string{}
	lent := map[string]bool{}
	next := func() string {
		r.lentStock++
		return numbered("stock", first+r.lentStock)
	}
	for _, n := range of.Named {
		e, ok := r.slots[n.Key]
		if !ok || own[n.Material] || n.Material == geometry.Corrugated != (e.kind == corrugatedKind) {
			continue
		}
		named, _ := r.get(n.Key)
		thickness, thick := r.get(n.Thickness())
		pile := fmt.Sprint(e.key, thickness.text, thickness.at.shop)
		if lent[pile] { // it is there once, whatever it is used for
			continue
		}
		lent[pile] = true
		finish := func(to, key string) {
			r.piles[to], r.lent[to+".name"] = key, named
			if l, _, ok := r.measure(thickness, "stock.thickness", "", leastStock, mostStockThick, nil); thick && ok && l > 0 {
				r.lent[to+".thickness"] = thickness
			}
		}
		for _, o := range r.shop.offcuts {
			if !o.used && o.of.key == e.key {
				to := next()
				r.shop.lendOffcut(r.lent, to, n.Material, o)
				finish(to, o.key)
			}
		}
		for _, sheet := range r.shop.sheetsOf(e) {
			to := next()
			r.shop.lendSheet(r.lent, to, n.Material, e, sheet)
			finish(to, sheet)
		}
	}
	for _, from := range r.shop.r.each("stock") {
		if v, ok := r.shop.value(from, "material"); ok && own[geometry.Material(strings.ToLower(strings.TrimSpace(v.text)))] {
			continue
		}
		to := next()
		r.lent[to+".material"] = value{kind: otherKind, at: r.shop.r.at(r.shop.r.tables[from], from+".material")}
		for _, key := range stockKeys {
			if v, ok := r.shop.value(from, wordOf(key)); ok {
				r.lent[to+"."+wordOf(key)] = v
			}
		}
		if r.lent[to+".material"].kind == otherKind {
			r.refuse(r.lent[to+".material"].at, "missing", "give "+either(materials.Words))
			r.lentStock--
		}
	}
}
