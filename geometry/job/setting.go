package job

import (
	"fmt"
	"slices"
	"strings"

	"forel/geometry"
)

// Setting is one value of a job that a maker can set: its key in a job file, the
// limits outside which it is taken for a slip, and where in the job it is kept.
// Just one of Length, Word and Number says where.
type Setting struct {
	Key      string
	What     string  // what it is, for messages
	Min, Max float64 // both allowed; of a length in millimetres, of a share in percent
	Length   *Length
	Word     *string
	Words    []string // those allowed for Word; the first is the default
	Number   *float64
	Percent  bool // Number is a share in percent
	Auto     bool // the word "auto" stands for a length that suits, kept as zero
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

// Check tells why the value is out of its limits; ok is true where it is not.
func (s Setting) Check(unit geometry.Unit) (p Problem, ok bool) {
	switch {
	case s.Word != nil:
		if slices.Contains(s.Words, *s.Word) {
			return Problem{}, true
		}
		return Problem{s.Key, fmt.Sprintf("%.40q", *s.Word), "is not known", "give one of " + strings.Join(s.Words, ", ") + " (" + s.What + ")"}, false
	case s.Number != nil:
		if v := *s.Number; !(v >= s.Min && v <= s.Max) { // true for NaN too
			sign := ""
			if s.Percent {
				sign = " %"
			}
			return Problem{s.Key, Number(v) + sign, "is out of range", "give " + Number(s.Min) + " to " + Number(s.Max) + " (" + s.What + ")"}, false
		}
	case !s.Auto || *s.Length != 0:
		return CheckRange(s.Key, s.What, *s.Length, Length(s.Min), Length(s.Max), unit)
	}
	return Problem{}, true
}

// CheckRange tells what is wrong with a length outside [lo, hi]; ok is true
// where nothing is. A length that would lie within the limits in the other unit
// is asked about.
func CheckRange(key, what string, l, lo, hi Length, unit geometry.Unit) (p Problem, ok bool) {
	if l >= lo && l <= hi { // false for NaN too
		return Problem{}, true
	}
	p = Problem{Key: key, Fix: Limited(what, lo, hi, unit)}
	switch {
	case l < 0:
		p.Reason = "a length can't be negative"
	case l == 0:
		p.Reason = "zero is no measurement"
	case l < lo:
		p.Value, p.Reason = Show(l, unit, 0), "is too small"
	case l > hi:
		p.Value, p.Reason = Show(l, unit, 0), "is too large"
	default:
		p.Reason = "not a length"
	}
	switch {
	case unit == geometry.MM && l > 0 && l < lo && l*geometry.Inch >= lo && l*geometry.Inch <= hi:
		p.Fix += `; if it was inches, write "` + Number(l.MM()) + ` in"`
	case unit == geometry.IN && l > hi && l/geometry.Inch >= lo && l/geometry.Inch <= hi:
		p.Fix += `; if it was millimetres, write "` + Number(float64(l/geometry.Inch)) + ` mm"`
	}
	return p, false
}

// Limited says which lengths are allowed for what.
func Limited(what string, lo, hi Length, unit geometry.Unit) string {
	return "give " + Show(lo, unit, +1) + " to " + Show(hi, unit, -1) + " (" + what + ")"
}

// Dimension is one dimension of a book as a setting of its readings.
type Dimension struct {
	Key      string // within its [[book]]
	What     string
	Min, Max Length
	At       func(*Book) *Readings
	Optional bool
}

// Dimensions lists the dimensions of a book with their limits.
var Dimensions = []Dimension{
	{"height", "the book from head to tail", 40, 700, func(b *Book) *Readings { return &b.Height }, false},
	{"width", "the book from spine to fore-edge", 20, 700, func(b *Book) *Readings { return &b.Width }, false},
	{"thickness", "the book's thickness", 1, 300, func(b *Book) *Readings { return &b.Thickness }, false},
	{"thickness_at_fore_edge", "the book's thickness at the fore-edge", 1, 300, func(b *Book) *Readings { return &b.ForeEdge }, true},
}

// MostBooks is how many volumes one case takes.
const MostBooks = 12

// CheckRanges holds the books and each setting by itself against its limits.
func (c Common) CheckRanges(settings []Setting) Problems {
	var ps Problems
	switch {
	case len(c.Books) == 0:
		ps = append(ps, Problem{"book", "", "no book", "add a [[book]] with height, width and thickness"})
	case len(c.Books) > MostBooks:
		ps = append(ps, Problem{"book", "", fmt.Sprintf("more than %d books", MostBooks), "make two cases"})
	}
	for i, b := range c.Books {
		for _, d := range Dimensions {
			key, readings := BookKey(i, d.Key), *d.At(&b)
			if len(readings) == 0 && !d.Optional {
				ps = append(ps, Problem{key, "", "missing", "measure " + d.What})
			}
			for _, l := range readings {
				if p, ok := CheckRange(key, d.What, l, d.Min, d.Max, c.Unit); !ok {
					ps = append(ps, p)
				}
			}
		}
	}
	for _, s := range settings {
		if p, ok := s.Check(c.Unit); !ok {
			ps = append(ps, p)
		}
	}
	return ps
}

// Suspects lists what of the books is possible but more often a slip.
func (c Common) Suspects() Problems {
	var ps Problems
	for i, b := range c.Books {
		h, w, t := b.Height.Largest(), b.Width.Largest(), b.Thick()
		if w > h {
			ps = append(ps, Problem{BookKey(i, "width"), "", "greater than the height", "right for an oblong book; otherwise the two are swapped: height runs head to tail, width spine to fore-edge"})
		}
		if t > w {
			ps = append(ps, Problem{BookKey(i, "thickness"), "", "greater than the width", "check that thickness runs through both covers and width from spine to fore-edge"})
		}
		for _, d := range Dimensions {
			r := *d.At(&b)
			if far := r.Spread(); far > max(3, r.Largest()/20) {
				ps = append(ps, Problem{BookKey(i, d.Key), "", "the readings differ by " + Show(far, c.Unit, 0), "measure again; the largest, " + Show(r.Largest(), c.Unit, 0) + ", is used"})
			}
		}
	}
	return ps
}
