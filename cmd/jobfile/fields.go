package jobfile

import (
	"regexp"
	"slices"
	"strings"
	"sync"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/kinds"
	"forel/geometry/plan"
	"forel/paper"
)

// Takes is what a key of a job file takes.
type Takes string

// What keys take.
const (
	TakesText     Takes = "text"
	TakesChoice   Takes = "choice" // one of a few words
	TakesLength   Takes = "length"
	TakesReadings Takes = "readings" // a length, measured at several places if need be
	TakesNumber   Takes = "number"
	TakesPercent  Takes = "percent"
	TakesWeight   Takes = "weight"
	TakesTime     Takes = "time" // how long something takes
	TakesSize     Takes = "size" // of a sheet: its name, or width x height
)

// Field is a key of a job file as a form shows it.
type Field struct {
	Key      string   `json:"key"`                // of a list that of the first: book.height
	Table    string   `json:"table"`              // that it stands in; "": at the top
	List     bool     `json:"list,omitempty"`     // there may be several such tables
	Kind     Takes    `json:"kind"`               //
	What     string   `json:"what"`               // what it is, in a sentence
	Says     string   `json:"says"`               // what a job file says of it
	Words    []string `json:"words,omitempty"`    // of a choice; of a size, names that it can be
	Min      float64  `json:"min"`                // of a length in millimetres, of a weight in grams
	Max      float64  `json:"max"`                // both allowed; both zero: not limited by itself
	Auto     bool     `json:"auto,omitempty"`     // "auto" stands for a length that suits
	Layers   bool     `json:"layers,omitempty"`   // several layers may be measured together: "4 layers 8.1 mm"
	Default  string   `json:"default"`            // as a maker types it; "": none, or nothing
	Required bool     `json:"required,omitempty"` // it has no default and must be given

	example string // as a new job file has it, in TOML
}

// length tells whether bare numbers in it have the unit of the file.
func (f Field) length() bool {
	return f.Kind == TakesLength || f.Kind == TakesReadings || f.Kind == TakesSize
}

// Section is a table of a job file, with what the file says of it.
type Section struct {
	Table  string  `json:"table"` // "": what stands at the top
	Says   string  `json:"says"`
	Fields []Field `json:"fields"`
}

// Fields returns every key of a job file in its order, with defaults round in a unit.
// Ranges and words are those of the settings that a job is read into, sentences those of
// the job file that has every setting. They are not to be changed.
func Fields(unit geometry.Unit) []Section {
	if unit == geometry.IN {
		return inchFields()
	}
	return metricFields()
}

var (
	metricFields = sync.OnceValue(func() []Section { return fieldsIn(geometry.MM) })
	inchFields   = sync.OnceValue(func() []Section { return fieldsIn(geometry.IN) })
)

func fieldsIn(unit geometry.Unit) []Section {
	t := starterText()
	var out []Section
	settings := settingsOf(unit)
	defaults := newReader("", true)
	defaults.readTOML(StarterFor(unit, paper.DefaultSetup().Sheet))
	add := func(key string) {
		table, _, dotted := strings.Cut(key, ".")
		if !dotted {
			table = ""
		}
		i := slices.IndexFunc(out, func(s Section) bool { return s.Table == table })
		if i < 0 {
			out, i = append(out, Section{Table: table, Says: t.tables[table]}), len(out)
		}
		f := Field{Key: key, Table: table, List: lists[table].most > 0, Says: t.keys[key], example: t.examples[key]}
		f.of(settings[key], unit)
		if v, ok := defaults.file[key]; ok && f.Default == "" && table != "book" && key != "title" {
			f.Default = v.typed()
		}
		out[i].Fields = append(out[i].Fields, f)
	}
	for _, key := range t.order {
		add(key)
	}
	for _, key := range knownKeys {
		if !slices.Contains(t.order, key) {
			add(key)
		}
	}
	return out
}

// of fills in what a setting tells.
func (f *Field) of(s job.Setting, unit geometry.Unit) {
	f.What, f.Words, f.Min, f.Max, f.Auto = s.What, s.Words, s.Min, s.Max, s.Auto
	f.Layers = layered(f.Key)
	switch {
	case f.Key == "print.paper" || f.Key == "stock.size" || f.Key == bedSize.Key:
		f.Kind = TakesSize
	case f.Table == "times" && s.Max > 0:
		f.Kind = TakesTime
	case f.Key == bookWeight.Key, f.Key == pack.Key, f.Key == atHand.Key:
		f.Kind = TakesWeight
	case s.Words != nil:
		f.Kind = TakesChoice
		f.Default = s.Words[0]
	case s.Length != nil:
		f.Kind = TakesLength
		if f.Default = geometry.Settable(*s.Length, unit); s.Auto && *s.Length == 0 {
			f.Default = "auto"
		}
	case s.Readings != nil:
		f.Kind = TakesReadings
	case s.Number != nil:
		f.Kind = TakesNumber
		if s.Percent {
			f.Kind = TakesPercent
		}
		f.Default = plain(*s.Number)
	default:
		f.Kind = TakesText
	}
	if slices.Contains([]string{"stock", "print", "offcuts", "machine", "order", "adhesive", "quote", "extra"}, f.Table) && f.Key != byWhat.Key { // no settings of a case: a new job file tells
		f.Default = ""
	}
	f.Required = slices.ContainsFunc(job.Dimensions, func(d job.Dimension) bool { return "book."+d.Key == f.Key && !d.Optional }) || f.Key == "stock.material"
}

// settingsOf returns what each key sets, as it is in a new job of the first kind that
// has it.
func settingsOf(unit geometry.Unit) map[string]job.Setting {
	out := map[string]job.Setting{}
	add := func(s job.Setting) {
		if _, ok := out[s.Key]; !ok {
			out[s.Key] = s
		}
	}
	for _, k := range kinds.All {
		for _, s := range k.New(unit).Settings() {
			add(s)
		}
	}
	add(kindWords)
	add(construction)
	add(ink)
	add(job.Setting{Key: "units", What: "what a bare number means", Words: []string{geometry.MM.String(), geometry.IN.String()}})
	for _, d := range job.Dimensions {
		add(job.Setting{Key: "book." + d.Key, What: d.What, Min: float64(d.Min), Max: float64(d.Max), Readings: new(job.Readings)})
	}
	add(bookWeight)
	for _, n := range kinds.Named() {
		add(job.Setting{Key: n.Key, What: "what you call the " + string(n.Material)})
	}
	for _, s := range slices.Concat(printSettings(), stockSettings, []job.Setting{keepOffcut}, new(Machine).settings(), termSettings, timesSettings()) {
		add(s)
	}
	return out
}

// fieldOf returns the field of a key; an example is in millimetres.
func fieldOf(key string) (Field, bool) {
	f, ok := fieldsByKey()[key]
	return f, ok
}

var fieldsByKey = sync.OnceValue(func() map[string]Field {
	out := map[string]Field{}
	for _, s := range Fields(geometry.MM) {
		for _, f := range s.Fields {
			out[f.Key] = f
		}
	}
	return out
})

// Unused returns the keys that other kinds of case have a use for, and this one not. Of a
// list they are those of its first table.
func Unused(k plan.Kind) (keys []string) {
	own := keysUsed(k)
	for _, other := range kinds.All {
		for _, key := range keysUsed(other) {
			if !slices.Contains(own, key) && !slices.Contains(keys, key) {
				keys = append(keys, key)
			}
		}
	}
	return keys
}

// keysUsed returns the keys that a kind has a use for, but for those of every job.
func keysUsed(k plan.Kind) []string {
	keys := keysOf(k.New(geometry.MM).Settings())
	for _, n := range k.Named {
		keys = append(keys, n.Key)
	}
	if k.Construction != "" {
		keys = append(keys, construction.Key)
	}
	return keys
}

// starterWords is what the job file with every setting says of tables and keys.
type starterWords struct {
	order    []string
	tables   map[string]string
	keys     map[string]string
	examples map[string]string // values, in TOML
}

var (
	keyLine   = regexp.MustCompile(`^(?:# )?([a-z_]+) = (.*)$`)
	tableLine = regexp.MustCompile(`^(?:# )?\[+([a-z_]+)\]+$`)
	moreWords = regexp.MustCompile(`^ {8,}# (.*)$`)
)

// starterText reads them.
var starterText = sync.OnceValue(func() starterWords {
	t := starterWords{tables: map[string]string{}, keys: map[string]string{}, examples: map[string]string{}}
	table, last := "", ""
	var above []string
	for _, line := range strings.Split(string(starter), "\n") {
		if m := tableLine.FindStringSubmatch(line); m != nil {
			if table = m[1]; t.tables[table] == "" {
				t.tables[table] = strings.Join(above, " ")
			}
			above, last = nil, ""
			continue
		}
		if m := keyLine.FindStringSubmatch(line); m != nil && Known(joined(table, m[1])) {
			key := joined(table, m[1])
			value, _ := newEdit([]byte(m[1] + " = " + m[2])).get(m[1])
			_, says, _ := strings.Cut(m[2][len(value):], "# ")
			if _, ok := t.examples[key]; !ok {
				t.order = append(t.order, key)
				t.examples[key] = value
				if says == "" && table == "" {
					says = strings.Join(above, " ")
				}
				t.keys[key] = says
				last = key
			}
			above = nil
			continue
		}
		if m := moreWords.FindStringSubmatch(line); m != nil && last != "" {
			t.keys[last] += " " + m[1]
			continue
		}
		if words, ok := strings.CutPrefix(line, "#"); ok {
			above = append(above, strings.TrimSpace(words))
		} else {
			if table == "" && t.tables[""] == "" {
				t.tables[""] = strings.Join(above, " ")
			}
			above = nil
		}
	}
	return t
})

func joined(table, key string) string {
	if table == "" {
		return key
	}
	return table + "." + key
}
