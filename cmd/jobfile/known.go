package jobfile

import (
	"slices"
	"strings"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/kinds"
	"forel/paper/quote"
)

// settingsOf returns what each key of a job file sets, as it is in a new job of the first
// kind that has it: those without a dot, which stand at the top, before all others.
func settingsOf(unit geometry.Unit) (all job.Settings) {
	all = job.Settings{{Key: "title"}, {Key: "units", What: "what a bare number means", Words: []string{geometry.MM.String(), geometry.IN.String()}}, kindWords, construction, {Key: "book.title"}}
	for _, d := range job.Dimensions {
		all = append(all, job.ReadingsOf("book."+d.Key, d.What, float64(d.Min), float64(d.Max), new(job.Readings)))
	}
	all = append(all, bookWeight)
	for _, k := range kinds.All {
		all = append(all, k.New(unit).Settings()...)
	}
	for _, n := range kinds.Named() {
		all = append(all, job.Setting{Key: n.Key, What: "what you call the " + string(n.Material)})
	}
	all = slices.Concat(all, settingsIn(new(reader).fileKeys(new(File))), stockSettings, settingsIn(extraKeys(new(quote.Extra))))
	seen := map[string]bool{}
	all = slices.DeleteFunc(all, func(s job.Setting) bool {
		was := seen[s.Key]
		seen[s.Key] = true
		return was
	})
	dots := func(s job.Setting) int { return min(strings.Count(s.Key, "."), 1) }
	slices.SortStableFunc(all, func(a, b job.Setting) int { return dots(a) - dots(b) })
	return all
}

// knownKeys are all the keys of a job file; book.* stands in each [[book]].
var knownKeys = keysOf(settingsOf(geometry.MM))

// wordsIn returns the keys of a table, without it.
func wordsIn(table string) (words []string) {
	for _, key := range knownKeys {
		if word, ok := strings.CutPrefix(key, table+"."); ok {
			words = append(words, word)
		}
	}
	return words
}

// Known tells whether a job file has a key, such as "board.thickness" "board.material", or board, which is short for it.
func Known(key string) bool { return slices.Contains(jobWords.keys, key) || jobWords.short[key] != "" }

// vocabulary is the keys and tables that a file can have.
type vocabulary struct {
	file   string // what it is: "job file"
	keys   []string
	tables []string
	short  map[string]string // keys that stand for another: board for board.material
}

// newVocabulary returns that of a file with these keys, and the tables that they stand in.
func newVocabulary(file string, keys []string) *vocabulary {
	w := &vocabulary{file: file, keys: keys}
	for _, key := range keys {
		if dot := strings.LastIndex(key, "."); dot > 0 && !slices.Contains(w.tables, key[:dot]) {
			w.tables = append(w.tables, key[:dot])
		}
	}
	return w
}

// jobWords are those of a job file. Keys that name what a shop file has come after the
// others.
var jobWords = func() *vocabulary {
	keys, short := append(slices.Clone(knownKeys), printerKey, cutterKey), map[string]string{printerShort: printerKey, cutterShort: cutterKey}
	for _, s := range slots {
		keys = append(keys, s.material)
		if table, word, _ := strings.Cut(s.material, "."); word == "material" {
			short[table] = s.material
		}
	}
	w := newVocabulary("job file", keys)
	w.short = short
	return w
}()
