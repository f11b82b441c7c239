package jobfile_test

import (
	"errors"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"forel/cmd/jobfile"
)

// FuzzParse gives anything for a job file. Whatever comes back is a job that
// can be made, or issues of one printable line each that lie in the file.
func FuzzParse(f *testing.F) {
	for _, c := range allRefused() {
		f.Add([]byte(c.data))
	}
	for _, name := range []string{"harbour.toml", "spellings.toml", "chartbook.toml", "slips.toml", "volumes.toml", "volumes-inline.toml"} {
		f.Add(read(f, name))
	}
	f.Add(jobfile.Starter())
	f.Fuzz(func(t *testing.T, data []byte) {
		file, suspects, err := jobfile.Parse("case.toml", data)
		sound(t, data, suspects)
		if err == nil {
			if _, refused, _ := file.Job.Check(); len(refused) > 0 {
				t.Fatalf("accepted, but %v", refused)
			}
			if s := file.Print; s.Printable(false).Width()-s.Overlap <= 0 {
				t.Fatalf("accepted sheets without room: %v", s)
			}
			return
		}
		var issues jobfile.Issues
		if !errors.As(err, &issues) || len(issues) == 0 {
			t.Fatalf("an error without issues: %v", err)
		}
		sound(t, data, issues)
	})
}

func sound(t *testing.T, data []byte, issues jobfile.Issues) {
	lines := strings.Count(string(data), "\n") + 1
	last := 0
	for _, i := range issues {
		s := i.String()
		if !utf8.ValidString(s) || strings.ContainsFunc(s, func(r rune) bool { return !unicode.IsPrint(r) }) {
			t.Fatalf("not printable: %q", s)
		}
		if !strings.HasPrefix(s, "case.toml:") || len(s) > 1000 {
			t.Fatalf("not a line of its own: %q", s)
		}
		if i.Reason == "" || i.Line < last || i.Line > lines {
			t.Fatalf("line %d of %d after %d: %q", i.Line, lines, last, s)
		}
		last = i.Line
	}
}
