package jobfile

import (
	"bytes"
	"encoding/json"
	"regexp"
	"slices"
	"strings"
	"unicode/utf8"

	"github.com/pelletier/go-toml/v2/unstable"
)

// edit changes the text of a job file key by key. All else stays as it was written:
// the order, the comments, what is left out.
type edit struct {
	data   []byte
	keys   []keySpan
	tables []tableSpan
}

// keySpan is where a key with its value stands.
type keySpan struct {
	name     string // as messages have it: book.height, book[2].height
	start    int    // of its line
	from, to int    // its value
}

// tableSpan is where a table stands, from its header to the end of its last line.
type tableSpan struct {
	name     string // book, book[2]
	from, to int
}

// newEdit reads where everything stands in a file that is sound TOML.
func newEdit(data []byte) *edit {
	e := &edit{data: data}
	e.index()
	return e
}

func (e *edit) index() {
	e.keys, e.tables = nil, nil
	counts := map[string]int{}
	var p unstable.Parser
	p.Reset(e.data)
	table := ""
	for p.NextExpression() {
		x := p.Expression()
		var path []string
		at, end := -1, 0 // of the key
		for it := x.Key(); it.Next(); {
			raw := it.Node().Raw
			if at < 0 {
				at = int(raw.Offset)
			}
			end = int(raw.Offset + raw.Length)
			path = append(path, string(it.Node().Data))
		}
		start := bytes.LastIndexByte(e.data[:at], '\n') + 1
		if x.Kind != unstable.KeyValue {
			table = dotted(path)
			counts[table]++
			table = numbered(table, counts[table])
			e.tables = append(e.tables, tableSpan{table, start, e.lineEnd(at)})
			continue
		}
		name := dotted(path)
		if table != "" {
			name = table + "." + name
		}
		from := end + bytes.IndexByte(e.data[end:], '=') + 1
		from += len(e.data[from:]) - len(bytes.TrimLeft(e.data[from:], " \t"))
		to := int(x.Raw.Offset) + len(bytes.TrimRight(p.Raw(x.Raw), " \t\r\n"))
		e.keys = append(e.keys, keySpan{name, start, from, to})
		if n := len(e.tables); n > 0 {
			e.tables[n-1].to = e.lineEnd(to)
		}
	}
}

// lineEnd returns where the line of an offset ends, its line break with it.
func (e *edit) lineEnd(at int) int {
	if n := bytes.IndexByte(e.data[at:], '\n'); n >= 0 {
		return at + n + 1
	}
	return len(e.data)
}

// get returns a value as it is written, and whether it is there.
func (e *edit) get(name string) (string, bool) {
	i := slices.IndexFunc(e.keys, func(k keySpan) bool { return k.name == name })
	if i < 0 {
		return "", false
	}
	return string(e.data[e.keys[i].from:e.keys[i].to]), true
}

// set gives a key a value, written as in the file; a key that is not there is added
// to its table, or at the top. A comment behind the value stays in its column where
// there is room.
func (e *edit) set(name, written string) {
	if i := slices.IndexFunc(e.keys, func(k keySpan) bool { return k.name == name }); i >= 0 {
		k := e.keys[i]
		rest := e.data[k.to:]
		if gap := len(rest) - len(bytes.TrimLeft(rest, " ")); gap > 0 && bytes.HasPrefix(rest[gap:], []byte("#")) {
			was := e.data[k.from:k.to]
			was = was[bytes.LastIndexByte(was, '\n')+1:]
			written += strings.Repeat(" ", max(gap+utf8.RuneCount(was)-utf8.RuneCountInString(written), 1))
			k.to += gap
		}
		e.splice(k.from, k.to, written)
		return
	}
	table, key, ok := strings.Cut(name, ".")
	if !ok { // before all else that is set
		at := len(e.data)
		for _, k := range e.keys {
			at = min(at, k.start)
		}
		for _, t := range e.tables {
			at = min(at, t.from)
		}
		e.splice(at, at, table+" = "+written+"\n")
		return
	}
	if i := slices.IndexFunc(e.tables, func(t tableSpan) bool { return t.name == table }); i >= 0 {
		at := e.tables[i].to
		line := key + " = " + written + "\n"
		if at > 0 && e.data[at-1] != '\n' {
			line = "\n" + line
		}
		e.splice(at, at, line)
		return
	}
	at := len(e.data)
	of, _, later := strings.Cut(table, "[")
	for _, t := range e.tables {
		if first, _, _ := strings.Cut(t.name, "["); later && first == of {
			at = t.to // after the last of its list
		}
	}
	start := "\n"
	if at > 0 && e.data[at-1] != '\n' {
		start = "\n\n"
	}
	e.splice(at, at, start+bracketed(of)+"\n"+key+" = "+written+"\n")
}

// remove takes a key out with its line.
func (e *edit) remove(name string) {
	if i := slices.IndexFunc(e.keys, func(k keySpan) bool { return k.name == name }); i >= 0 {
		e.splice(e.keys[i].start, e.lineEnd(e.keys[i].to), "")
	}
}

// removeTable takes a table out, with what stands in it.
func (e *edit) removeTable(name string) {
	if i := slices.IndexFunc(e.tables, func(t tableSpan) bool { return t.name == name }); i >= 0 {
		e.splice(e.tables[i].from, e.tables[i].to, "")
	}
}

// swapTables lets two tables change places, each with what stands in it.
func (e *edit) swapTables(one, other string) {
	find := func(name string) tableSpan {
		return e.tables[slices.IndexFunc(e.tables, func(t tableSpan) bool { return t.name == name })]
	}
	a, b := find(one), find(other)
	if a.from > b.from {
		a, b = b, a
	}
	text := func(t tableSpan) string { return strings.TrimSuffix(string(e.data[t.from:t.to]), "\n") + "\n" }
	e.splice(a.from, b.to, text(b)+string(e.data[a.to:max(a.to, b.from)])+text(a))
}

func (e *edit) splice(from, to int, text string) {
	e.data = slices.Concat(e.data[:from], []byte(text), e.data[to:])
	e.index()
}

var number = regexp.MustCompile(`^(0|[1-9][0-9]*)(\.[0-9]+)?$`)

// typed writes the value of a key, as a maker types it, as a job file has it: readings in
// a list, a bare number bare where the key takes one, all else as text.
func typed(key, value string) string {
	f, _ := fieldOf(key)
	v := flagValue(Flag{Key: key, Value: value}, place{})
	one := func(text string) string {
		if text = strings.TrimSpace(text); f.Kind != TakesText && f.Kind != TakesChoice && f.Kind != TakesSize && number.MatchString(text) {
			return tidy(text)
		}
		return textTOML(text)
	}
	if v.kind != listKind {
		return one(v.text)
	}
	var items []string
	for _, i := range v.items {
		items = append(items, one(i.text))
	}
	return "[" + strings.Join(items, ", ") + "]"
}

// textTOML writes a text in quotes. What JSON escapes, TOML reads alike (RFC 8259, 7;
// TOML 1.0, String).
func textTOML(text string) string {
	var b strings.Builder
	j := json.NewEncoder(&b)
	j.SetEscapeHTML(false)
	if err := j.Encode(text); err != nil {
		panic("a text is always JSON: " + err.Error())
	}
	return strings.ReplaceAll(strings.TrimSuffix(b.String(), "\n"), "\x7f", `\u007f`) // which TOML wants escaped
}

// blank tells whether a value was left to be typed in.
func blank(v value) bool {
	return v.kind == textKind && strings.TrimSpace(v.text) == ""
}

// unwritten is the value of what is to be typed in.
const unwritten = `""`
