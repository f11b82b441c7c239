package jobfile

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"forel/geometry/job"
	"forel/geometry/wording"
)

// Issue is one thing wrong with what a maker wrote, or worth a second look, and
// where it stands. Its key is that of the file, such as board.thickness, or the
// flag as typed.
type Issue struct {
	Source  string // the job file's name; empty for a flag
	Line    int    // from 1; 0 where no line is to blame
	Default bool   // the key is not set: its default is to blame
	job.Problem
}

// String returns the issue as one line without control characters:
//
//	case.toml:12: board.thickness: 30 mm is too large; did you mean 3 mm? Or give 0.5 mm to 6 mm
func (i Issue) String() string {
	i.Key = i.named()
	return wording.Printable(i.place() + i.Problem.Error())
}

// Place says where the issue stands: "case.toml:12: board.thickness".
func (i Issue) Place() string { return wording.Printable(i.place() + i.named()) }

// named is the key, with whether it is at its default.
func (i Issue) named() string {
	if i.Default {
		return i.Key + " (default)"
	}
	return i.Key
}

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

// Error returns one line an issue.
func (is Issues) Error() string {
	lines := make([]string, len(is))
	for n, i := range is {
		lines[n] = i.String()
	}
	return strings.Join(lines, "\n")
}

// Err returns the issues as an error: nil where there are none.
func (is Issues) Err() error {
	if len(is) == 0 {
		return nil
	}
	return is
}

// sort puts issues in the order of the file, flags first; those of a shop file come after
// those of the job.
func (is Issues) sort(shop string) {
	after := func(i Issue) int {
		if shop != "" && i.Source == shop {
			return 1
		}
		return 0
	}
	slices.SortStableFunc(is, func(a, b Issue) int {
		return cmp.Or(after(a)-after(b), cmp.Compare(a.Line, b.Line), cmp.Compare(a.Key, b.Key))
	})
}
