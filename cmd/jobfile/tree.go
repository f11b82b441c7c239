package jobfile

import (
	"bytes"
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"github.com/pelletier/go-toml/v2/unstable"

	"forel/geometry/job"
	"forel/geometry/wording"
)

// readTOML gathers what a job file sets, each with its line. What keeps the
// file from being read at all is returned; the rest is noted.
func (r *reader) readTOML(data []byte) Issues {
	data = bytes.TrimPrefix(data, []byte("\ufeff"))
	if issues := Unreadable(r.source, r.words.file, data); issues != nil {
		return issues
	}
	for {
		t := tree{reader: r}
		t.p.Reset(data)
		t.walk()
		err := t.p.Error()
		switch {
		case t.nodes > t.most():
			return Issues{{Source: r.source, Problem: job.Problem{Reason: "too many keys and values", Fix: "give a " + r.words.file}}}
		case err == nil:
			r.data = data
			return nil
		}
		slip := t.slip(err)
		r.slips = append(r.slips, slip)
		without, ok := pastSlip(data, slip.Line)
		if !ok || len(r.slips) == mostSlips {
			return r.slips
		}
		data = without
		r.clear()
	}
}

// tree walks the expressions of a TOML document.
type tree struct {
	*reader
	p     unstable.Parser
	nodes int
	table []string // that is being read

	counted, above int // up to where lines were counted, and how many
}

// walk goes through the document, to its end or to the first slip in it.
func (t *tree) walk() {
	skip := false // the content of a table that was refused
	for t.p.NextExpression() {
		e := t.p.Expression()
		if t.nodes += size(e); t.nodes > t.most() {
			return
		}
		path, line := t.key(e)
		switch {
		case e.Kind != unstable.KeyValue:
			t.table, skip = path, !t.header(path, e.Kind == unstable.ArrayTable, line)
		case !skip:
			t.put(slices.Concat(t.table, path), e.Value(), line)
		}
	}
}

// size counts a node with all below it.
func size(n *unstable.Node) int {
	total := 1
	for it := n.Children(); it.Next(); {
		total += size(it.Node())
	}
	return total
}

// key returns the key of a table or of a key with its value, and its line.
func (t *tree) key(n *unstable.Node) (path []string, line int) {
	path, from, _ := keyOf(n)
	return path, t.lineAt(from)
}

// keyOf returns the key of a table or of a key with its value, and where it stands.
func keyOf(n *unstable.Node) (path []string, from, to int) {
	for it := n.Key(); it.Next(); {
		raw := it.Node().Raw
		if path == nil {
			from = int(raw.Offset)
		}
		to = int(raw.Offset + raw.Length)
		path = append(path, string(it.Node().Data))
	}
	return path, from, to
}

// line returns the line that a node stands on.
func (t *tree) line(n *unstable.Node) int { return t.lineAt(int(n.Raw.Offset)) }

// lineAt returns the line of an offset. It counts on from the last one: the ledger of
// a shop file is long, and the parser counts from the top each time.
func (t *tree) lineAt(to int) int {
	if to < t.counted {
		t.counted, t.above = 0, 0
	}
	t.above += bytes.Count(t.p.Data()[t.counted:to], []byte("\n"))
	t.counted = to
	return t.above + 1
}

// header takes a [table] or [[table]] and tells whether to read what it holds.
func (t *tree) header(path []string, array bool, line int) bool {
	name := t.tableOf(path)
	switch {
	case name != dotted(path) || !slices.Contains(t.words.tables, name):
		t.misplaced(path, line)
		return false
	case name == patternTable:
		if t.counts["material"] == 0 {
			t.refuse(t.at(line, name), "a pattern of no material", "write it below its [[material]]")
		}
		return t.counts["material"] > 0
	case lists[name].most > 0:
		t.newOf(name, line)
		if !array {
			t.singleBrackets(name, line)
		}
		return true
	case array:
		t.refuse(t.at(line, name), "["+bracketed(name)+"] is a list of tables", "write "+bracketed(name))
	}
	if v, ok := t.file[t.words.short[name]]; ok && v.at.name == name {
		t.refuse(t.at(line, name), fmt.Sprintf("set twice, first on line %d", v.at.line), "take that line away and write "+wordOf(t.words.short[name])+" = "+written(v)+" below "+bracketed(name))
		return false
	}
	t.tables[name] = line
	return true
}

// tableOf returns the table that a path leads into: of a shop file it may have two parts.
func (t *tree) tableOf(path []string) string {
	if len(path) > 1 {
		if two := dotted(path[:2]); (two == sheetList || two == patternTable) && slices.Contains(t.words.tables, two) {
			return two
		}
	}
	return path[0]
}

// put takes one key with its value.
func (t *tree) put(path []string, n *unstable.Node, line int) {
	name, key := t.tableOf(path), dotted(path)
	if lists[name].most > 0 && key != name && t.counts[name] == 0 && slices.Contains(t.words.tables, name) {
		t.newOf(name, line)
		t.singleBrackets(name, line)
	}
	switch {
	case t.tooMany(name): // refused where it begins
	case n.Kind == unstable.String && t.words.short[key] != "":
		t.set(t.words.short[key], t.value(n, t.at(line, key)))
	case slices.Contains(t.words.keys, key):
		key = t.here(key)
		t.set(key, t.value(n, t.at(line, key)))
	case lists[key].most > 0 && slices.Contains(t.words.tables, key):
		t.putList(key, n, line)
	case slices.Contains(t.words.tables, key):
		t.tables[name] = line
		t.putTable(name, n, line)
	default:
		t.misplaced(path, line)
	}
}

// putTable takes an inline table.
func (t *tree) putTable(name string, n *unstable.Node, line int) {
	if n.Kind != unstable.InlineTable {
		v := t.value(n, t.at(line, t.here(name)))
		t.reject(v, "is not a table", "write "+bracketed(name)+" and its keys below it")
		return
	}
	for it := n.Children(); it.Next(); {
		path, line := t.key(it.Node())
		t.put(append(strings.Split(name, "."), path...), it.Node().Value(), line)
	}
}

// misplaced takes a key or table that isn't known. Where it makes a table of a
// known key, that is told when the key is read.
func (t *tree) misplaced(path []string, line int) {
	if t.tooMany(t.tableOf(path)) {
		return
	}
	for n := 1; n <= min(len(path), 2); n++ {
		if owner := dotted(path[:n]); slices.Contains(t.words.keys, owner) {
			owner = t.here(owner)
			t.set(owner, value{kind: tableKind, at: t.at(line, owner)})
			return
		}
	}
	t.refuse(t.at(line, t.here(dotted(path))), "unknown key", t.words.suggest(path))
}

// set keeps the first value of a key and refuses a second.
func (t *tree) set(key string, v value) {
	first, ok := t.file[key]
	switch {
	case !ok:
		t.file[key] = v
	case first.kind != tableKind || v.kind != tableKind: // the parts of one table are no repetition
		t.refuse(v.at, fmt.Sprintf("set twice, first on line %d", first.at.line), "keep one")
	}
}

// value takes a value as it is written.
func (t *tree) value(n *unstable.Node, at place) value {
	if n.Raw.Length > 0 {
		at.line = t.line(n)
	}
	v := value{at: at, text: string(n.Data)}
	switch n.Kind {
	case unstable.String:
		v.kind = textKind
	case unstable.Integer, unstable.Float:
		v.kind = numberKind
	case unstable.Array:
		v.kind = listKind
		for it := n.Children(); it.Next() && len(v.items) <= mostReadings; {
			item := value{kind: listKind, at: at}
			if it.Node().Kind != unstable.Array { // no list in a list is of use
				item = t.value(it.Node(), at)
			}
			v.items = append(v.items, item)
		}
	case unstable.InlineTable:
		v.kind, v.items = tableKind, []value{}
		for it := n.Children(); it.Next(); {
			path, line := t.key(it.Node())
			item := value{kind: tableKind, at: t.at(line, at.name+"."+strings.Join(path, "."))}
			if of := it.Node().Value(); of.Kind != unstable.Array && of.Kind != unstable.InlineTable {
				item = t.value(of, item.at)
			}
			v.items = append(v.items, item)
		}
	default:
		v.kind = otherKind
	}
	return v
}

var bare = regexp.MustCompile(`^[A-Za-z0-9_-]+$`)

// dotted writes a key as in a job file, shortened: a part that isn't a bare
// word is quoted, so that it is like no other key.
func dotted(path []string) string {
	if len(path) > 4 {
		path = append(slices.Clone(path[:4]), "…")
	}
	parts := make([]string, len(path))
	for i, part := range path {
		parts[i] = wording.Shorten(part)
		if !bare.MatchString(part) && part != "…" {
			parts[i] = strconv.Quote(parts[i])
		}
	}
	return strings.Join(parts, ".")
}

// most is how many keys and values are read.
func (t *tree) most() int {
	if t.words == jobWords {
		return mostNodes
	}
	return mostWithLists
}
