package jobfile

import (
	"slices"
	"strings"

	"forel/geometry/job"
)

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
