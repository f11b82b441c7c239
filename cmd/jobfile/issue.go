package jobfile

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"forel/geometry/wording"
)

// Issue is one thing wrong with what a maker wrote, or worth a second look:
// where it stands, what is wrong, and what would be right.
type Issue struct {
	Source string // the job file's name; empty for a flag
	Line   int    // from 1; 0 where no line is to blame
	Key    string // the key, such as board.thickness, or the flag as typed; may be empty
	Wrong  string
	Right  string // may be empty
}

// String gives the issue as one line without control characters:
//
//	case.toml:12: board.thickness: 30 mm is too large; give 0.5 mm to 6 mm
func (i Issue) String() string {
	var parts []string
	if i.Source != "" {
		place := i.Source
		if i.Line > 0 {
			place += ":" + strconv.Itoa(i.Line)
		}
		parts = append(parts, place)
	}
	if i.Key != "" {
		parts = append(parts, i.Key)
	}
	wrong := i.Wrong
	if i.Right != "" {
		wrong += "; " + i.Right
	}
	return wording.Printable(strings.Join(append(parts, wrong), ": "))
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
