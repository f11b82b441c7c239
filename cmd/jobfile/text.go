package jobfile

import (
	"fmt"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/unicode/norm"

	"forel/geometry/job"
	"forel/geometry/wording"
	"forel/render/typeset"
)

// mostLetters is how many characters a maker's own text may have.
const mostLetters = 200

// steering tells of characters that are not seen but change how text around
// them is set: control and format characters, those that turn its direction, and those
// that end a line. Two that only part or join letters are left.
func steering(c rune) bool {
	const nonJoiner, joiner = '\u200c', '\u200d'
	return unicode.In(c, unicode.Cc, unicode.Cf, unicode.Zl, unicode.Zp) && c != nonJoiner && c != joiner
}

// Text reads a maker's own text, such as a title or a student's name, in a sentence
// "the title". It returns it with letters and accents composed (Unicode's form NFC);
// where ok is false, p is what is wrong with it.
func Text(text, what string) (composed string, p job.Problem, ok bool) {
	if !utf8.ValidString(text) {
		return "", job.Problem{Value: wording.Quote(text), Reason: "is not UTF-8 text", Fix: "type " + what + " again"}, false
	}
	if i := strings.IndexFunc(text, steering); i >= 0 {
		c, _ := utf8.DecodeRuneInString(text[i:])
		return "", job.Problem{Value: wording.Quote(text), Reason: fmt.Sprintf("is not one line of text: it has %U in it, which is not seen", c),
			Fix: "write " + what + " without line ends, tabs and other control characters"}, false
	}
	if composed = norm.NFC.String(text); utf8.RuneCountInString(composed) > mostLetters {
		return "", job.Problem{Reason: what + " is too long", Fix: fmt.Sprintf("write no more than %d characters", mostLetters)}, false
	}
	return composed, job.Problem{}, true
}

// Unset tells what of a text the typefaces can't show as it is written.
func Unset(text string) (ps job.Problems) {
	var lacking []string
	for _, c := range text {
		if one := fmt.Sprintf("%q", string(c)); !typeset.Has(c) && !slices.Contains(lacking, one) {
			lacking = append(lacking, one)
		}
	}
	if len(lacking) > 0 {
		ps = append(ps, job.Problem{Value: wording.Some(lacking, 5), Reason: fmt.Sprintf("is in none of the typefaces: PDFs show %c in its place, other files leave it to the viewer", typeset.Missing),
			Fix: "write it in other letters"})
	}
	if c := typeset.Unjoined(text); c != 0 {
		ps = append(ps, job.Problem{Value: fmt.Sprintf("%q", string(c)), Reason: "and its neighbours stand apart in PDFs: letters of its script are not joined there",
			Fix: "read it over in print, or write it in other letters"})
	}
	return ps
}

// title reads a maker's own text.
func (r *reader) title(key string, to *string) {
	v, ok := r.get(key)
	switch {
	case !ok:
		return
	case v.kind != textKind:
		r.reject(v, "is no "+spoken(key), `give text in quotes, such as "Harbour log"`)
		return
	}
	text, p, ok := Text(v.text, "the "+spoken(key))
	if !ok {
		r.tell(v.at, p)
		return
	}
	*to = text
	for _, p := range Unset(text) {
		p.Key = key
		r.suspects = append(r.suspects, p)
	}
}
