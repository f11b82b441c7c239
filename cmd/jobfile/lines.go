package jobfile

import (
	"slices"
	"sort"
	"strings"

	"forel/geometry/job"
)

// lineIndex finds the line of an offset: it holds where each line ends.
type lineIndex []int

func indexLines(data []byte) lineIndex {
	var ends lineIndex
	for i, c := range data {
		if c == '\n' {
			ends = append(ends, i)
		}
	}
	return ends
}

// line returns the line of an offset, from 1.
func (ends lineIndex) line(offset int) int { return sort.SearchInts(ends, offset) + 1 }

// placed says of each problem where the maker set its key.
func (r *reader) placed(ps job.Problems) Issues {
	var is Issues
	for _, p := range ps {
		is = append(is, r.where(p.Key).issue(p))
	}
	return is
}

// where finds the place a key was set. One left to its default is said to be
// so, at its table where the file has it.
func (r *reader) where(key string) place {
	if v, ok := r.get(key); ok {
		return v.at
	}
	table, _, _ := strings.Cut(key, ".")
	at := r.at(r.tables[table], key)
	if _, listed := lists[table]; slices.Contains(knownKeys, key) && !listed { // a book has no defaults
		at.unset = true
	}
	return at
}
