package bench

import "strings"

// Problem is why a plan can't be made: what is wrong and what would do.
type Problem struct{ Wrong, Right string }

func (p Problem) Error() string { return p.Wrong + "; " + p.Right }

// Problems are all that is in the way, a line each.
type Problems []Problem

func (ps Problems) Error() string {
	lines := make([]string, len(ps))
	for i, p := range ps {
		lines[i] = p.Error()
	}
	return strings.Join(lines, "\n")
}
