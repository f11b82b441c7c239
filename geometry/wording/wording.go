// Package wording has what all outputs say alike: how names are listed and things
// counted, what keeps a maker's own words in their place, tables of text, and the
// cautions.
package wording

import (
	"cmp"
	"fmt"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// FarOff asks about what was measured, where it is so far off that it is more likely a slip
// of reading or writing.
const FarOff = "far from the plan: a slip?"

// OneLine returns text on one line, its words one space apart.
func OneLine(s string) string { return strings.Join(strings.Fields(s), " ") }

// Capital returns text with its first letter a capital.
func Capital(s string) string { return started(s, unicode.ToUpper) }

// Lower returns text with its first letter small.
func Lower(s string) string { return started(s, unicode.ToLower) }

func started(s string, as func(rune) rune) string {
	first, size := utf8.DecodeRuneInString(s)
	if size == 0 {
		return s
	}
	return string(as(first)) + s[size:]
}

// Sentence returns text with a capital and a full stop.
func Sentence(s string) string { return Capital(s) + "." }

// And lists names as a sentence does: "a, b and c".
func And[W ~string](names []W) string { return listed(names, " and ") }

// Or lists names as a sentence does: "a, b or c".
func Or[W ~string](names []W) string { return listed(names, " or ") }

// Some is And of the first names, no more than most, and how many more there are.
func Some(names []string, most int) string {
	if more := len(names) - most; more > 0 {
		names = append(names[:most:most], fmt.Sprintf("%d more", more))
	}
	return And(names)
}

func listed[W ~string](names []W, last string) (out string) {
	for i, n := range names {
		switch {
		case i > 0 && i == len(names)-1:
			out += last
		case i > 0:
			out += ", "
		}
		out += string(n)
	}
	return out
}

// Count writes a number of things whose plural has an s: "1 sheet", "3 sheets".
func Count(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}

// Titled names something by its title or, where that is empty, by what it is.
func Titled(title, kind string) string { return cmp.Or(OneLine(title), Capital(kind)) }

// Cases names what is made: a case by its title, several by their number.
func Cases(n int, title func(n int) string) string {
	if n == 1 {
		return OneLine(title(0))
	}
	return Count(n, "case")
}

// Letters counts from 1: A to Z, then AA, AB and on.
func Letters(n int) string {
	text := ""
	for ; n > 0; n = (n - 1) / 26 {
		text = string(rune('A'+(n-1)%26)) + text
	}
	return text
}

// OfThickness returns a material with its thickness: "grey board 2 mm", or, where the maker's
// name for it has a figure in it, "grey board 2 mm (2.04 mm)".
func OfThickness(name, thickness string) string {
	if strings.ContainsAny(name, "0123456789") {
		return name + " (" + thickness + ")"
	}
	return name + " " + thickness
}

// Printable writes what can't be printed as an escape, such as \n or \u202e, so
// that a maker's text does nothing to a terminal but being read.
func Printable(s string) string {
	var b strings.Builder
	for _, r := range s {
		if unicode.IsPrint(r) {
			b.WriteRune(r)
			continue
		}
		quoted := strconv.QuoteRune(r)
		b.WriteString(quoted[1 : len(quoted)-1])
	}
	return b.String()
}

// Quote returns text in quotes, shortened, control characters escaped.
func Quote(s string) string { return strconv.Quote(Shorten(s)) }

// Shorten returns no more than the first 40 characters of text.
func Shorten(s string) string {
	n := 0
	for i := range s {
		if n == 40 {
			return s[:i] + "…"
		}
		n++
	}
	return s
}

// Wrap breaks text into lines no longer than so many characters, between words.
func Wrap(s string, width int) string {
	var b strings.Builder
	long := 0
	for _, w := range strings.Fields(s) {
		n := utf8.RuneCountInString(w)
		switch {
		case long == 0:
		case long+1+n > width:
			b.WriteByte('\n')
			long = 0
		default:
			b.WriteByte(' ')
			long++
		}
		b.WriteString(w)
		long += n
	}
	return b.String()
}

// Decimal writes a number with no more than so many decimals, without zeros at its
// end, and never as -0.
func Decimal(v float64, decimals int) string {
	s := strconv.FormatFloat(v, 'f', decimals, 64)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	if s == "-0" {
		return "0"
	}
	return s
}
