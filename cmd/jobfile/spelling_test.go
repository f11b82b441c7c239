package jobfile_test

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strconv"
	"strings"

	"pgregory.net/rapid"

	"forel/geometry"
	"forel/geometry/job"
)

func trim(l geometry.Length) string { return plain(l.MM()) }

func plain(n float64) string { return strconv.FormatFloat(n, 'f', -1, 64) }

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

// spellWord writes a word in capitals or not, in one of TOML's quotes.
func spellWord(t *rapid.T, word string) string {
	word = rapid.SampledFrom([]string{word, strings.ToUpper(word), strings.ToUpper(word[:1]) + word[1:], " " + word}).Draw(t, "case")
	quote := rapid.SampledFrom([]string{`"`, `'`, `"""`, `'''`}).Draw(t, "quote")
	return quote + word + quote
}

// spellPercent writes hundredths of a percent in one of the ways a job file has.
func spellPercent(t *rapid.T, hundredths int) string {
	s := strconv.FormatFloat(float64(hundredths)/100, 'f', -1, 64)
	comma := strings.Replace(s, ".", ",", 1)
	return rapid.SampledFrom([]string{
		s, "+" + s, fmt.Sprintf("%de-2", hundredths), `"` + s + `"`, `"` + s + ` %"`, `'` + comma + `%'`, `"""` + comma + `"""`,
	}).Draw(t, "spelling")
}

// drawBooks gives one to three books and the lines of each.
func drawBooks(t *rapid.T) (books []job.Book, lines [][]string) {
	for range rapid.IntRange(1, 3).Draw(t, "books") {
		var book job.Book
		var its []string
		for _, f := range job.Dimensions {
			if f.Optional && rapid.Bool().Draw(t, "left out") {
				continue
			}
			var written []string
			for range rapid.IntRange(1, 3).Draw(t, "readings") {
				l := drawLength(t, f.Key, f.Min, f.Max)
				*f.At(&book) = append(*f.At(&book), l)
				written = append(written, spell(t, l))
			}
			its = append(its, f.Key+" = ["+strings.Join(written, ", ")+"]")
		}
		books = append(books, book)
		lines = append(lines, rapid.Permutation(its).Draw(t, "order"))
	}
	return books, lines
}

// writeBooks writes books each below its heading, or all in one list.
func writeBooks(t *rapid.T, books [][]string) (dotted, headed string) {
	if rapid.Bool().Draw(t, "inline") {
		var its []string
		for _, lines := range books {
			its = append(its, "{"+strings.Join(lines, ",\n")+"}")
		}
		return "book = [" + strings.Join(its, ",\n") + "]", ""
	}
	for _, lines := range books {
		headed += "[[book]]\n" + strings.Join(lines, "\n") + "\n"
	}
	return "", headed
}

// drawSettings changes a job and gives what it wrote, by key.
func drawSettings(t *rapid.T, settings job.Settings) map[string]string {
	written := map[string]string{}
	leftOut := func() bool { return rapid.Bool().Draw(t, "left out") }
	for _, f := range settings.Lengths() {
		switch {
		case leftOut():
		case f.Auto && rapid.Bool().Draw(t, "auto"):
			*f.Length = 0
			written[f.Key] = spellWord(t, "auto")
		default:
			*f.Length = drawLength(t, f.Key, geometry.Length(f.Min), geometry.Length(f.Max))
			written[f.Key] = spell(t, *f.Length)
		}
	}
	for _, c := range settings.Words() {
		if !leftOut() {
			*c.Word = rapid.SampledFrom(c.Words).Draw(t, c.Key)
			written[c.Key] = spellWord(t, *c.Word)
		}
	}
	for _, p := range settings.Numbers() {
		if !leftOut() {
			n := rapid.IntRange(int(math.Ceil(p.Min*100)), int(p.Max*100)).Draw(t, p.Key)
			*p.Number = float64(n) / 100
			written[p.Key] = spellPercent(t, n)
		}
	}
	return written
}

// writeSettings writes each table in one of the ways TOML has: what can stand
// before the first heading, and the rest.
func writeSettings(t *rapid.T, written map[string]string) (dotted, headed []string) {
	var tables []string
	keys := map[string][]string{}
	for _, path := range slices.Sorted(maps.Keys(written)) {
		table, key, below := strings.Cut(path, ".")
		if !below {
			dotted = append(dotted, path+" = "+written[path])
			continue
		}
		if !slices.Contains(tables, table) {
			tables = append(tables, table)
		}
		keys[table] = append(keys[table], key+" = "+written[path])
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
	return dotted, headed
}
