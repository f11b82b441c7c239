package jobfile

import (
	"strings"

	"forel/geometry/job"
)

// Tables is a file of lists of tables that is no job, such as a record: what it sets, each
// value with its line. It is TOML, read as job files are, and bare numbers are millimetres.
type Tables struct{ r *reader }

// ReadTables reads such a file of no more than 1 MiB; source is its name and what it is,
// such as "record", both for messages. All keys that it can have are given, measured.date for
// that of each [[measured]]. An error is of type Issues.
func ReadTables(source, what string, version int, keys []string, data []byte) (Tables, error) {
	r := newReader(source, true, newVocabulary(what, append([]string{"version"}, keys...)))
	if issues := r.readTOML(data); issues != nil {
		return Tables{r}, issues
	}
	if newer := r.newer(version); newer != nil {
		return Tables{r}, newer
	}
	return Tables{r}, nil
}

// Err returns all that is wrong with the file, as an error of type Issues.
func (t Tables) Err() error {
	t.r.invalid()
	return t.r.told().Err()
}

// Top returns what stands above all tables.
func (t Tables) Top() Table { return Table{r: t.r} }

// Each returns the tables of a list.
func (t Tables) Each(list string) (all []Table) {
	for _, name := range t.r.each(list) {
		all = append(all, Table{t.r, name + ".", t.r.tables[name]})
	}
	return all
}

// Table is one of Tables. What it is asked for and is not there is zero; what is there and
// can't be is told by Tables.Err.
type Table struct {
	r      *reader
	prefix string // of its keys
	Line   int    // where it begins
}

// Has tells whether a key is set.
func (t Table) Has(word string) bool { return t.r.has(t.prefix + word) }

// Refuse tells what is wrong with a key, or that it is missing, and what would do.
func (t Table) Refuse(word, reason, fix string) {
	at := t.r.at(t.Line, t.prefix+word)
	if v, ok := t.r.get(at.name); ok {
		at = v.at
	}
	t.r.refuse(at, reason, fix)
}

// Text reads any text.
func (t Table) Text(word string) string {
	v, ok := t.r.get(t.prefix + word)
	if ok && v.kind != textKind {
		t.r.reject(v, "is no text", "write it in quotes")
		return ""
	}
	return v.text
}

// Choice reads one of a few words; what is told of a wrong one.
func (t Table) Choice(word, what string, words ...string) string {
	if v, ok := t.r.get(t.prefix + word); ok {
		return t.r.choice(v, job.Setting{What: what, Words: words})
	}
	return ""
}

// Date reads a day, in quotes or without.
func (t Table) Date(word string) string { return t.r.date(t.prefix + word) }

// Number reads a number between two limits, both allowed; what is told of a wrong one.
func (t Table) Number(word, what string, least, most float64) float64 {
	if v, ok := t.r.get(t.prefix + word); ok {
		return t.r.number(v, job.Setting{What: what, Min: least, Max: most}, false)
	}
	return 0
}

// Numbers reads numbers by name, written within braces, each between two limits.
func (t Table) Numbers(word, what string, least, most float64) map[string]float64 {
	all := map[string]float64{}
	v, ok := t.r.get(t.prefix + word)
	if ok && (v.kind != tableKind || v.items == nil) {
		t.r.reject(v, "does not stand in braces", "write numbers by name, such as {board = 1.0}")
		return all
	}
	for _, item := range v.items {
		name := strings.TrimPrefix(item.at.name, v.at.name+".")
		all[name] = t.r.number(item, job.Setting{What: what, Min: least, Max: most}, false)
	}
	return all
}

// Lengths reads lengths between two limits; what is told of a wrong one.
func (t Table) Lengths(word, what string, least, most Length) []Length {
	if v, ok := t.r.get(t.prefix + word); ok {
		return t.r.readings(v, t.prefix+word, what, least, most, nil)
	}
	return nil
}
