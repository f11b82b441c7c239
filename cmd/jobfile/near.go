package jobfile

import (
	"slices"
	"strings"
)

// parted are keys that job files once had, and the keys that have taken their place.
var parted = map[string]string{"fit.loose": "fit.loose_height and fit.loose_thickness: each has a limit of its own"}

// suggest says what an unknown key may have been meant for: what has taken its
// place, the nearest known one, else the same word in another table, else what is known in its place.
func (w *vocabulary) suggest(path []string) string {
	last, key := path[len(path)-1], strings.Join(path, ".")
	if instead := parted[key]; instead != "" {
		return "write " + instead
	}
	if near := w.nearest(key, (len([]rune(last))+1)/3); near != "" && near != bracketed(key) {
		return "did you mean " + near
	}
	if len(path) == 2 && w.short[last] != "" {
		return "write " + last + " above the first table"
	}
	var same []string
	for _, key := range w.keys {
		_, word, dotted := strings.Cut(key, ".")
		switch {
		case len(path) == 1 && slices.Contains(w.tables, fold(last)): // a table, of which a key is wanted
		case dotted && word == fold(last):
			same = append(same, key)
		case key == fold(last):
			same = append(same, key+" at the top of the file")
		}
	}
	if len(same) > 0 {
		return "did you mean " + strings.Join(same, " or ")
	}
	var here []string
	for _, key := range w.keys {
		if word, ok := strings.CutPrefix(key, path[0]+"."); ok {
			here = append(here, word)
		}
	}
	if len(here) > 0 {
		return "known in " + bracketed(path[0]) + ": " + strings.Join(here, ", ")
	}
	for _, key := range w.keys {
		if !strings.Contains(key, ".") {
			here = append(here, key)
		}
	}
	for _, name := range w.tables {
		here = append(here, bracketed(name))
	}
	return "known: " + strings.Join(here, ", ")
}

// bracketed returns a table as it is written in a job file.
func bracketed(name string) string {
	if _, listed := lists[name]; listed {
		return "[[" + name + "]]"
	}
	return "[" + name + "]"
}

// nearest finds the known key or table closest to one that isn't.
func (w *vocabulary) nearest(key string, most int) string {
	found := closest(key, slices.Concat(w.keys, w.tables), most)
	if slices.Contains(w.tables, found) {
		return bracketed(found)
	}
	return found
}

// closest finds the word that takes the fewest changes of a letter to reach,
// no more than most or 1, whichever is more; none is "".
func closest(written string, words []string, most int) string {
	if len(written) > 60 { // longer than any known one by far
		return ""
	}
	found, best := "", max(most, 1)+1
	for _, word := range words {
		if apart := len([]rune(written)) - len([]rune(word)); max(apart, -apart) >= best {
			continue
		}
		if d := distance([]rune(fold(written)), []rune(fold(word))); d < best {
			found, best = word, d
		}
	}
	return found
}

// fold takes away what is easily mixed up in a key.
func fold(key string) string { return underscored.Replace(strings.ToLower(key)) }

var underscored = strings.NewReplacer("-", "_", " ", "_")

// distance counts the letters to put in, take out or change to get from a to b.
func distance(a, b []rune) int {
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i, x := range a {
		diagonal := row[0]
		row[0] = i + 1
		for j, y := range b {
			change := diagonal
			if x != y {
				change++
			}
			diagonal = row[j+1]
			row[j+1] = min(change, row[j]+1, diagonal+1)
		}
	}
	return row[len(b)]
}
