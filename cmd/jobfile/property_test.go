package jobfile_test

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"forel/cmd/jobfile"
	"forel/geometry"
	"forel/geometry/slipcase"
)

func trim(l geometry.Length) string { return strconv.FormatFloat(l.MM(), 'f', -1, 64) }

// drawLength gives a length within limits, to a hundredth of a millimetre.
func drawLength(t *rapid.T, name string, lo, hi geometry.Length) geometry.Length {
	n := rapid.IntRange(int(math.Ceil(lo.MM()*100)), int(hi.MM()*100)).Draw(t, name)
	return geometry.Length(n) / 100
}

// spell writes a length in one of the ways a job file has.
func spell(t *rapid.T, l geometry.Length) string {
	s := trim(l)
	return rapid.SampledFrom([]string{
		s, "+" + s, strconv.FormatFloat(l.MM(), 'e', -1, 64),
		`"` + s + `"`, `'` + s + ` mm'`, `"` + trim(l) + `mm"`, `"""` + s + ` MM"""`,
	}).Draw(t, "spelling")
}

// A job written in any spelling is read as the job it is, and is refused for
// the reasons slipcase gives, no more and no fewer.
func TestAnySpellingIsReadTheSame(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		want := slipcase.DefaultJob()
		want.Books = []slipcase.Book{{}}
		var dotted, headed []string // what can stand before the first table, and the rest
		bookLines := []string{"[[book]]"}
		for _, f := range slipcase.BookFields {
			var written []string
			for range rapid.IntRange(1, 3).Draw(t, "readings") {
				l := drawLength(t, f.Key, f.Min, f.Max)
				*f.At(&want.Books[0]) = append(*f.At(&want.Books[0]), l)
				written = append(written, spell(t, l))
			}
			bookLines = append(bookLines, f.Key+" = ["+strings.Join(written, ", ")+"]")
		}
		headed = append(headed, strings.Join(bookLines, "\n"))

		var tables []string
		keys := map[string][]string{}
		for _, f := range slipcase.Fields {
			if rapid.Bool().Draw(t, "left out") {
				continue
			}
			*f.At(&want) = drawLength(t, f.Key, f.Min, f.Max)
			table, key, _ := strings.Cut(f.Key, ".")
			if !slices.Contains(tables, table) {
				tables = append(tables, table)
			}
			keys[table] = append(keys[table], key+" = "+spell(t, *f.At(&want)))
		}
		for _, table := range tables {
			switch rapid.IntRange(0, 2).Draw(t, "form") {
			case 0:
				headed = append(headed, "["+table+"]\n"+strings.Join(keys[table], "\n"))
			case 1:
				dotted = append(dotted, table+" = {"+strings.Join(keys[table], ", ")+"}")
			case 2:
				for _, line := range keys[table] {
					dotted = append(dotted, table+"."+line)
				}
			}
		}
		data := strings.Join(append(rapid.Permutation(dotted).Draw(t, "dotted"), rapid.Permutation(headed).Draw(t, "headed")...), "\n")

		got, suspects, err := jobfile.Parse("case.toml", []byte(data))
		refused, suspect := want.Check()
		var issues jobfile.Issues
		if err != nil {
			issues = err.(jobfile.Issues)
		}
		same(t, data, "refused", refused, issues)
		same(t, data, "suspect", suspect, suspects)
		if err == nil && fmt.Sprint(got.Job) != fmt.Sprint(want) {
			t.Fatalf("%s\nwant %v\ngot  %v", data, want, got.Job)
		}
	})
}

// same compares problems with issues, and looks for each key on its line.
func same(t *rapid.T, data, what string, want slipcase.Problems, got jobfile.Issues) {
	var keys, found []string
	for _, p := range want {
		keys = append(keys, p.Key+": "+p.Wrong)
	}
	lines := strings.Split(data, "\n")
	for _, i := range got {
		key, isDefault := strings.CutSuffix(i.Key, " (default)")
		found = append(found, key+": "+i.Wrong)
		word := key[strings.Index(key, ".")+1:] + " = "
		if !isDefault && !strings.Contains(lines[i.Line-1], word) {
			t.Fatalf("%s\n%s: not on its line", data, i)
		}
	}
	slices.Sort(keys)
	slices.Sort(found)
	if !slices.Equal(keys, found) {
		t.Fatalf("%s\n%s: want %q\ngot %q", data, what, keys, found)
	}
}
