package jobfile

import (
	"slices"
	"strings"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/kinds"
)

// knownKeys are all the keys of a job file; those without a dot stand at the
// top, and book.* stands in each [[book]].
var knownKeys = func() []string {
	top, tables := []string{"title", "units"}, []string{"book.title"}
	add := func(key string) {
		if strings.Contains(key, ".") {
			tables = append(tables, key)
		} else {
			top = append(top, key)
		}
	}
	add(kindWords.Key)
	add(construction.Key)
	for _, f := range job.Dimensions {
		add("book." + f.Key)
	}
	add("book.weight")
	for _, k := range kinds.All {
		for _, s := range k.New(geometry.MM).Settings() {
			if !slices.Contains(tables, s.Key) && !slices.Contains(top, s.Key) {
				add(s.Key)
			}
		}
	}
	for _, key := range printKeys {
		add(key)
	}
	for _, n := range kinds.Named() {
		add(n.Key)
	}
	for _, key := range slices.Concat(timesKeys, stockKeys, keysOf(termSettings), []string{keepOffcut.Key}, machineKeys) {
		add(key)
	}
	return append(top, tables...)
}()

// Known tells whether a job file has a key, such as "board.thickness" "board.material", or board, which is short for it.
func Known(key string) bool { return slices.Contains(jobWords.keys, key) || jobWords.short[key] != "" }

// vocabulary is the keys and tables that a file can have.
type vocabulary struct {
	file   string // what it is: "job file"
	keys   []string
	tables []string
	short  map[string]string // keys that stand for another: board for board.material
}

// jobWords are those of a job file. Keys that name what a shop file has come after the
// others.
var jobWords = func() *vocabulary {
	w := &vocabulary{file: "job file", keys: slices.Clone(knownKeys), tables: knownTables, short: map[string]string{printerShort: printerKey, cutterShort: cutterKey}}
	w.keys = append(w.keys, printerKey, cutterKey)
	for _, s := range slots {
		w.keys = append(w.keys, s.material)
		if table, word, _ := strings.Cut(s.material, "."); word == "material" {
			w.short[table] = s.material
		}
	}
	return w
}()

// knownTables are all the tables of a job file in its order, book among them.
var knownTables = func() []string {
	var tables []string
	for _, key := range knownKeys {
		name, _, dotted := strings.Cut(key, ".")
		if dotted && !slices.Contains(tables, name) {
			tables = append(tables, name)
		}
	}
	return tables
}()
