package jobfile

import (
	"bytes"
	_ "embed"
	"regexp"
	"slices"
	"strings"

	"forel/geometry/job"
	"forel/geometry/kinds"
)

//go:embed short.toml
var short []byte

// New says what a new job file holds.
type New struct {
	Full    bool   // every setting; else those that each job is asked for
	Example bool   // the invented book; else what flags give, and empty what they don't
	Flags   []Flag // of the keys in NewKeys
}

// NewKeys are the keys that a new job file can be given.
var NewKeys = []string{"title", "units", "kind", "print.paper", "book.height", "book.width", "book.thickness"}

// Text returns the job file. A flag that can't be is refused.
func (n New) Text() ([]byte, error) {
	if issues := refusedFlags(n.Flags); len(issues) > 0 {
		return nil, issues
	}
	setup, unit, err := Print("", nil, n.Flags)
	if err != nil {
		return nil, err
	}
	full := newEdit(StarterFor(unit, setup.Sheet))
	e := full
	if !n.Full {
		e = newEdit(slices.Clone(short))
		kind := kindWords.Words[0]
		for _, f := range n.Flags {
			if f.Key == kindWords.Key {
				kind = f.Value
			}
		}
		k, _ := kinds.Find(kind, "")
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
	e.fill(n.Flags)
	return e.data, nil
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

// fill sets what flags give, in the way a job file has it.
func (e *edit) fill(flags []Flag) {
	for _, f := range flags {
		if f.Key != "units" { // it is there
			e.set(f.Key, typed(f.Key, f.Value))
		}
	}
}

// refusedFlags returns what is wrong with flags for a new job, nil where nothing is.
// What they leave out is no fault.
func refusedFlags(flags []Flag) Issues {
	_, _, err := FromFlags(flags)
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
// of an old job, with its comments, and the book is what flags give, or empty.
func Next(source string, old []byte, flags []Flag) ([]byte, error) {
	r := newReader(source, true)
	if issues := r.readTOML(old); issues != nil {
		return nil, issues
	}
	r.settings()
	if r.twice != nil {
		r.issues = append(r.issues, *r.twice)
	}
	// The old book may be empty: it is not kept.
	wrong := slices.DeleteFunc(r.issues, func(i Issue) bool { return strings.HasPrefix(i.Key, "book") })
	if len(wrong) > 0 {
		wrong.sort()
		return nil, wrong
	}
	if issues := refusedFlags(append([]Flag{{Name: "units", Key: "units", Value: r.fileUnit.String()}}, flags...)); len(issues) > 0 {
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
	again := newReader(source, true)
	if issues := again.readTOML(e.data); issues != nil || again.counts["book"] != 1 || len(again.file["book.height"].items) > 0 || !blank(again.file["book.height"]) {
		return nil, Issues{{Source: source, Line: r.tables["book"], Problem: job.Problem{Key: "book", Reason: "is written in a way that can't be emptied", Fix: "write [[book]] and below it height, width and thickness, a line each"}}}
	}
	e.fill(flags)
	return e.data, nil
}
