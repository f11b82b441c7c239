package jobfile

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"

	"forel/geometry/job"
	"forel/geometry/wording"
	"forel/paper/money"
)

var (
	inText   = regexp.MustCompile(`^([+-]?\d*[.,]?\d+)\s*(%|g|kg)?$`)
	plainly  = regexp.MustCompile(`^[+-]?\d{1,12}(\.\d{1,6})?$`)
	twoWays  = regexp.MustCompile(`^[+-]?[1-9]\d{0,2},\d{3}$`) // a decimal comma, or one between thousands
	anySpace = strings.NewReplacer("\u00a0", " ", "\u202f", " ", "\u2009", " ")
)

// figure is a sort of number: what may follow one in text, and by how much that makes it
// larger; how it is refused, and what would be right.
type figure struct {
	units              map[string]float64
	none, small, large string
	right              string
	whole              bool // no fractions
}

// figure reads a number within limits, both allowed: bare, or in text with a point or a
// comma. It returns ok = false where it tells what is wrong.
func (r *reader) figure(v value, f figure, lo, hi float64) (n float64, ok bool) {
	n, told := math.NaN(), written(v)
	switch v.kind {
	case numberKind:
		n = float(v.text)
		if _, percent := f.units["%"]; percent && !math.IsNaN(n) && !math.IsInf(n, 0) {
			told += " %"
		}
	case textKind:
		m := inText.FindStringSubmatch(strings.TrimSpace(anySpace.Replace(v.text)))
		if m == nil {
			break
		}
		times, known := f.units[m[2]]
		if m[2] == "" {
			times, known = 1, true
		}
		if !known {
			break
		}
		point := strings.Replace(m[1], ",", ".", 1)
		if twoWays.MatchString(m[1]) {
			r.reject(v, "can be read in two ways", "write "+point+" or "+strings.Replace(m[1], ",", "", 1))
			return 0, false
		}
		n = float(point) * times // infinite where it is too large
	}
	reason := ""
	switch {
	case math.IsNaN(n) || math.IsInf(n, 0) && v.kind == numberKind:
		reason = f.none
	case n < lo:
		reason = f.small
	case n > hi:
		reason = f.large
	case f.whole && n != math.Trunc(n):
		reason = "is no whole number"
	default:
		return n, true
	}
	r.tell(v.at, job.Problem{Value: told, Reason: reason, Fix: f.right})
	return 0, false
}

// numberOf is the figure of a plain number or, where the setting is one, of a share: with or
// without a percent sign.
func numberOf(v value, s job.Setting) figure {
	f := figure{none: "is no number", small: "is too small", large: "is too large"}
	sign := ""
	if s.Percent {
		f.units, sign, f.none = map[string]float64{"%": 1}, " %", "is not a share in percent"
		if strings.HasPrefix(strings.TrimSpace(v.text), "-") {
			f.small = "is negative"
		}
	}
	f.right = fmt.Sprintf("give %s%s to %s%s (%s)", plain(s.Min), sign, plain(s.Max), sign, s.What)
	return f
}

// number reads a plain number, which may have to be a whole one; where it is refused, the
// least that is allowed.
func (r *reader) number(v value, s job.Setting, whole bool) float64 {
	f := numberOf(v, s)
	f.whole = whole
	if n, ok := r.figure(v, f, s.Min, s.Max); ok {
		return n
	}
	return s.Min
}

// Limits of a book's weight, in grams, both allowed.
const (
	leastWeight = 5
	mostWeight  = 30_000
)

// bookWeight is what a book weighs.
var bookWeight = weightAt("book.weight", "what the book weighs", leastWeight, mostWeight, nil).Setting

// weight reads a weight within the limits of its setting, in grams: a number, or text in
// g or kg.
func (r *reader) weight(v value, s job.Setting) float64 {
	right := fmt.Sprintf(`give %s g to %s kg, such as "850 g" or "1.2 kg" (%s; a bare number is in grams)`, plain(s.Min), plain(s.Max/1000), s.What)
	n, _ := r.figure(v, figure{units: map[string]float64{"g": 1, "kg": 1000}, none: "is no weight", small: "is too light", large: "is too heavy", right: right}, s.Min, s.Max)
	return n
}

// mostDecimals is how many decimals a price may have.
const mostDecimals = 6

// amount reads a price or another number that is reckoned with exactly, within the limits
// of its setting, both allowed. It returns ok = false where it tells what is wrong.
func (r *reader) amount(v value, s job.Setting) (a money.Amount, ok bool) {
	n, ok := r.figure(v, numberOf(v, s), s.Min, s.Max)
	if !ok {
		return a, false
	}
	text := strings.Replace(strings.Trim(anySpace.Replace(v.text), " %"), ",", ".", 1)
	if !plainly.MatchString(text) { // with an exponent, or with many decimals
		text = strconv.FormatFloat(n, 'f', -1, 64)
	}
	if _, decimals, _ := strings.Cut(text, "."); len(decimals) > mostDecimals {
		r.tell(v.at, job.Problem{Value: wording.Shorten(strings.TrimSpace(v.text)), Reason: fmt.Sprintf("has more than %d decimals", mostDecimals),
			Fix: "round it, such as to " + plain(n)})
		return a, false
	}
	a, err := money.Parse(text)
	return a, err == nil
}

func plain(v float64) string { return wording.Decimal(v, 6) }
