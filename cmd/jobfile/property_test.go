package jobfile_test

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"forel/cmd/jobfile"
	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/slipcase"
)

// A job written in any spelling is read as the job it is, and is refused for
// the reasons slipcase gives, no more and no fewer.
func TestAnySpellingIsReadTheSame(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		want := slipcase.DefaultJob(geometry.MM)
		var books [][]string
		want.Books, books = drawBooks(t)
		dotted, headed := writeSettings(t, drawSettings(t, want.Settings()))
		inline, below := writeBooks(t, books)
		dotted, headed = append(dotted, inline), append(headed, below)
		data := strings.Join(append(rapid.Permutation(dotted).Draw(t, "dotted"), rapid.Permutation(headed).Draw(t, "headed")...), "\n")

		got, suspects, err := jobfile.Parse("case.toml", []byte(data))
		_, refused, suspect := want.Check()
		var issues jobfile.Issues
		if err != nil {
			issues = err.(jobfile.Issues)
		}
		same(t, data, "refused", refused, issues)
		same(t, data, "suspect", suspect, suspects)
		if err == nil && fmt.Sprint(boards(got)) != fmt.Sprint(want) {
			t.Fatalf("%s\nwant %v\ngot  %v", data, want, boards(got))
		}
	})
}

// same compares problems with issues, and looks for each key on its line.
func same(t *rapid.T, data, what string, want job.Problems, got jobfile.Issues) {
	var keys, found []string
	for _, p := range want {
		keys = append(keys, p.Key+": "+p.Wrong())
	}
	lines := strings.Split(data, "\n")
	for _, i := range got {
		if strings.HasPrefix(i.Reason, "then ") {
			continue // what the changes bring up that are named
		}
		if strings.HasPrefix(i.Reason, "thinner than ") {
			continue // told of a bare number, not of the same length with its unit
		}
		key, isDefault := i.Key, i.Default
		found = append(found, key+": "+i.Wrong())
		if i.Line == 0 && isDefault {
			continue // its table is not in the file
		}
		if !onItsLine(lines, i.Line, key, isDefault) {
			t.Fatalf("%s\n%s: not on its line", data, i)
		}
	}
	slices.Sort(keys)
	slices.Sort(found)
	if !slices.Equal(keys, found) {
		t.Fatalf("%s\n%s: want %q\ngot %q", data, what, keys, found)
	}
}

// onItsLine tells whether a key was set on a line, or its table begins there.
func onItsLine(lines []string, line int, key string, isDefault bool) bool {
	table, word, dotted := strings.Cut(key, ".")
	name, number, later := strings.Cut(table, "[")
	if name == "book" {
		begun := 0 // books, up to this line
		for _, text := range lines[:line] {
			if strings.HasPrefix(text, "[[book]]") || strings.HasPrefix(text, "book = ") || strings.HasPrefix(text, "{") {
				begun++
			}
		}
		if (begun != 1 || later) && strconv.Itoa(begun)+"]" != number {
			return false
		}
	}
	if dotted && !isDefault {
		return strings.Contains(lines[line-1], word+" = ")
	}
	return strings.Contains(lines[line-1], name)
}
