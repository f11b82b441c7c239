package jobfile

import (
	"fmt"
	"strings"

	"github.com/pelletier/go-toml/v2/unstable"

	"forel/geometry/job"
)

// list is a table that may be written several times, in double brackets.
type list struct {
	most  int    // of them in one file
	a     string // one of them, in a sentence
	many  string // several
	spare string // what to do about too many
}

var lists = map[string]list{
	"book":  {job.MostBooks, "a book", "books", "make two cases"},
	"extra": {mostExtra, "an extra line", "extra lines", "keep those of this quote"},
	"stock": {mostStock, "stock", "kinds of stock", "keep those you cut from"},

	// Of a shop file.
	"material": {mostInShop, "a material", "materials", "keep those you use"},
	sheetList:  {mostInShop, "a sheet", "sheets", "keep those you cut from"},
	"cutter":   {mostInShop, "a machine", "machines", "keep those you use"},
	"printer":  {mostInShop, "a printer", "printers", "keep those you use"},
	"offcut":   {mostInLedger, "an offcut", "offcuts", "take out those that are used"},
	"used":     {mostInLedger, "what was used", "entries of what was used", "take out the oldest"},
	"taking":   {mostInLedger, "a taking", "takings", "take out the oldest"},

	// Of a record.
	"measured": {mostInLedger, "what was measured", "things measured", "begin another record"},
	"done":     {mostInLedger, "what was done", "things done", "begin another record"},
}

// partedKey parts a key into its table and the rest; a list is a table of its own.
func partedKey(key string) (table, word string, dotted bool) {
	if key == sheetList {
		return key, "", false
	}
	if word, ok := strings.CutPrefix(key, sheetList+"."); ok {
		return sheetList, word, true
	}
	return strings.Cut(key, ".")
}

// numbered names a key of the nth table of a list as slipcase does: book.height
// in the first, then book[2].height and so on. Other keys stay as they are.
func numbered(key string, n int) string {
	table, word, dotted := partedKey(key)
	if _, ok := lists[table]; !ok || n < 2 {
		return key
	}
	key = fmt.Sprintf("%s[%d]", table, n)
	if dotted {
		key += "." + word
	}
	return key
}

// unnumbered returns the key of the first table of a list for that of any.
func unnumbered(key string) string {
	table, rest, ok := strings.Cut(key, "[")
	_, word, closed := strings.Cut(rest, "].")
	if _, known := lists[table]; !ok || !closed || !known {
		return key
	}
	return table + "." + word
}

// each returns the names of the tables of a list.
func (r *reader) each(list string) (names []string) {
	for n := range min(r.counts[list], lists[list].most) {
		names = append(names, numbered(list, n+1))
	}
	return names
}

// here names a key within the table being read.
func (r *reader) here(key string) string {
	table, _, _ := partedKey(key)
	return numbered(key, r.counts[table])
}

// newOf counts a table of a list and refuses the first that is too many.
func (t *tree) newOf(name string, line int) {
	if name == sheetList && t.counts["material"] == 0 {
		t.refuse(t.at(line, name), "a sheet of no material", "write it below its [[material]]")
	}
	t.counts[name]++
	key, l := t.here(name), lists[name]
	if t.counts[name] <= l.most {
		t.tables[key] = line
		t.owner[key] = numbered("material", t.counts["material"])
	} else if t.counts[name] == l.most+1 {
		t.refuse(t.at(line, key), fmt.Sprintf("more than %d %s", l.most, l.many), l.spare)
	}
}

// tooMany tells of a table beyond the most of its list: refused where the first
// such began.
func (t *tree) tooMany(name string) bool {
	l, ok := lists[name]
	return ok && t.counts[name] > l.most
}

// singleBrackets tells of the table just counted that it was not written as one
// of several.
func (t *tree) singleBrackets(name string, line int) {
	if !t.tooMany(name) {
		t.refuse(t.at(line, t.here(name)), lists[name].a+" has double brackets", "write "+bracketed(name))
	}
}

// putList takes tables of a list written inline.
func (t *tree) putList(name string, n *unstable.Node, line int) {
	switch n.Kind {
	case unstable.Array:
		for it := n.Children(); it.Next(); {
			at := line
			if it.Node().Raw.Length > 0 {
				at = t.line(it.Node())
			}
			t.newOf(name, at)
			if t.tooMany(name) {
				return
			}
			t.putTable(name, it.Node(), at)
		}
	default:
		t.newOf(name, line)
		if n.Kind == unstable.InlineTable {
			t.singleBrackets(name, line)
		}
		t.putTable(name, n, line)
	}
}
