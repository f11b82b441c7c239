package recordfile

import (
	"bytes"
	"cmp"
	"errors"
	"fmt"
	"maps"
	"math"
	"regexp"
	"slices"
	"strings"
	"time"

	"github.com/pelletier/go-toml/v2"

	"forel/cmd/jobfile"
	"forel/geometry"
	"forel/geometry/fit"
	"forel/geometry/job"
	"forel/geometry/wording"
)

// Parse reads a record; source is its name. An error is of type jobfile.Issues: all that
// is wrong. Beside it the Record holds no more than its name.
func Parse(source string, data []byte) (Record, error) {
	p := parser{source: source}
	none := Record{Source: source}
	if len(data) > MostBytes {
		p.tell(0, "", "larger than 1 MiB", "give a record that forel record wrote")
		return none, p.bad
	}
	data = bytes.TrimPrefix(data, []byte("\ufeff"))
	var all table
	if err := toml.Unmarshal(data, &all); err != nil {
		p.unreadable(err)
		return none, p.bad
	}
	p.find(data)
	if v, ok := all["version"].(int64); ok && v > Version {
		p.tell(p.lines["version"], "version", fmt.Sprintf("%d is newer than this forel, which reads up to %d", v, Version), "use a newer forel")
		return none, p.bad
	}
	r := p.record(all)
	if p.bad != nil {
		slices.SortStableFunc(p.bad, func(a, b jobfile.Issue) int { return cmp.Compare(a.Line, b.Line) })
		return none, p.bad
	}
	return r, nil
}

// table is what a table of a record sets.
type table = map[string]any

// parser reads a record and notes what is wrong.
type parser struct {
	source string
	lines  map[string]int // where tables and keys stand, such as measured[2] and measured[2].key
	bad    jobfile.Issues
}

func (p *parser) tell(line int, key, reason, fix string) {
	p.bad = append(p.bad, jobfile.Issue{Source: p.source, Line: line, Problem: job.Problem{Key: key, Reason: reason, Fix: fix}})
}

// unreadable tells what keeps the file from being read at all.
func (p *parser) unreadable(err error) {
	reason := wording.OneLine(strings.TrimPrefix(err.Error(), "toml: "))
	var at *toml.DecodeError
	if errors.As(err, &at) {
		line, _ := at.Position()
		p.tell(line, strings.Join(at.Key(), "."), reason, "write it as forel record does: look at the quotes, brackets and equals sign of this line, and that each key stands once")
		return
	}
	p.tell(0, "", reason, "give a record that forel record wrote")
}

var (
	header = regexp.MustCompile(`^\s*\[\[?\s*([a-z]+)\s*\]`)
	aKey   = regexp.MustCompile(`^\s*["']?([A-Za-z_-]+)["']?\s*=`)
)

// find notes on which lines tables and keys stand.
func (p *parser) find(data []byte) {
	p.lines = map[string]int{}
	counts, at := map[string]int{}, ""
	for n, line := range strings.Split(string(data), "\n") {
		if m := header.FindStringSubmatch(line); m != nil {
			counts[m[1]]++
			at = fmt.Sprintf("%s[%d]", m[1], counts[m[1]])
			p.lines[at], at = n+1, at+"."
		} else if m := aKey.FindStringSubmatch(line); m != nil && p.lines[at+m[1]] == 0 {
			p.lines[at+m[1]] = n + 1
		}
	}
}

// wrong tells what is wrong with a key of a table.
func (p *parser) wrong(at, key, reason, fix string) {
	p.tell(cmp.Or(p.lines[at+"."+key], p.lines[at]), at+"."+key, reason, fix)
}

// record reads what the file sets.
func (p *parser) record(all table) Record {
	r := Record{Source: p.source}
	top := func(key, reason, fix string) { p.tell(p.lines[key], key, reason, fix) }
	switch v := all["version"].(type) {
	case nil:
		top("version", "missing", "write version = 1 at the top")
	case int64:
		if v < 1 {
			top("version", fmt.Sprintf("%d is no version of a record", v), "write version = 1")
		}
	default:
		top("version", shown(v)+" is no version of a record", "write version = 1")
	}
	for key, to := range map[string]*string{"title": &r.Title, "kind": &r.Kind} {
		if v, ok := all[key]; ok {
			if *to, ok = v.(string); !ok {
				top(key, shown(v)+" is no text", "write it in quotes")
			}
		}
	}
	if v, ok := all["units"]; ok && v != any(geometry.MM.String()) {
		top("units", shown(v)+" is not what lengths of a record are in", `write units = "mm", and a length in another unit with it in quotes, such as "9 1/4 in"`)
	}
	for _, key := range slices.Sorted(maps.Keys(all)) {
		if !slices.Contains([]string{"version", "title", "kind", "units", "measured", "done"}, key) {
			top(key, "unknown key", "leave it out")
		}
	}
	p.done(all)
	changed := p.beforeDone(all)
	for i, b := range p.list(all, "measured") {
		t := p.taken(fmt.Sprintf("measured[%d]", i+1), b)
		t.Changed = i >= changed
		r.Taken = append(r.Taken, t)
	}
	return r
}

// list returns the tables of a list.
func (p *parser) list(all table, name string) (out []table) {
	v, ok := all[name]
	if !ok {
		return nil
	}
	items, ok := v.([]any)
	if !ok {
		p.tell(cmp.Or(p.lines[name], p.lines[name+"[1]"]), name, "is no list of tables", "write [["+name+"]] and its keys below it")
	}
	for i, item := range items {
		b, ok := item.(table)
		if !ok {
			p.tell(p.lines[name], fmt.Sprintf("%s[%d]", name, i+1), "is no table", "write [["+name+"]] and its keys below it")
		}
		out = append(out, b)
	}
	return out
}

// done holds what was done to the case against its limits.
func (p *parser) done(all table) {
	for i, d := range p.list(all, "done") {
		at := fmt.Sprintf("done[%d]", i+1)
		p.unknown(at, d, "what", "date")
		p.text(at, d, "what")
		p.date(at, d)
	}
}

// beforeDone returns how many lengths were taken down before anything was done to the case.
func (p *parser) beforeDone(all table) int {
	first, ok := p.lines["done[1]"]
	n := 0
	for ; p.lines[fmt.Sprintf("measured[%d]", n+1)] > 0; n++ {
		if ok && p.lines[fmt.Sprintf("measured[%d]", n+1)] > first {
			return n
		}
	}
	if ok {
		return n
	}
	return math.MaxInt
}

// unknown tells of keys that a table does not have.
func (p *parser) unknown(at string, b table, known ...string) {
	for _, key := range slices.Sorted(maps.Keys(b)) {
		if !slices.Contains(known, key) {
			p.wrong(at, key, "unknown key", "leave it out")
		}
	}
}

// taken reads a length that was taken down.
func (p *parser) taken(at string, b table) Taken {
	p.unknown(at, b, "key", "what", "sort", "date", "readings", "planned", "within", "mean", "deviation", "tight", "loose", "counts", "layers", "off", "plus_minus")
	t := Taken{Line: p.lines[at], Date: p.date(at, b), Mean: p.length(at, b, "mean"), SD: p.length(at, b, "deviation")}
	t.Quantity = fit.Quantity{Key: p.text(at, b, "key"), Name: wording.OneLine(p.text(at, b, "what")), Sort: fit.Sort(p.text(at, b, "sort")), Planned: p.length(at, b, "planned"),
		Counts: p.numbers(at, b, "counts"), Layers: map[string]Length{}, Tight: p.length(at, b, "tight"), Loose: p.length(at, b, "loose")}
	if k, ok := b["key"]; !ok || k == any("") {
		p.wrong(at, "key", "missing", `say what was measured, such as "play-height"`)
	}
	if t.Sort != fit.Layer && t.Sort != fit.Size && t.Sort != fit.Play {
		if _, ok := b["sort"].(string); ok || b["sort"] == nil {
			p.wrong(at, "sort", wording.Quote(string(t.Sort))+" is not known", "give layer, size or play")
		}
	}
	needed := []string{"planned", "mean", "deviation"}
	if t.Sort == fit.Play {
		needed = append(needed, "tight", "loose")
	}
	for _, key := range needed {
		if _, ok := b[key]; !ok {
			p.wrong(at, key, "missing", "put back what forel record wrote, or take the whole [[measured]] out")
		}
	}
	if t.SD < 0 {
		p.wrong(at, "deviation", "not a standard deviation", "give one in millimetres, zero or more")
	}
	if w, ok := b["within"].([]any); !ok || len(w) != 2 || !(number(w[0]) <= number(w[1])) || math.Abs(number(w[0]))+math.Abs(number(w[1])) > mostLength.MM() {
		p.wrong(at, "within", "not two lengths", "give the smallest and the largest that were expected, such as [1.2, 2.4]")
	} else {
		t.Low, t.High = Length(number(w[0])), Length(number(w[1]))
	}
	for k, v := range p.numbers(at, b, "layers") {
		t.Layers[k] = Length(v)
	}
	plusMinus := p.numbers(at, b, "plus_minus")
	for k, v := range p.numbers(at, b, "off") {
		t.Off = append(t.Off, fit.Off{Key: prefix + k, SD: Length(v), PlusMinus: Length(plusMinus[k])})
	}
	sortOff(t.Off)
	t.Readings = p.readings(at, b)
	return t
}

// readings reads what was measured.
func (p *parser) readings(at string, b table) (out []Length) {
	v, ok := b["readings"]
	items, list := v.([]any)
	if !ok || list && len(items) == 0 {
		p.wrong(at, "readings", "missing", "give what was measured, such as [227.8, 227.5]")
	} else if !list {
		p.wrong(at, "readings", shown(v)+" is no list of lengths", "write them in brackets, such as [227.8, 227.5]")
	}
	for _, item := range items {
		l, err := lengthOf(item)
		if err != nil {
			p.wrong(at, "readings", err.Error(), "give lengths in millimetres, or with a unit in quotes")
			continue
		}
		out = append(out, l)
	}
	return out
}

// mostLength is longer than anything that is measured, in mm.
const mostLength Length = 1e4

// length reads a length of a table in millimetres; one that is not there is 0.
func (p *parser) length(at string, b table, key string) Length {
	v, ok := b[key]
	if !ok {
		return 0
	}
	n := number(v)
	if !(math.Abs(n) < mostLength.MM()) {
		p.wrong(at, key, shown(v)+" is no length in millimetres", "leave what forel record wrote, such as 227.3")
		return 0
	}
	return Length(n)
}

// numbers reads a table of numbers by name.
func (p *parser) numbers(at string, b table, key string) map[string]float64 {
	out := map[string]float64{}
	v, ok := b[key]
	if !ok {
		return out
	}
	all, ok := v.(table)
	if !ok {
		p.wrong(at, key, shown(v)+" is no table of numbers", "leave what forel record wrote, such as {board = 1.0}")
	}
	for _, k := range slices.Sorted(maps.Keys(all)) {
		if out[k] = number(all[k]); !(math.Abs(out[k]) < 1e3) {
			p.wrong(at, key, "out of range at "+wording.Quote(k), "leave what forel record wrote")
		}
	}
	return out
}

// text reads a text of a table; one that is not there is empty.
func (p *parser) text(at string, b table, key string) string {
	v, ok := b[key]
	s, isText := v.(string)
	if ok && !isText {
		p.wrong(at, key, shown(v)+" is no text", "write it in quotes")
	}
	return s
}

// date reads the day of a table, in quotes or without.
func (p *parser) date(at string, b table) string {
	day, bare := b["date"].(toml.LocalDate)
	if bare {
		return day.String()
	}
	s := p.text(at, b, "date")
	if _, err := time.Parse(time.DateOnly, s); s != "" && err != nil {
		p.wrong(at, "date", wording.Quote(s)+" is no day", "write it as year-month-day, such as 2026-05-02")
	}
	return s
}

// number returns a number of TOML; what is none is not a number.
func number(v any) float64 {
	switch v := v.(type) {
	case float64:
		return v
	case int64:
		return float64(v)
	}
	return math.NaN()
}

// shown writes a value as it may stand in a message.
func shown(v any) string {
	switch v := v.(type) {
	case string:
		return wording.Quote(v)
	case []any:
		return "a list"
	case table:
		return "a table"
	}
	return wording.Shorten(fmt.Sprint(v))
}
