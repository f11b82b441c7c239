package jobfile

import (
	"cmp"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"forel/geometry/job"
)

// Issue is one thing wrong with what a maker wrote, or worth a second look, and
// where it stands. Its key is that of the file, such as board.thickness, or the
// flag as typed.
type Issue struct {
	Source string // the job file's name; empty for a flag
	Line   int    // from 1; 0 where no line is to blame
	job.Problem
}

// String gives the issue as one line without control characters:
//
//	case.toml:12: board.thickness: 30 mm is too large; give 0.5 mm to 6 mm
func (i Issue) String() string { return oneLine(i.place() + i.Problem.Error()) }

// Place says where the issue stands: "case.toml:12: board.thickness".
func (i Issue) Place() string { return oneLine(i.place() + i.Key) }

// place is the file and line, with what parts them from what follows.
func (i Issue) place() string {
	switch {
	case i.Source == "":
		return ""
	case i.Line == 0:
		return i.Source + ": "
	}
	return i.Source + ":" + strconv.Itoa(i.Line) + ": "
}

// Error is String: an issue by itself can be an error.
func (i Issue) Error() string { return i.String() }

// Issues are all that was found, by line and then by key.
type Issues []Issue

// Error gives one line an issue.
func (is Issues) Error() string {
	lines := make([]string, len(is))
	for n, i := range is {
		lines[n] = i.String()
	}
	return strings.Join(lines, "\n")
}

// sort puts issues in the order of the file, flags first.
func (is Issues) sort() {
	slices.SortStableFunc(is, func(a, b Issue) int {
		return cmp.Or(cmp.Compare(a.Line, b.Line), cmp.Compare(a.Key, b.Key))
	})
}

// oneLine writes what can't be printed as an escape, such as \n or \u202e.
func oneLine(text string) string {
	var b strings.Builder
	for _, r := range text {
		if unicode.IsPrint(r) {
			b.WriteRune(r)
		} else {
			b.WriteString(strings.Trim(strconv.QuoteRune(r), "'"))
		}
	}
	return b.String()
}

// quote gives a text in quotes, shortened, control characters escaped.
func quote(text string) string { return strconv.Quote(shorten(text)) }

// shorten gives no more than the first 40 characters of a text.
func shorten(text string) string {
	n := 0
	for i := range text {
		if n == 40 {
			return text[:i] + "…"
		}
		n++
	}
	return text
}
