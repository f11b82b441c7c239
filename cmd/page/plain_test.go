package page_test

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/cmd/jobfile"
	"forel/cmd/page"
	"forel/geometry"
)

// inFiles finds what only a job file or a command line has: a key with its table, a table
// in brackets, a command, a flag.
func inFiles(said ...string) (found []string) {
	var keys, tables []string
	for _, s := range jobfile.Fields(geometry.MM) {
		if s.Table != "" {
			tables = append(tables, s.Table)
		}
		for _, f := range s.Fields {
			if strings.Contains(f.Key, ".") {
				keys = append(keys, regexp.QuoteMeta(f.Key))
			}
		}
	}
	find := regexp.MustCompile(`\b(` + strings.Join(keys, "|") + `)\b|\[(` + strings.Join(tables, "|") + `)\]|forel [a-z]+|--[a-z]`)
	for _, s := range said {
		for _, m := range find.FindAllString(s, -1) {
			found = append(found, fmt.Sprintf("%q in %q", m, s))
		}
	}
	return found
}

// What the page tells of its own blanks names them as the page does, not as a job file or
// a command line has them.
func TestThePageSpeaksOfItsBlanks(t *testing.T) {
	faults := func(fs []page.Fault) (said []string) {
		for _, f := range fs {
			said = append(said, f.Says, f.Fix)
		}
		return said
	}
	told := ""
	for name, text := range someWorked(t) {
		var said []string
		for _, s := range ask(t, page.Request{Do: "steps", Text: text}).Steps {
			said = append(append(said, s.Short, s.Title), s.Text...)
			for _, c := range s.Checks {
				said = append(append(said, c.Name, c.When, c.Fails), c.See...)
			}
		}
		a := ask(t, page.Request{Do: "open", Text: text})
		require.NotNil(t, a.Answer, name)
		said = append(append(said, a.Answer.Says, a.Answer.Chances), slices.Concat(a.Answer.More, faults(a.Answer.Warnings))...)
		for _, m := range a.Answer.Mends {
			said = append(said, m.Label, m.Then)
		}
		for _, made := range []page.Request{
			{Name: "templates"}, {Name: "cutlist"}, {Name: "stock", Flags: map[string]string{"effort": "0"}},
			{Name: "cutter", Flags: map[string]string{"bed": "2000x2000 mm", "effort": "0"}}, {Name: "cutter", Flags: map[string]string{"bed": "100x100 mm"}},
		} {
			made.Do, made.Text = "make", text
			a := ask(t, made)
			said = append(append(said, a.Notes...), slices.Concat(faults(a.Faults), faults(a.Warnings))...)
		}
		assert.Empty(t, inFiles(said...), name)
		told += strings.Join(said, "\n")
	}
	for _, blank := range []string{`set “board, known” to "measured"`, "“as built”", "“Templates to print” with “only” set to cloth,paper"} {
		assert.Contains(t, told, blank)
	}
	small := start(t) + "\n[[stock]]\nmaterial = \"board\"\nsize = \"100 x 100 mm\"\n"
	a := ask(t, page.Request{Do: "make", Name: "stock", Text: small})
	require.NotEmpty(t, a.Faults)
	assert.Empty(t, inFiles(faults(a.Faults)...))
	assert.NotEmpty(t, inFiles("board.known", "under [as_built]", "forel templates", "--only"))
}

// Nothing that the page says is of the command line: no flag, no command, no key of a job
// file. Files and their format are as they are.
func TestNothingOfTheCommandLine(t *testing.T) {
	cli := regexp.MustCompile(`--[a-z]|forel [a-z]|SOURCE_DATE|command line|\bflags?\b|\S \[\[?[a-z]+\]|standard output|terminal`)
	tell := func(where, s string) {
		for line := range strings.Lines(s) {
			assert.NotRegexp(t, cli, line, where)
		}
	}
	for i, o := range ask(t, page.Request{Do: "outputs"}).Outputs {
		for _, s := range o.Settings {
			tell("setting "+o.Name+"."+s.Name, s.Says)
		}
		flags := map[string]map[string]string{"cutter": {"bed": "600x900"}, "rescue": {"play-height": "-0.4"}, "record": {"play-height": "0.4"}, "stock": {"take": "true", "effort": "0"}}[o.Name]
		for k, shop := range []string{"", string(jobfile.ShopStarter())} {
			if testing.Short() && k != i%2 {
				continue
			}
			a := ask(t, page.Request{Do: "make", Name: o.Name, Text: start(t), Shop: shop, Flags: flags})
			for _, f := range append(a.Faults, a.Warnings...) {
				tell("fault "+o.Name, f.Says+"; "+f.Fix)
			}
			for _, n := range a.Notes {
				tell("note "+o.Name, n)
			}
			tell("report "+o.Name, a.Report)
		}
	}
	for _, s := range ask(t, page.Request{Do: "fields"}).Sections {
		tell("section "+s.Table, s.Says)
		for _, f := range s.Fields {
			tell("field "+f.Key, f.Says+" "+f.What)
		}
	}
}
