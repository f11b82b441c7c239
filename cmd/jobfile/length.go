package jobfile

import (
	"errors"
	"math"
	"strings"

	"forel/geometry"
	"forel/geometry/slipcase"
	"forel/geometry/wording"
)

// length reads a length and holds it against its limits.
func (r *reader) length(v value, key, what string, lo, hi Length) Length {
	unit := r.fileUnit
	if v.at.flag {
		unit = r.flagUnit
	}
	limits := slipcase.CheckRange(key, what, Length(math.NaN()), lo, hi, unit).Right
	var l Length
	switch v.kind {
	case numberKind:
		l = Length(float(v.text)) * unit.Length()
		if math.IsNaN(l.MM()) || math.IsInf(l.MM(), 0) {
			r.refuse(v.at, written(v)+" is not a length", limits)
			return 0
		}
	case textKind:
		var err error
		if l, err = geometry.ParseLength(v.text, unit); err != nil {
			wrong, right := halves(err)
			r.refuse(v.at, wrong, right)
			return 0
		}
	default:
		r.refuse(v.at, written(v)+" is not a length", limits)
		return 0
	}
	if p := slipcase.CheckRange(key, what, l, lo, hi, unit); p != (slipcase.Problem{}) {
		// A length is easier to find again as it was written.
		if _, how, ok := strings.Cut(p.Wrong, " is too "); ok {
			p.Wrong = written(v) + " is too " + how
			if v.kind == numberKind {
				p.Wrong = written(v) + " " + unit.String() + " is too " + how
			}
		}
		r.refuse(v.at, p.Wrong, p.Right)
	}
	return l
}

// field reads a single length of a job, or the word auto where it may stand.
func (r *reader) field(v value, f slipcase.Field) Length {
	if f.Auto && v.kind == textKind && strings.EqualFold(strings.TrimSpace(v.text), "auto") {
		return 0
	}
	before := len(r.issues)
	l := r.length(v, f.Key, f.What, f.Min, f.Max)
	for i := before; f.Auto && i < len(r.issues); i++ {
		r.issues[i].Right += `; or write "auto"`
	}
	return l
}

// written gives a value as the maker wrote it, or what it is.
func written(v value) string {
	switch v.kind {
	case textKind:
		return wording.Quote(v.text)
	case listKind:
		return "a list"
	case tableKind:
		return "a table"
	}
	return wording.Shorten(v.text)
}

// halves parts an error into what is wrong and what would be right.
func halves(err error) (wrong, right string) {
	var e *geometry.ParseError
	if errors.As(err, &e) {
		return e.Wrong, e.Right
	}
	wrong = err.Error()
	if i := strings.LastIndex(wrong, "; "); i >= 0 {
		return wrong[:i], wrong[i+2:]
	}
	return wrong, ""
}
