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
		path, at, end := keyOf(x)
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
	k, ok := e.key(name)
	return string(e.data[k.from:k.to]), ok
}

// key returns where a key stands.
func (e *edit) key(name string) (k keySpan, ok bool) {
	i := slices.IndexFunc(e.keys, func(k keySpan) bool { return k.name == name })
	if i < 0 {
		return keySpan{}, false
	}
	return e.keys[i], true
}

// table returns where a table stands.
func (e *edit) table(name string) (t tableSpan, ok bool) {
	i := slices.IndexFunc(e.tables, func(t tableSpan) bool { return t.name == name })
	if i < 0 {
		return tableSpan{}, false
	}
	return e.tables[i], true
}

// append adds text at the end, on a line of its own.
func (e *edit) append(text string) { e.insert(len(e.data), text) }

// insert adds text at an offset, on a line of its own.
func (e *edit) insert(at int, text string) {
	if at > 0 && e.data[at-1] != '\n' {
		text = "\n" + text
	}
	e.splice(at, at, text)
}

// set gives a key a value, written as in the file; a key that is not there is added
// to its table, or at the top. A comment behind the value stays in its column where
// there is room.
func (e *edit) set(name, written string) {
	if k, ok := e.key(name); ok {
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
	if !ok { // after the others at the top
		at := len(e.data)
		if len(e.tables) > 0 {
			at = e.tables[0].from
		}
		for _, k := range e.keys {
			if !strings.Contains(k.name, ".") {
				at = e.lineEnd(k.to)
			}
		}
		e.insert(at, table+" = "+written+"\n")
		return
	}
	if t, ok := e.table(table); ok {
		e.insert(t.to, key+" = "+written+"\n")
		return
	}
	at := len(e.data)
	of, _, later := strings.Cut(table, "[")
	for _, t := range e.tables {
		if first, _, _ := strings.Cut(t.name, "["); later && first == of {
			at = t.to // after the last of its list
		}
	}
	e.insert(at, "\n"+bracketed(of)+"\n"+key+" = "+written+"\n")
}

// remove takes a key out with its line.
func (e *edit) remove(name string) {
	if k, ok := e.key(name); ok {
		e.splice(k.start, e.lineEnd(k.to), "")
	}
}

// removeTable takes a table out, with what stands in it.
func (e *edit) removeTable(name string) {
	if t, ok := e.table(name); ok {
		e.splice(t.from, t.to, "")
	}
}

// swapTables lets two tables change places, each with what stands in it.
func (e *edit) swapTables(one, other string) {
	a, _ := e.table(one)
	b, _ := e.table(other)
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
func typed(key, text string) string {
	f, _ := fieldOf(key)
	v := flagValue(Flag{Key: key, Value: text}, place{})
	return v.each(func(one value) string {
		text := strings.TrimSpace(one.text)
		if f.Kind != TakesText && f.Kind != TakesChoice && f.Kind != TakesSize && number.MatchString(text) {
			return tidy(text)
		}
		return textTOML(text)
	})
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
