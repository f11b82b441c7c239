package job

import (
	"math"
	"strconv"
	"strings"

	"forel/geometry"
	"forel/geometry/wording"
)

// Problem is one thing wrong with a job, or worth a second look. It is put into
// words here alone.
type Problem struct {
	Key    string // of the job file, such as "board.thickness"; empty where none is to blame
	Of     string // what it is about, where Reason does not say: "the width of volume 2"; may be empty
	Value  string // what is set there, such as "30 mm"; empty where Reason stands by itself
	Reason string // what is wrong with it, such as "is too large"
	Fix    string // what would do, such as "give 0.5 mm to 6 mm"; may be empty
	Mend   Change // the setting that would do, the nearest there is; its Key is empty where that is for the maker to say
	At     Place  // where it stands, if who tells it knows
}

// Place is a line of a file, for messages.
type Place struct {
	Source string // the file's name; empty: not known
	Line   int    // from 1; 0 where no line is to blame
	Key    string // as the file has it, such as "stock[2].size"
}

// Wrong says what is wrong, without the key.
func (p Problem) Wrong() string {
	if p.Value == "" {
		return p.Reason
	}
	return p.Value + " " + p.Reason
}

// Error returns the problem as one line.
func (p Problem) Error() string { return p.about(p.Key) }

// Sentence says it in words that stand without the key.
func (p Problem) Sentence() string { return p.about(p.Of) }

func (p Problem) about(what string) string {
	said := p.Wrong()
	if p.Fix != "" {
		said += "; " + p.Fix
	}
	if what != "" {
		said = what + ": " + said
	}
	return said
}

// Problems are all the reasons a job was refused.
type Problems []Problem

// Sentences returns each problem as Sentence does.
func (ps Problems) Sentences() (out []string) {
	for _, p := range ps {
		out = append(out, p.Sentence())
	}
	return out
}

// Error returns one line a problem.
func (ps Problems) Error() string {
	lines := make([]string, len(ps))
	for i, p := range ps {
		lines[i] = p.Error()
	}
	return strings.Join(lines, "\n")
}

// Limits gathers what is beyond a limit.
type Limits struct {
	Unit   geometry.Unit
	Broken Problems
}

// NewLimits returns a Limits for a maker's unit.
func NewLimits(unit geometry.Unit) *Limits { return &Limits{Unit: unit} }

// Refuse notes a problem.
func (l *Limits) Refuse(p Problem) { l.Broken = append(l.Broken, p) }

// hair is what a length may be beyond a limit, from rounding alone.
const hair = 1e-6

// AtMost notes a value over a limit; why follows the value in the message.
func (l *Limits) AtMost(key string, value, limit Length, why string) {
	if value > limit+hair {
		l.Refuse(Problem{Key: key, Value: Apart(value, limit, -1, l.Unit), Reason: why, Fix: "at most " + Show(limit, l.Unit, -1), Mend: Change{Key: key, Value: Shown(limit, l.Unit, -1)}})
	}
}

// AtLeast notes a value under a limit; why follows the value in the message.
func (l *Limits) AtLeast(key string, value, limit Length, why string) {
	if value < limit-hair {
		l.Refuse(Problem{Key: key, Value: Apart(value, limit, +1, l.Unit), Reason: why, Fix: "at least " + Show(limit, l.Unit, +1), Mend: Change{Key: key, Value: Shown(limit, l.Unit, +1)}})
	}
}

// Instead notes a word that does not do and one that does; why follows the word in the
// message.
func (l *Limits) Instead(key, word, why, right string) {
	l.Refuse(Problem{Key: key, Value: strconv.Quote(word), Reason: why, Fix: "give " + strconv.Quote(right), Mend: Change{Key: key, Word: right}})
}

// Show writes a length in the maker's unit, to a hundredth of a millimetre or
// a thousandth of an inch: up where side is positive, down where negative, so
// that a limit quoted in a message is itself within the limit.
func Show(l Length, unit geometry.Unit, side int) string {
	return number(shown(l, unit, side)) + " " + unit.String()
}

// Shown returns the length that Show writes.
func Shown(l Length, unit geometry.Unit, side int) Length {
	return Length(shown(l, unit, side)) * unit.Length()
}

// shown is Show as a number of units.
func shown(l Length, unit geometry.Unit, side int) float64 {
	digits := 2
	if unit == geometry.IN {
		digits = 3
	}
	scale := math.Pow10(digits)
	v := float64(l/unit.Length()) * scale
	switch {
	case side > 0:
		v = math.Ceil(v - 1e-6)
	case side < 0:
		v = math.Floor(v + 1e-6)
	default:
		v = math.Round(v)
	}
	return v / scale
}

// Apart writes a length as Show does, but in full where it would read the same
// as the limit it breaks.
func Apart(l, limit Length, side int, unit geometry.Unit) string {
	if s := Show(l, unit, 0); s != Show(limit, unit, side) {
		return s
	}
	return strconv.FormatFloat(float64(l/unit.Length()), 'g', 6, 64) + " " + unit.String()
}

// number writes a number to four decimals, without needless zeros.
func number(v float64) string { return wording.Decimal(v, 4) }
