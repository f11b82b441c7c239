package jobfile_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"forel/cmd/jobfile"
)

func TestIssueString(t *testing.T) {
	for want, i := range map[string]jobfile.Issue{
		"case.toml:12: board.thickness: too large; give 2 mm": {"case.toml", 12, "board.thickness", "too large", "give 2 mm"},
		"case.toml: book: no book; add one":                   {"case.toml", 0, "book", "no book", "add one"},
		"case.toml:3: expected a value":                       {"case.toml", 3, "", "expected a value", ""},
		"--height: missing; measure it":                       {"", 0, "--height", "missing", "measure it"},
		`a\nb.toml:1: c\x1b: d\u202e; e\t`:                    {"a\nb.toml", 1, "c\x1b", "d\u202e", "e\t"},
		`9¼ × ½″: "it's"`:                                     {"", 0, "9¼ × ½″", `"it's"`, ""},
	} {
		assert.Equal(t, want, i.String())
		assert.EqualError(t, i, want)
	}
}

func TestIssuesError(t *testing.T) {
	is := jobfile.Issues{{Key: "--a", Wrong: "b"}, {Source: "c", Line: 2, Wrong: "d", Right: "e"}}
	assert.EqualError(t, is, "--a: b\nc:2: d; e")
}
