package jobfile

import (
	"bytes"
	_ "embed"
	"fmt"
	"regexp"
	"slices"
	"strings"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/kinds"
	"forel/geometry/plan"
	"forel/geometry/wording"
)

//go:embed short.toml
var short []byte

// New says what a new job file holds.
type New struct {
	Full    bool   // every setting; else those that each job is asked for
	Example bool   // the invented book; else what flags give, and empty what they don't
	Flags   []Flag // of the keys in NewKeys
	Shop    *Shop  // whose habits and materials it takes; nil: none
}

// NewKeys are the keys that a new job file can be given.
var NewKeys = []string{"title", "units", "kind", "print.paper", "book.height", "book.width", "book.thickness",
	"print.printer", "board.material", "lining.material", "cloth.material", "side_paper.material"}

// Text returns the job file. A flag that can't be is refused.
func (n New) Text() ([]byte, error) {
	if n.Shop != nil && n.Shop.unit != geometry.MM && !slices.ContainsFunc(n.Flags, func(f Flag) bool { return f.Key == "units" }) {
		n.Flags = append([]Flag{{Name: "--units", Key: "units", Value: n.Shop.unit.String()}}, n.Flags...)
	}
	if issues := refusedFlags(n.Shop, n.Flags); len(issues) > 0 {
		return nil, issues
	}
	setup, unit, err := n.Shop.Print("", nil, n.Flags)
	if err != nil {
		return nil, err
	}
	full := newEdit(StarterFor(unit, setup.Sheet))
	e := full
	kind := kindWords.Words[0]
	for _, f := range n.Flags {
		if f.Key == kindWords.Key {
			kind = f.Value
		}
	}
	k, _ := kinds.Find(kind, "")
	if !n.Full {
		e = newEdit(slices.Clone(short))
		e.only(k.New(unit).Settings())
		for _, k := range slices.Clone(e.keys) { // for this unit and sheet
			v, _ := full.get(k.name)
			e.set(k.name, v)
		}
		if n.Example {
			e.data = bytes.Replace(e.data, []byte("Type in what you measured."), []byte("Its book is invented: type in what you measured."), 1)
			e.index()
		}
	}
	for _, key := range []string{"title", "book.title", "book.height", "book.width", "book.thickness"} {
		if _, ok := e.get(key); !ok {
			continue
		}
		v := unwritten
		if n.Example {
			v, _ = full.get(key)
		}
		e.set(key, v)
	}
	if !n.Example {
		e.data = []byte(strings.NewReplacer("# invented: the name of this job", "# what you call this job", "# invented\nheight", "# of the book\nheight").Replace(string(e.data)))
		e.index()
	}
	if n.Shop != nil {
		e.offer(n.Shop, k, n.Flags)
	}
	bad := e.fill(k, n.Flags)
	return e.data, bad.Err()
}

var blankLines = regexp.MustCompile(`\n{3,}`)

// only takes out the tables of settings that a kind of job has not.
func (e *edit) only(settings job.Settings) {
	for _, t := range slices.Clone(e.tables) {
		if t.name == "book" || t.name == "print" || slices.ContainsFunc(settings, func(s job.Setting) bool { return strings.HasPrefix(s.Key, t.name+".") }) {
			continue
		}
		e.removeTable(t.name)
	}
	e.splice(0, len(e.data), blankLines.ReplaceAllString(string(e.data), "\n\n"))
}

// fill sets what flags give, in the way a job file of a kind has it.
func (e *edit) fill(k plan.Kind, flags []Flag) (bad Issues) {
	for _, f := range flags {
		i := slices.IndexFunc(slots, func(s slot) bool { return s.material == f.Key })
		switch {
		case f.Key == "units": // it is there
		case f.Key == printerKey:
			e.remove("print.paper")
			e.set(f.Key, textTOML(f.Value))
		case i >= 0 && !slices.ContainsFunc(k.Named, func(n plan.Named) bool { return n.Key == slots[i].name }):
			bad = append(bad, place{name: f.Name, flag: true}.issue(job.Problem{Value: wording.Quote(f.Value), Reason: "is for another kind of case: " + k.About + " has no " + f.Key, Fix: "leave it out, and name the material in the job file"}))
		case i >= 0:
			e.takeFrom(slots[i], "material = "+textTOML(f.Value)+"\n")
		default:
			e.set(f.Key, typed(f.Key, f.Value))
		}
	}
	return bad
}

// takeFrom writes a line in the place of those that tell what a slot is made of.
func (e *edit) takeFrom(s slot, line string) {
	for _, key := range []string{s.beside("known"), s.beside("stretch"), s.name} {
		e.remove(key)
	}
	if k, ok := e.key(s.thickness); ok {
		e.splice(k.start, e.lineEnd(k.to), line)
		return
	}
	e.set(s.material, strings.TrimSpace(strings.TrimPrefix(strings.TrimSpace(line), wordOf(s.material)+" =")))
}

// offer leaves out of a new job what the habits of a shop say, and tells what else the shop
// has for it; of what flags give nothing is told.
func (e *edit) offer(s *Shop, k plan.Kind, flags []Flag) {
	r := s.reader("", true)
	r.units()
	r.lend()
	given := func(key string) bool { return slices.ContainsFunc(flags, func(f Flag) bool { return f.Key == key }) }
	aside := func(text string) string { return fmt.Sprintf("%-34s # of %s", text, s.source) }
	for _, sl := range slots {
		_, there := e.get(sl.thickness)
		names := namesOf(s.materials, sl.takes()...)
		word := wordOf(sl.thickness)
		if word == "thickness" {
			word = "material"
		}
		for i, n := range names {
			names[i] = textTOML(n)
		}
		usual, habit := r.slots[sl.name]
		switch {
		case !there || len(names) == 0 || given(sl.material) || !slices.ContainsFunc(k.Named, func(n plan.Named) bool { return n.Key == sl.name }):
		case habit:
			e.takeFrom(sl, aside("# "+word+" = "+textTOML(usual.name))+"\n")
		default:
			line := aside("# "+word+" = "+names[0]) + ", in place of what it says of itself below"
			if more := names[1:]; len(more) > 0 {
				line += "\n" + strings.Repeat(" ", 34) + " # or " + wording.Or(more)
			}
			k, _ := e.key(sl.thickness)
			e.insert(k.start, line+"\n")
		}
	}
	for _, key := range slices.Clone(e.keys) {
		v, lent := r.lent[key.name]
		if !lent || given(key.name) || !v.at.shop {
			continue
		}
		if k, ok := e.key(key.name); ok {
			e.splice(k.start, e.lineEnd(k.to), aside("# "+wordOf(key.name)+" = "+r.spelt(key.name, v))+"\n")
		}
	}
}

// refusedFlags returns what is wrong with flags for a new job, nil where nothing is.
// What they leave out is no fault.
func refusedFlags(shop *Shop, flags []Flag) Issues {
	_, _, err := shop.Parse("", nil, flags...)
	issues, _ := err.(Issues)
	return slices.DeleteFunc(issues, func(i Issue) bool {
		return !slices.ContainsFunc(flags, func(f Flag) bool { return f.Name == i.Key })
	})
}

// Of a job, what is measured on its book or its case and may be left out.
var (
	ownTables = []string{"as_built"}
	ownKeys   = []string{"book.thickness_at_fore_edge", "book.weight"}
)

// Next returns a job file for the next book: materials, printer and habits are those
// of an old job, with its comments, and the book is what flags give, or empty. The shop may be nil.
func (s *Shop) Next(source string, old []byte, flags []Flag) ([]byte, error) {
	r := s.reader(source, true)
	if issues := r.readTOML(old); issues != nil {
		return nil, issues
	}
	r.settings()
	// The old book may be empty: it is not kept.
	r.issues = slices.DeleteFunc(r.issues, func(i Issue) bool { return strings.HasPrefix(i.Key, "book") })
	if wrong := r.told(); len(wrong) > 0 {
		return nil, wrong
	}
	if issues := refusedFlags(s, append([]Flag{{Name: "units", Key: "units", Value: r.fileUnit.String()}}, flags...)); len(issues) > 0 {
		return nil, issues
	}
	e := newEdit(slices.Clone(old))
	for n := job.MostBooks; n > 1; n-- {
		e.removeTable(numbered("book", n))
	}
	for _, t := range ownTables {
		e.removeTable(t)
	}
	for _, key := range ownKeys {
		e.remove(key)
	}
	if _, ok := e.get("book.title"); ok {
		e.set("book.title", unwritten)
	}
	for _, key := range []string{"title", "book.height", "book.width", "book.thickness"} {
		e.set(key, unwritten)
	}
	// Books written in a way that is not emptied key by key.
	again := newReader(source, true, jobWords)
	if issues := again.readTOML(e.data); issues != nil || again.counts["book"] != 1 || len(again.file["book.height"].items) > 0 || !blank(again.file["book.height"]) {
		return nil, r.at(r.tables["book"], "book").wrong("is written in a way that can't be emptied", "write [[book]] and below it height, width and thickness, a line each")
	}
	bad := e.fill(r.kind(), flags)
	return e.data, bad.Err()
}
