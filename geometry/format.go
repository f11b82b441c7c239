package geometry

import (
	"math"
	"strconv"
	"strings"
)

// Rounding is how lengths are shown: the unit, and the step to whose nearest
// multiple they are rounded, halves away from zero. Use one of the values
// below; a step of zero or less is taken for one whole unit.
type Rounding struct {
	Unit Unit
	Step Length
}

// The roundings a maker can choose.
var (
	ToHalfMM  = Rounding{MM, 0.5}
	ToTenthMM = Rounding{MM, 0.1}
	To32nd    = Rounding{IN, Inch / 32}
	To64th    = Rounding{IN, Inch / 64}
)

// ParseRounding reads the step of a rounding for a maker working in u: 0.5 or
// 0.1 for MM, 1/32 or 1/64 for IN, written in any way ParseLength reads. Any
// other step is refused with a *ParseError that names those two.
func ParseRounding(text string, u Unit) (Rounding, error) {
	offered, right := []Rounding{ToHalfMM, ToTenthMM}, "give 0.5 or 0.1"
	if u == IN {
		offered, right = []Rounding{To32nd, To64th}, "give 1/32 or 1/64"
	}
	if step, err := ParseLength(text, u); err == nil {
		for _, r := range offered {
			if step.Near(r.Step) {
				return r, nil
			}
		}
	}
	return Rounding{}, &ParseError{Text: text, Reason: "is no rounding for " + u.String(), Fix: right}
}

// String returns the rounding in words, such as "to the nearest 0.1 mm".
func (r Rounding) String() string { return "to the nearest " + r.Format(r.step()) }

// Format returns the rounded length with its unit: "151.7 mm", always with one
// decimal, or "5 31/32 in", the fraction reduced.
func (r Rounding) Format(l Length) string { return r.Number(l) + " " + r.Unit.String() }

// Pretty is Format with a single character for halves, quarters and eighths
// of an inch: "9¼ in", but "5 31/32 in".
func (r Rounding) Pretty(l Length) string { return r.number(l, glyphs) + " " + r.Unit.String() }

// PrettyNumber is Pretty without the unit.
func (r Rounding) PrettyNumber(l Length) string { return r.number(l, glyphs) }

// PrettySize is Pretty of a width and a height: "151.7 × 227.8 mm".
func (r Rounding) PrettySize(width, height Length) string {
	return r.PrettyNumber(width) + " × " + r.Pretty(height)
}

// Number is Format without the unit.
func (r Rounding) Number(l Length) string { return r.number(l, nil) }

var glyphs = map[string]string{
	"1/2": "½", "1/4": "¼", "3/4": "¾", "1/8": "⅛", "3/8": "⅜", "5/8": "⅝", "7/8": "⅞",
}

// number writes the rounded length. One of 2^53 steps or more, beyond any use,
// and one that isn't finite are written as a decimal number.
func (r Rounding) number(l Length, glyphs map[string]string) string {
	parts := math.Round(float64(r.Unit.Length() / r.step()))
	n := nearest(float64(l/r.Unit.Length()) * parts)
	if !(math.Abs(n) < 1<<53) { // true for NaN too
		return strconv.FormatFloat(float64(l/r.Unit.Length()), 'f', 1, 64)
	}
	if r.Unit == IN {
		return mixed(int64(n), int64(parts), glyphs)
	}
	return strconv.FormatFloat(float64(int64(n))/parts, 'f', 1, 64) // no -0
}

// mixed writes n/den as a whole number and a reduced fraction.
func mixed(n, den int64, glyphs map[string]string) string {
	var b strings.Builder
	if n < 0 {
		b.WriteByte('-')
		n = -n
	}
	whole, num := n/den, n%den
	if whole > 0 || num == 0 {
		b.WriteString(strconv.FormatInt(whole, 10))
	}
	if num == 0 {
		return b.String()
	}
	for num%2 == 0 && den%2 == 0 {
		num, den = num/2, den/2
	}
	f := strconv.FormatInt(num, 10) + "/" + strconv.FormatInt(den, 10)
	if g := glyphs[f]; g != "" {
		b.WriteString(g)
		return b.String()
	}
	if whole > 0 {
		b.WriteByte(' ')
	}
	b.WriteString(f)
	return b.String()
}

// step returns the rounding's step, one unit where it has none.
func (r Rounding) step() Length {
	if r.Step <= 0 {
		return r.Unit.Length()
	}
	return r.Step
}

// Fine writes a clearance or another small length more finely than sizes are
// shown: to 0.01 mm or 0.001 in.
func Fine(l Length, u Unit) string { return FineNumber(l, u) + " " + u.String() }

// FineNumber is Fine without the unit.
func FineNumber(l Length, u Unit) string {
	digits, step := 2, 0.01*Millimetre
	if u == IN {
		digits, step = 3, 0.001*Inch
	}
	l = l.Round(step)
	if l.Near(0) {
		l = 0 // not -0
	}
	return strconv.FormatFloat(float64(l/u.Length()), 'f', digits, 64)
}

// Thickness writes the thickness of a material, which is finer than any ruler: in
// inches in thousandths, in millimetres with three digits.
func (r Rounding) Thickness(l Length) string {
	if r.Unit == IN {
		return Fine(l, r.Unit)
	}
	if l > 0 {
		l = l.Round(Length(math.Pow10(int(math.Floor(math.Log10(l.MM()))) - 2)))
	}
	return strconv.FormatFloat(l.MM(), 'g', 3, 64) + " mm"
}

// Settable writes a length as a maker would type it: a 64th of an inch as a
// fraction, anything else as Fine does, without needless zeros.
func Settable(l Length, u Unit) string {
	if n := l / To64th.Step; u == IN && n.Near(n.Round(1)) {
		return To64th.Format(l)
	}
	return strings.TrimRight(strings.TrimRight(FineNumber(l, u), "0"), ".") + " " + u.String()
}

// FineStep says how finely Fine writes.
func FineStep(u Unit) string {
	if u == IN {
		return "0.001 in"
	}
	return "0.01 mm"
}
