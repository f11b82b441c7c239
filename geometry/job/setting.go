package job

import (
	"fmt"
	"slices"
	"strings"

	"forel/geometry"
)

// Setting is one value of a job that a maker can set: its key in a job file, the
// limits outside which it is taken for a slip, and where in the job it is kept.
// Just one of Length, Word, Number and Readings says where.
type Setting struct {
	Key      string
	What     string  // what it is, for messages
	Min, Max float64 // both allowed; of a length in millimetres, of a share in percent
	Length   *Length
	Word     *string
	Words    []string // those allowed for Word; the first is the default
	Number   *float64
	Readings *Readings // of one dimension; none: it was not measured
	Percent  bool      // Number is a share in percent
	Weight   bool      // it is a weight in grams
	Auto     bool      // the word "auto" stands for a length that suits, kept as zero
	OfBook   bool      // it is measured on the book
}

// LengthOf returns the setting of a length between two limits in millimetres.
func LengthOf(key, what string, least, most float64, at *Length) Setting {
	return Setting{Key: key, What: what, Min: least, Max: most, Length: at}
}

// OrAuto returns the setting of a length that the word "auto" may stand for.
func (s Setting) OrAuto() Setting {
	s.Auto = true
	return s
}

// OnBook returns the setting of what is measured on the book.
func (s Setting) OnBook() Setting {
	s.OfBook = true
	return s
}

// ReadingsOf returns the setting of readings of something that is made, each between
// two limits in millimetres. It is a measurement of this very kind: a job of another
// kind that has it is refused.
func ReadingsOf(key, what string, least, most float64, at *Readings) Setting {
	return Setting{Key: key, What: what, Min: least, Max: most, Readings: at}
}

// WordOf returns the setting of one of a few words.
func WordOf(key, what string, words []string, at *string) Setting {
	return Setting{Key: key, What: what, Words: words, Word: at}
}

// NumberOf returns the setting of a plain number.
func NumberOf(key, what string, least, most float64, at *float64) Setting {
	return Setting{Key: key, What: what, Min: least, Max: most, Number: at}
}

// PercentOf returns the setting of a share in percent.
func PercentOf(key, what string, least, most float64, at *float64) Setting {
	return Setting{Key: key, What: what, Min: least, Max: most, Number: at, Percent: true}
}

// Same tells whether two settings of one key have the same value.
func (s Setting) Same(t Setting) bool {
	switch {
	case s.Word != nil:
		return *s.Word == *t.Word
	case s.Number != nil:
		return *s.Number == *t.Number
	case s.Readings != nil:
		return slices.Equal(*s.Readings, *t.Readings)
	}
	return *s.Length == *t.Length
}

// Check tells why the value is out of its limits; ok is true where it is not.
func (s Setting) Check(unit geometry.Unit) (p Problem, ok bool) {
	switch {
	case s.Word != nil:
		if slices.Contains(s.Words, *s.Word) {
			return Problem{}, true
		}
		return Problem{Key: s.Key, Value: fmt.Sprintf("%.40q", *s.Word), Reason: "is not known",
			Fix: "give one of " + strings.Join(s.Words, ", ") + " (" + s.What + ")"}, false
	case s.Number != nil:
		if v := *s.Number; !(v >= s.Min && v <= s.Max) { // true for NaN too
			sign := ""
			if s.Percent {
				sign = " %"
			}
			return Problem{Key: s.Key, Value: number(v) + sign, Reason: "is out of range",
				Fix: "give " + number(s.Min) + " to " + number(s.Max) + " (" + s.What + ")"}, false
		}
	case s.Readings != nil:
		for _, l := range *s.Readings {
			if p, ok := CheckRange(s.Key, s.What, l, Length(s.Min), Length(s.Max), unit, nil); !ok {
				return p, false
			}
		}
	case !s.Auto || *s.Length != 0:
		return CheckRange(s.Key, s.What, *s.Length, Length(s.Min), Length(s.Max), unit, nil)
	}
	return Problem{}, true
}

// CheckRange tells what is wrong with a length outside [lo, hi]; ok is true
// where nothing is. A length that would lie within the limits in the other unit is
// asked about, and one that would be usual with its decimal sign a place on; far tells
// what is usual, nil where nobody knows.
func CheckRange(key, what string, l, lo, hi Length, unit geometry.Unit, far Far) (p Problem, ok bool) {
	const rounding = 1e-9
	if l >= lo-rounding && l <= hi+rounding { // false for NaN too
		return Problem{}, true
	}
	p = Problem{Key: key, Fix: Limited(what, lo, hi, unit), Mend: Change{Key: key, Value: Shown(lo, unit, +1)}}
	switch {
	case l < 0 && lo >= 0:
		p.Reason = "a length can't be negative"
	case l == 0:
		p.Reason = "zero is no measurement"
	case l < lo:
		p.Value, p.Reason, p.Mend = Show(l, unit, 0), "is too small", Change{Key: key, Value: Shown(lo, unit, +1)}
	case l > hi:
		p.Value, p.Reason = Show(l, unit, 0), "is too large"
		p.Mend.Value = Shown(hi, unit, -1)
	default:
		p.Reason = "not a length"
	}
	p.meant(l, lo, hi, unit, far)
	return p, false
}

// Limited says which lengths are allowed for what.
func Limited(what string, lo, hi Length, unit geometry.Unit) string {
	return "give " + Show(lo, unit, +1) + " to " + Show(hi, unit, -1) + " (" + what + ")"
}
