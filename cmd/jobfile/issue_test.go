package jobfile_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"forel/cmd/jobfile"
	"forel/geometry/job"
)

func TestIssueString(t *testing.T) {
	for want, i := range map[string]jobfile.Issue{
		"case.toml:12: board.thickness: too large; give 2 mm": {Source: "case.toml", Line: 12, Problem: job.Problem{Key: "board.thickness", Reason: "too large", Fix: "give 2 mm"}},
		"case.toml: book: no book; add one":                   {Source: "case.toml", Line: 0, Problem: job.Problem{Key: "book", Reason: "no book", Fix: "add one"}},
		"case.toml:3: expected a value":                       {Source: "case.toml", Line: 3, Problem: job.Problem{Key: "", Reason: "expected a value", Fix: ""}},
		"--height: missing; measure it":                       {Source: "", Line: 0, Problem: job.Problem{Key: "--height", Reason: "missing", Fix: "measure it"}},
		`a\nb.toml:1: c\x1b: d\u202e; e\t`:                    {Source: "a\nb.toml", Line: 1, Problem: job.Problem{Key: "c\x1b", Reason: "d\u202e", Fix: "e\t"}},
		`9¼ × ½″: "it's"`:                                     {Source: "", Line: 0, Problem: job.Problem{Key: "9¼ × ½″", Reason: `"it's"`, Fix: ""}},
	} {
		assert.Equal(t, want, i.String())
		assert.EqualError(t, i, want)
	}
}

func TestIssuesError(t *testing.T) {
	is := jobfile.Issues{{Problem: job.Problem{Key: "--a", Reason: "b"}}, {Source: "c", Line: 2, Problem: job.Problem{Reason: "d", Fix: "e"}}}
	assert.EqualError(t, is, "--a: b\nc:2: d; e")
}
