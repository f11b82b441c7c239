package typeset

import (
	"strings"
	"unicode"

	"golang.org/x/text/unicode/bidi"
)

// Arabic and the other scripts of its way join their letters, which is not done
// here: a letter stands as it does by itself.
var joined = []*unicode.RangeTable{unicode.Arabic, unicode.Syriac, unicode.Mandaic, unicode.Nko}

// Unjoined returns the first letter of a text that should be joined to its
// neighbours and is not; 0 where there is none.
func Unjoined(s string) rune {
	for _, r := range s {
		if unicode.In(r, joined...) && unicode.IsLetter(r) {
			return r
		}
	}
	return 0
}

// ordered returns a line as it is seen, from left to right. All outputs are English,
// so that a line runs from left to right; letters of another direction, with what
// stands between them, are a stretch by itself (see stretches), in the order of the
// Unicode Bidirectional Algorithm (UAX 9).
func ordered(s string) string {
	return stretches(s, func(stretch string) string {
		var p bidi.Paragraph
		if _, err := p.SetString(stretch, bidi.DefaultDirection(bidi.RightToLeft)); err != nil {
			return stretch
		}
		order, err := p.Order()
		if err != nil {
			return stretch
		}
		var b strings.Builder
		for i := order.NumRuns() - 1; i >= 0; i-- { // they come in the order of the text
			run := order.Run(i)
			if run.Direction() == bidi.RightToLeft { // its marks come before their letters, as they are drawn
				b.WriteString(bidi.ReverseString(run.String()))
			} else {
				b.WriteString(run.String())
			}
		}
		return b.String()
	})
}

// stretches changes every stretch of a text that runs from right to left: from one
// letter of that direction to the last before a letter of the other. What stands
// around it, such as the size behind a name, is no part of it and stays where it is.
func stretches(s string, change func(string) string) string {
	if strings.IndexFunc(s, leftward) < 0 {
		return s
	}
	var b strings.Builder
	start, end := -1, 0 // of a stretch; end is behind the last written where there is none
	for i, r := range s {
		class, size := bidi.LookupString(s[i:])
		switch {
		case leftward(r):
			if start < 0 {
				b.WriteString(s[end:i])
				start = i
			}
			end = i + size
		case start >= 0 && unicode.Is(unicode.Mn, r) && end == i: // of the letter before
			end = i + size
		case start >= 0 && class.Class() == bidi.L:
			b.WriteString(change(s[start:end]))
			start = -1
		}
	}
	if start >= 0 {
		b.WriteString(change(s[start:end]))
	}
	return b.String() + s[end:]
}

// Isolated marks every such stretch, for a viewer that puts letters in order itself, so
// that it leaves what stands around where it is (UAX 9: RLI and PDI).
func Isolated(s string) string {
	return stretches(s, func(stretch string) string { return "\u2067" + stretch + "\u2069" })
}

func leftward(r rune) bool {
	if r < 0x590 { // Hebrew is the first
		return false
	}
	class, _ := bidi.LookupRune(r)
	return class.Class() == bidi.R || class.Class() == bidi.AL
}
