package jobfile

import (
	"errors"
	"math"
	"regexp"
	"strings"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/wording"
)

// length reads a length and holds it against its limits: one beyond them is told, and
// the limit returned.
func (r *reader) length(v value, key, what string, lo, hi Length) Length {
	l, p, ok := r.measure(v, key, what, lo, hi, nil)
	if !ok {
		r.tell(v.at, p)
		return p.Mend.Value
	}
	return l
}

// measure reads a length, zero where v is none; where ok is false, p is what is
// wrong with it, and l what was written where that is a length.
func (r *reader) measure(v value, key, what string, lo, hi Length, far job.Far) (l Length, p job.Problem, ok bool) {
	unit := r.unitOf(v)
	none := job.Problem{Value: written(v), Reason: "is not a length", Fix: job.Limited(what, lo, hi, unit)}
	switch v.kind {
	case numberKind:
		l = Length(float(v.text)) * unit.Length()
		if math.IsNaN(l.MM()) || math.IsInf(l.MM(), 0) {
			return 0, none, false
		}
	case textKind:
		layers, text := 1, v.text
		if layered(key) {
			if layers, text, p, ok = layersOf(text); !ok {
				return 0, p, false
			}
		}
		var err error
		parse := geometry.ParseLength
		if lo < 0 {
			parse = geometry.ParseSigned
		}
		if l, err = parse(text, unit); err != nil {
			return 0, problem(err), false
		}
		unit, _ = geometry.UnitOf(text, unit)
		if l /= Length(layers); layers > 1 {
			far = nil // what one layer might be is not what was written
		}
	default:
		return 0, none, false
	}
	p, ok = job.CheckRange(key, what, l, lo, hi, unit, far)
	if p.Value != "" { // a length is easier to find again as it was written
		p.Value = written(v)
		if v.kind == numberKind {
			p.Value += " " + unit.String()
		}
	}
	return l, p, ok
}

// unitOf returns the unit of a value that has none of its own.
func (r *reader) unitOf(v value) geometry.Unit {
	switch {
	case v.at.flag:
		return r.flagUnit
	case v.at.shop:
		return r.shop.unit
	}
	return r.fileUnit
}

// setting reads a single length of a job, or the word auto where it may stand.
func (r *reader) setting(v value, s job.Setting) Length {
	if s.Auto && v.kind == textKind && strings.EqualFold(strings.TrimSpace(v.text), "auto") {
		return 0
	}
	l, p, ok := r.measure(v, s.Key, s.What, Length(s.Min), Length(s.Max), job.NearTo(*s.Length))
	switch {
	case ok:
		return l
	case s.Auto:
		p.Fix += `; or write "auto"`
	case p.Mend.Key != "":
		p.Fix += "; left out it is " + job.Show(*s.Length, r.usual, 0)
	}
	r.tell(v.at, p)
	return *s.Length
}

// written returns a value as the maker wrote it, or what it is.
func written(v value) string {
	switch v.kind {
	case textKind:
		return wording.Quote(tidy(v.text))
	case listKind:
		return "a list"
	case tableKind:
		return "a table"
	}
	return wording.Shorten(tidy(v.text))
}

// reckoned is a number as a spreadsheet or a program hands it on: 224.60000000000002.
var reckoned = regexp.MustCompile(`\d{1,12}\.\d{7,}`)

// tidy rounds such numbers in a text to six decimals.
func tidy(text string) string {
	return reckoned.ReplaceAllStringFunc(text, func(n string) string { return wording.Decimal(float(n), 6) })
}

// problem returns what an error says is wrong, and what would do.
func problem(err error) job.Problem {
	var p job.Problem
	if errors.As(err, &p) {
		return p
	}
	var e *geometry.ParseError
	if errors.As(err, &e) {
		return job.Problem{Value: e.Quoted(), Reason: e.Reason, Fix: e.Fix}
	}
	return job.Problem{Reason: err.Error()}
}
