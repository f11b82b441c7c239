package jobfile

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/wording"
)

// Change sets a key of a job file, or takes it out.
type Change struct {
	Key   string `json:"key"`             // board.thickness, book.height, book[2].height; with Gone a table too: book[2]
	Value string `json:"value,omitempty"` // as a maker types it; readings have ";" between them
	Gone  bool   `json:"gone,omitempty"`  // take it out: what it sets is then at its default
	Swap  string `json:"swap,omitempty"`  // not empty: change places with this table of the same list: book[2]
}

// ChangeOf returns a change of a setting as a maker types it in a unit.
func ChangeOf(c job.Change, unit geometry.Unit) Change {
	if c.Word != "" {
		return Change{Key: c.Key, Value: c.Word}
	}
	return Change{Key: c.Key, Value: geometry.Settable(c.Value, unit)}
}

// Changed returns the text of a job file with changes made one after the other; source
// is its name, for messages. Lines that are not changed stay as they are, and so do
// comments. A key that stands in a comment, as those of a new job file do, is set there.
// A key of the book or stock after the last one makes a new one.
//
// A change of units leaves lengths as they are: bare numbers get the unit they had, and
// prices of rolls the length that they are for.
//
// The value may be wrong: that is for Parse to tell. What can't be read at all, or
// is written in a way that can't be changed key by key, returns Issues.
func Changed(source string, old []byte, changes []Change) ([]byte, error) {
	return jobWords.changed(source, old, changes)
}

// changed is Changed of a file with these words.
func (w *vocabulary) changed(source string, old []byte, changes []Change) ([]byte, error) {
	e := newEdit(slices.Clone(old))
	for _, c := range changes {
		r := newReader(source, true, w)
		if issues := r.readTOML(e.data); issues != nil {
			return nil, issues
		}
		e.index()
		if err := e.change(r, c); err != nil {
			return nil, err
		}
		again := newReader(source, true, w)
		if issues := again.readTOML(e.data); issues != nil || !again.took(c) {
			table, _, _ := strings.Cut(c.Key, ".")
			return nil, r.at(max(r.tables[table], r.file[c.Key].at.line), c.Key).notByKey()
		}
	}
	return e.data, nil
}

// change makes one change, in a file that r has read.
func (e *edit) change(r *reader, c Change) error {
	wrong := r.at(0, c.Key).wrong
	if c.Swap != "" {
		if e.has(c.Key) && e.has(c.Swap) {
			e.swapTables(c.Key, c.Swap)
			return nil
		}
		return wrong("can't change places with "+wording.Quote(c.Swap), "name two tables that are there")
	}
	if table, word, _ := strings.Cut(c.Key, "."); word == "material" && e.inShort(table) {
		if c.Gone {
			e.remove(table)
		} else {
			e.set(table, typed(c.Key, c.Value))
		}
		return nil
	}
	if c.Gone {
		if !strings.Contains(c.Key, ".") && !slices.Contains(knownKeys, c.Key) {
			e.removeTable(c.Key)
		} else {
			e.leaveOut(c.Key)
		}
		return nil
	}
	if long := jobWords.short[c.Key]; long != "" {
		c.Key = long
	}
	first := unnumbered(c.Key)
	if !Known(first) {
		return wrong("unknown key", jobWords.suggest(strings.Split(first, ".")))
	}
	if table, _, ok := strings.Cut(c.Key, "."); ok {
		if of, _, listed := strings.Cut(table, "["); listed && table != numbered(of, r.counts[of]+1) && !e.has(table) {
			return wrong(fmt.Sprintf("there are %d %s", r.counts[of], lists[of].many), "number them one after the other")
		}
	}
	if c.Key == "units" {
		e.spellUnits(r, c.Value)
	}
	if table, _, _ := strings.Cut(c.Key, "."); e.inShort(table) { // what is beside it wants a table
		e.spellOut(table)
	}
	e.uncomment(c.Key)
	e.set(c.Key, typed(first, c.Value))
	return nil
}

// inShort tells whether a table is written in short, as the name of a material: board = "grey".
func (e *edit) inShort(table string) bool {
	written, ok := e.get(table)
	return ok && (written[0] == '"' || written[0] == '\'') && jobWords.short[table] == table+".material"
}

// spellOut writes the material of a table that is written in short below its header.
func (e *edit) spellOut(table string) {
	k, _ := e.key(table)
	written := strings.TrimRight(string(e.data[k.from:e.lineEnd(k.to)]), "\r\n") // with its comment
	e.remove(table)
	e.uncomment(table + ".material")
	e.set(table+".material", written)
}

// InShort returns the name of a material that stands in a job file in the place of a table, as
// in board = "grey"; empty where none does.
func InShort(data []byte, table string) string {
	e := newEdit(data)
	if !e.inShort(table) {
		return ""
	}
	written, _ := e.get(table)
	return strings.Trim(written, `"'`)
}

// took tells whether a file reads as a change wants it.
func (r *reader) took(c Change) bool {
	v, ok := r.file[c.Key]
	_, table := r.tables[c.Key]
	switch {
	case c.Swap != "":
		return table
	case c.Gone && (strings.Contains(c.Key, "[") || lists[c.Key].most > 0):
		return true // the next one has its number now
	case c.Gone:
		return (!ok || blank(v)) && !table
	}
	return ok && v.typed() == flagValue(Flag{Key: unnumbered(c.Key), Value: c.Value}, place{}).typed()
}

// typed returns a value as a maker types it, readings with ";" between them.
func (v value) typed() string {
	if v.kind != listKind {
		return strings.TrimSpace(v.text)
	}
	var all []string
	for _, i := range v.items {
		all = append(all, strings.TrimSpace(i.text))
	}
	return strings.Join(all, "; ")
}

func (e *edit) has(table string) bool {
	_, ok := e.table(table)
	return ok
}

// leaveOut takes a key out. A line with a comment stays, as a comment with the value
// that a new job file has there; of a name or a title, empty.
func (e *edit) leaveOut(name string) {
	k, ok := e.key(name)
	if !ok {
		return
	}
	told := strings.Contains(string(e.data[k.to:e.lineEnd(k.to)]), "#")
	f, known := fieldOf(unnumbered(name))
	switch {
	case !told || !known:
		e.remove(name)
		return
	case f.Kind == TakesText:
		e.set(name, unwritten)
		return
	}
	e.set(name, f.example)
	k, _ = e.key(name)
	line := string(e.data[k.start:e.lineEnd(k.to)])
	gap := regexp.MustCompile(`   +#`).FindStringIndex(line)
	if gap != nil { // the comment stays in its column
		line = line[:gap[1]-3] + line[gap[1]-1:]
	}
	e.splice(k.start, e.lineEnd(k.to), "# "+line)
}

var commentedTable = regexp.MustCompile(`(?m)^# ?(\[+([a-z_]+)\]+[ \t]*)$`)

// uncomment takes the "# " away where a key that is not set stands in a comment, and its
// table if need be, so that it can be set there.
func (e *edit) uncomment(name string) {
	if _, ok := e.get(name); ok {
		return
	}
	table, key, dotted := strings.Cut(name, ".")
	from, to := 0, len(e.data)
	if !dotted {
		key = name
	}
	if dotted {
		if !e.has(table) && !e.uncommentTable(table) {
			return
		}
		i := slices.IndexFunc(e.tables, func(t tableSpan) bool { return t.name == table })
		from = e.tables[i].from
		if i+1 < len(e.tables) {
			to = e.tables[i+1].from
		}
		if m := commentedTable.FindIndex(e.data[from:to]); m != nil {
			to = from + m[0]
		}
	} else if len(e.tables) > 0 {
		to = e.tables[0].from
	}
	m := regexp.MustCompile(`(?m)^# ?` + regexp.QuoteMeta(key) + ` = [^\n]*\n?`).FindIndex(e.data[from:to])
	if m == nil {
		return
	}
	line := strings.TrimPrefix(strings.TrimPrefix(string(e.data[from+m[0]:from+m[1]]), "#"), " ")
	if n := strings.Index(line, "  #"); n >= 0 {
		line = line[:n] + "  " + line[n:]
	}
	e.splice(from+m[0], from+m[1], line)
}

// uncommentTable takes the "# " away before the header of a table, of a list after the
// last of it. It tells whether there was one.
func (e *edit) uncommentTable(name string) bool {
	first, _, _ := strings.Cut(name, "[")
	after := 0
	for _, t := range e.tables {
		if of, _, _ := strings.Cut(t.name, "["); of == first {
			after = t.to
		}
	}
	for _, m := range commentedTable.FindAllSubmatchIndex(e.data[after:], -1) {
		if string(e.data[after+m[4]:after+m[5]]) == first {
			e.splice(after+m[0], after+m[2], "")
			return true
		}
	}
	return false
}

// spellUnits gives bare lengths the unit that they have, before another becomes the
// unit of the file.
func (e *edit) spellUnits(r *reader, to string) {
	r.units()
	if to == r.fileUnit.String() {
		return
	}
	for i := 0; i < len(e.keys); i++ {
		name := e.keys[i].name
		v, set := r.file[name]
		f, _ := fieldOf(unnumbered(name))
		if set && f.Key == "stock.price" {
			roll := strings.TrimSuffix(name, "price")
			if r.has(roll+"roll") && !r.has(roll+"per") {
				e.set(roll+"per", textTOML(map[geometry.Unit]string{geometry.MM: "metre", geometry.IN: "yard"}[r.fileUnit]))
			}
		}
		if set && f.length() && slices.ContainsFunc(append([]value{v}, v.items...), value.bare) {
			e.set(name, v.each(func(one value) string { return one.spelt(r.fileUnit) }))
		}
	}
}

var bareSize = regexp.MustCompile(`^[\d.,]+\s*[x×]\s*[\d.,]+$`)

// bare tells whether a length or a size is written without a unit.
func (v value) bare() bool {
	_, length, _, _ := layersOf(v.text)
	_, word := geometry.UnitOf(length, geometry.MM)
	return v.kind <= numberKind && !blank(v) && (word == "" || bareSize.MatchString(v.text))
}

// spelt writes a length in quotes with its unit, which is u where it has none.
func (v value) spelt(u geometry.Unit) string {
	text := strings.TrimSpace(v.text)
	if v.bare() {
		text += " " + u.String()
	}
	return textTOML(text)
}
