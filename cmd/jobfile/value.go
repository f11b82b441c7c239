package jobfile

import (
	"errors"
	"math"
	"strconv"
	"strings"

	"forel/geometry/job"
)

// kind is what a value is, whatever it should be.
type kind int

const (
	textKind kind = iota
	numberKind
	listKind
	tableKind
	otherKind // true, false, dates and times: no key takes them
)

// place is where a maker set a value.
type place struct {
	source string
	line   int
	name   string // the key, or the flag as typed
	flag   bool
	shop   bool // it stands in the shop file
	unset  bool // the key was left to its default
}

// public returns the place as others have it.
func (at place) public() job.Place { return job.Place{Source: at.source, Line: at.line, Key: at.name} }

// issue returns a problem at the place, whose name takes that of the key.
func (at place) issue(p job.Problem) Issue {
	p.Key = at.name
	return Issue{Source: at.source, Line: at.line, Default: at.unset, Problem: p}
}

// wrong is an error of one issue at the place: what is wrong there, and what would do.
func (at place) wrong(reason, fix string) error {
	return Issues{at.issue(job.Problem{Reason: reason, Fix: fix})}
}

// notByKey is the error of a file that can't be changed there.
func (at place) notByKey() error {
	return at.wrong("is written in a way that can't be changed key by key", "write each table with its header, and below it each key on a line of its own")
}

// value is one setting as the maker wrote it.
type value struct {
	kind  kind
	text  string  // what a text says, or how any other value is written
	items []value // of a list, no more than one over the most readings; of a table in braces, by name
	at    place
}

// each writes a value, or a list of them in brackets.
func (v value) each(write func(value) string) string {
	if v.kind != listKind {
		return write(v)
	}
	var items []string
	for _, item := range v.items {
		items = append(items, write(item))
	}
	return "[" + strings.Join(items, ", ") + "]"
}

// float reads a TOML number: decimal, hexadecimal, octal or binary, with
// underscores, inf or nan. One too large for a float64 is infinite.
func float(written string) float64 {
	s := strings.ReplaceAll(written, "_", "")
	if len(s) > 2 && s[0] == '0' && strings.IndexByte("xob", s[1]) >= 0 {
		n, _ := strconv.ParseUint(s, 0, 64)
		return float64(n)
	}
	v, err := strconv.ParseFloat(s, 64)
	if errors.Is(err, strconv.ErrSyntax) { // a signed nan
		return math.NaN()
	}
	return v
}
