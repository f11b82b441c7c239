package geometry

import (
	"errors"
	"math"
	"regexp"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/unicode/norm"

	"forel/geometry/wording"
)

// ParseError tells why a text was not taken for a length or a rounding.
type ParseError struct {
	Text   string // as it was given
	Reason string // what is wrong with it, such as "has an exponent"; one line
	Fix    string // what would do; one line
}

// Quoted returns the text in quotes, shortened, control characters escaped.
func (e *ParseError) Quoted() string { return wording.Quote(e.Text) }

// Error returns what is wrong and what would do, as one line.
func (e *ParseError) Error() string { return e.Quoted() + " " + e.Reason + "; " + e.Fix }

// ParseLength reads a length as a maker writes it: a decimal number or a
// fraction, then mm, cm, in, inch, inches or an inch mark; a number without a
// unit is in bare. 235 mm, 23.5 cm, 23,5 cm, 9.25 in, 9 1/4 in, 9-1/4", 9¼ in
// and ¹⁄₁₆ in are all read; upper and lower case are the same.
//
// The length is finite and zero or more; narrower limits are for the caller.
// Whatever could be read in two ways is refused with a *ParseError: thousands
// separators, a number such as 1,234, and a fraction without a unit where bare
// is MM. So are feet, exponents, negative numbers and mixed numbers whose
// fraction is one or more.
func ParseLength(text string, bare Unit) (Length, error) {
	l, e := measure(normalise(text), bare)
	if e != nil {
		e.Text = text
		return 0, e
	}
	return l, nil
}

// ParseSigned is ParseLength of a length that may have a minus before it.
func ParseSigned(text string, bare Unit) (Length, error) {
	rest, minus := strings.CutPrefix(strings.TrimSpace(strings.ReplaceAll(text, "−", "-")), "-")
	l, err := ParseLength(rest, bare)
	if minus {
		l = -l
	}
	return l, err
}

// ErrSides is given for a text that is not two lengths with an x between them.
var ErrSides = errors.New("not two sides with an x between them")

// ParseSides reads the two sides of a sheet with an x between them, such as
// "210 x 297 mm" or "8 1/2 × 11 in", in the order written. A side without a unit takes
// the other's, or else is in bare. It returns ErrSides or what ParseLength does.
func ParseSides(text string, bare Unit) (first, second Length, err error) {
	sides := strings.FieldsFunc(text, func(r rune) bool { return r == 'x' || r == 'X' || r == '×' })
	if len(sides) != 2 {
		return 0, 0, ErrSides
	}
	var l [2]Length
	for i, side := range sides {
		_, own := UnitOf(side, bare)
		if _, other := UnitOf(sides[1-i], bare); own == "" {
			side += " " + other
		}
		if l[i], err = ParseLength(side, bare); err != nil {
			return 0, 0, err
		}
	}
	return l[0], l[1], nil
}

// units holds the words for a unit, in lower case.
var units = map[string]Length{
	"mm": Millimetre, "millimetre": Millimetre, "millimetres": Millimetre,
	"millimeter": Millimetre, "millimeters": Millimetre,
	"cm": Centimetre, "centimetre": Centimetre, "centimetres": Centimetre,
	"centimeter": Centimetre, "centimeters": Centimetre,
	"in": Inch, "in.": Inch, "inch": Inch, "inches": Inch, `"`: Inch,
}

// UnitOf returns the unit that a length is written in, which is MM where it is in centimetres
// and bare where it has none, and the word for it, in lower case.
func UnitOf(text string, bare Unit) (u Unit, word string) {
	_, word = splitUnit(normalise(text))
	switch units[word] {
	case 0:
		return bare, word
	case Inch:
		return IN, word
	}
	return MM, word
}

// example is what would be right where nothing more fitting can be said.
const example = "give a length such as 235 mm or 9 1/4 in"

// measure reads a normalised text. Its errors lack the text.
func measure(s string, bare Unit) (Length, *ParseError) {
	if e := refusedForm(s); e != nil {
		return 0, e
	}
	number, unit := splitUnit(s)
	if !strings.ContainsAny(number, "0123456789") {
		return 0, refuse("doesn't begin with a number", example)
	}
	scale := bare.Length()
	if unit != "" {
		var ok bool
		if scale, ok = units[unit]; !ok {
			return 0, wrongUnit(unit)
		}
	}
	value, e := parseNumber(number)
	if e != nil {
		return 0, e
	}
	if unit == "" && bare == MM && strings.Contains(number, "/") {
		return 0, refuse("is a fraction without a unit", "a fraction needs its unit: write "+wording.Shorten(number)+" in")
	}
	l := Length(value) * scale
	if math.IsInf(l.MM(), 0) {
		return 0, refuse("is too large a number", example)
	}
	return l, nil
}

var (
	exponent   = regexp.MustCompile(`\d ?e[+-]?\d`)
	apostrophe = regexp.MustCompile(`\d'\d{3}(\D|$)`) // 1'234
	footMark   = regexp.MustCompile(`\d ?'`)
	words      = regexp.MustCompile(`[a-z]+|"`)
)

// refusedForm finds what is never a length, whatever its number and unit.
func refusedForm(s string) *ParseError {
	if s == "" {
		return refuse("holds no length", example)
	}
	first, _, _ := strings.Cut(strings.TrimLeft(s, "+- "), " ")
	switch first {
	case "nan":
		return refuse("isn't a number", example)
	case "inf", "infinity", "∞":
		return refuse("is infinite", example)
	}
	if s[0] == '-' && strings.ContainsAny(s, "0123456789") {
		return refuse("is negative", "a length is zero or more")
	}
	if exponent.MatchString(s) {
		return refuse("has an exponent", "write the number out, such as 1000")
	}
	if apostrophe.MatchString(s) {
		return thousands()
	}
	feet := footMark.MatchString(s)
	for _, w := range words.FindAllString(s, -1) {
		feet = feet || w == "ft" || w == "foot" || w == "feet"
	}
	if feet {
		return refuse("is in feet", "write it in inches or millimetres, such as 12 in")
	}
	return nil
}

// splitUnit parts the number from what follows it.
func splitUnit(s string) (number, unit string) {
	i := strings.IndexFunc(s, func(r rune) bool { return !strings.ContainsRune("0123456789.,/- ", r) })
	if i < 0 {
		return s, ""
	}
	return strings.TrimSpace(s[:i]), s[i:]
}

// wrongUnit tells what is wrong with the text after a number.
func wrongUnit(unit string) *ParseError {
	known := 0
	for _, w := range words.FindAllString(unit, -1) {
		if _, ok := units[w]; ok {
			known++
		}
	}
	switch {
	case known > 1:
		return refuse("has more than one unit", "give one number and one unit, such as 235 mm or 9 1/4 in")
	case strings.IndexFunc(unit, func(r rune) bool { return !unicode.IsLetter(r) }) < 0:
		return refuse("has an unknown unit", "write mm, cm or in for "+wording.Quote(unit))
	}
	return refuse("isn't a length", example)
}

var (
	decimal        = regexp.MustCompile(`^\d*[.,]?\d+$`)
	ambiguousComma = regexp.MustCompile(`^[1-9]\d{0,2},\d{3}$`)
	spacedGroups   = regexp.MustCompile(`^\d{1,3}( \d{3})+([.,]\d+)?$`)
	twoNumbers     = regexp.MustCompile(`\d[ -]+\d`)
	fraction       = regexp.MustCompile(`^(?:(\d+)[ -])?(\d+) ?/ ?(\d+)$`)
)

// parseNumber reads a decimal number or a fraction, without sign or unit. A
// number too large for a float64 comes out as infinite.
func parseNumber(s string) (float64, *ParseError) {
	switch {
	case ambiguousComma.MatchString(s):
		return 0, refuse("can be read in two ways",
			"write "+strings.Replace(s, ",", "", 1)+" or "+strings.Replace(s, ",", ".", 1))
	case decimal.MatchString(s):
		return float(strings.Replace(s, ",", ".", 1)), nil
	case strings.Contains(s, "/"):
		return parseFraction(s)
	case spacedGroups.MatchString(s):
		return 0, thousands()
	case strings.Count(s, ".")+strings.Count(s, ",") > 1:
		return 0, refuse("has more than one point or comma", "write a number such as 1234.5, without thousands separators")
	case twoNumbers.MatchString(s):
		return 0, refuse("holds more than one number", "give one length, such as 235 mm or 9 1/4 in")
	}
	return 0, refuse("isn't a length", example)
}

// parseFraction reads a fraction or a mixed number, without sign or unit.
func parseFraction(s string) (float64, *ParseError) {
	m := fraction.FindStringSubmatch(s)
	if m == nil {
		return 0, refuse("isn't a fraction", "write whole numbers, such as 1/4 in or 9 1/4 in")
	}
	num, den := float(m[2]), float(m[3])
	switch {
	case den == 0:
		return 0, refuse("divides by zero", "write a fraction such as 1/4 in")
	case math.IsInf(den, 0):
		return den, nil // told as too large
	case m[1] == "":
		return num / den, nil
	case num >= den:
		return 0, refuse("has a fraction of one or more beside a whole number", "write a smaller fraction, such as 9 1/4 in")
	}
	return (float(m[1])*den + num) / den, nil
}

// float reads digits with at most one point; too large a number is infinite.
func float(digits string) float64 {
	v, _ := strconv.ParseFloat(digits, 64)
	return v
}

// normalise returns the text in lower case and, where there is one, in ASCII,
// its words one space apart. Digits stay apart where their look keeps them
// apart: 9¼ and 9¹⁄₄ both give 9 1/4.
func normalise(text string) string {
	var b strings.Builder
	var last rune // what the last digit was written as, 0 after anything else
	for _, r := range text {
		s := ascii(r)
		if last != 0 && digit(s[0]) && !sameRow(last, r) {
			b.WriteByte(' ')
		}
		b.WriteString(s)
		last = 0
		if digit(s[len(s)-1]) {
			last = r
		}
	}
	s := strings.Join(strings.Fields(strings.ToLower(b.String())), " ")
	return strings.ReplaceAll(s, "''", `"`)
}

var asciiMarks = strings.NewReplacer(
	"\u2044", "/", "\u2215", "/", // fraction slash, division slash
	"\u2010", "-", "\u2013", "-", "\u2212", "-", // hyphen, en dash, minus
)

// ascii returns what a character is compatible with; never an empty string.
func ascii(r rune) string {
	if r < utf8.RuneSelf {
		return string(r)
	}
	switch r {
	case '″', '”':
		return `"`
	case '′', '’', '‘':
		return "'"
	}
	return asciiMarks.Replace(norm.NFKC.String(string(r)))
}

func digit(c byte) bool { return c >= '0' && c <= '9' }

// sameRow tells whether two digits side by side belong to one number: both on
// the line, both superscript or both subscript. A vulgar fraction or a circled
// number stands alone.
func sameRow(a, b rune) bool {
	const super, sub = "⁰¹²³⁴⁵⁶⁷⁸⁹", "₀₁₂₃₄₅₆₇₈₉"
	both := func(in func(rune) bool) bool { return in(a) && in(b) }
	return both(unicode.IsDigit) ||
		both(func(r rune) bool { return strings.ContainsRune(super, r) }) ||
		both(func(r rune) bool { return strings.ContainsRune(sub, r) })
}

func refuse(reason, fix string) *ParseError { return &ParseError{Reason: reason, Fix: fix} }

func thousands() *ParseError {
	return refuse("has a thousands separator", "write the digits without one, such as 1234")
}
