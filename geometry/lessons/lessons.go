// Package lessons learns from what was measured of many cases how far a maker's own
// materials and hand are off, and which clearances that asks for. It knows no kind of
// case: a record tells of each length what it grows with and what makes it come out
// otherwise.
//
// A length that was measured is compared with what the plan says of it when everything
// measured before has the length that it has: the height of the mouth, say, with what a
// carcass just so high, of boards just so thick, leaves. What is then left over comes from
// the errors that nothing measured tells of. It is put down to the one of them that makes up most of it, the others
// being what the job says.
package lessons

import (
	"cmp"
	"maps"
	"math"
	"slices"
	"strings"

	"forel/geometry"
	"forel/geometry/fit"
	"forel/geometry/job"
	"forel/geometry/plan"
	"forel/geometry/tolerance"
)

// Length is a distance in millimetres.
type Length = geometry.Length

// Fewest is how many cases are needed before anything is concluded (common practice, no
// source: of fewer the interval of a deviation is wider than four times the deviation).
const Fewest = 5

// Case is what was measured of one case.
type Case struct {
	Name  string
	Taken []Taken
}

// Taken is a quantity as it was measured.
type Taken struct {
	fit.Quantity
	Value, Mean, SD Length // what it measures; what was expected
	Line            int    // where it stands in its record
	Changed         bool   // it was measured after something was done to the case
}

// Lesson is what is learnt of one thing.
type Lesson struct {
	Key    string // "uncertainty.cutting", or of play "play-height"
	Name   string
	Sort   fit.Sort
	Cases  int      // it was learnt from
	Off    Estimate // how far it comes out from what was expected
	Own    Estimate // of an uncertainty: its own part of that, as it is counted in a job file
	Was    Length   // two standard deviations as they were reckoned with
	Enough bool     // there are Fewest cases
}

// The least that 19 of 20 are taken to keep within, however few readings differ: a step of
// a caliper, and what no hand is truer than (common practice, no source).
const (
	leastLayer Length = 0.01
	leastHand  Length = 0.05
)

// PlusMinus returns what 19 of 20 keep within, two standard deviations, as a job file has
// it: to a hundredth of a millimetre, and no less than can be told. What it is off on
// average by more than chance is in it, since a job's plus or minus is about what it says.
func (l Lesson) PlusMinus() Length {
	least := leastHand
	if l.Sort == fit.Layer {
		least = leastLayer
	}
	const step = 0.01
	off := l.Own.SD
	if l.Off.Biased() {
		off = math.Hypot(off, l.Own.Mean)
	}
	return max(least, Length(math.Ceil(2*off/step-1e-9)*step))
}

// Sets returns what was learnt as settings of a job.
func (l Learnt) Sets() (sets []job.Change) {
	for _, one := range l.Lessons {
		if one.Enough && one.Sort != fit.Play {
			sets = append(sets, job.Change{Key: one.Key, Value: one.PlusMinus()})
		}
	}
	return sets
}

// CameOut returns the room in a gap as the cases came out, where it was measured often
// enough: off the mean that is reckoned where they were by more than chance, and as wide
// as they differed where that is surely more than reckoned.
func (l Learnt) CameOut(g plan.Gap, reckoned tolerance.Distribution) tolerance.Distribution {
	for _, one := range l.Lessons {
		if one.Key != fit.PlayKey(g) || !one.Enough {
			continue
		}
		if one.Off.Biased() {
			reckoned.Mean += Length(one.Off.Mean)
		}
		if float64(reckoned.StandardDeviation()) < one.Off.SDLow {
			reckoned = tolerance.Distribution{Mean: reckoned.Expected(), SD: Length(one.Off.SD)}
		}
	}
	return reckoned
}

// Slip is a reading that was left out since it is too far off.
type Slip struct {
	Case string
	Taken
}

// Learnt is all that is learnt.
type Learnt struct {
	Cases   int
	Lessons []Lesson // layers, hand, play
	Slips   []Slip
	Changed int // lengths that were left out since something was done to the case before
}

// value is one measured length as it tells of a lesson.
type value struct {
	of     string // the case
	off    float64
	times  float64 // the error counts in it
	others float64 // the variance of all else in it
	was    float64 // two standard deviations
}

// Learn returns what the cases teach.
func Learn(cases []Case) Learnt {
	out := Learnt{Cases: len(cases)}
	values := map[string][]value{}
	var order []Lesson
	add := func(l Lesson, v value) {
		if _, have := values[l.Key]; !have {
			order = append(order, l)
		}
		values[l.Key] = append(values[l.Key], v)
	}
	for _, c := range cases {
		var solved []row
		for _, t := range simplestFirst(c.Taken) {
			switch {
			case t.Changed:
				out.Changed++
				continue
			case fit.Slip(t.Sort, t.Mean, t.SD, t.Value):
				out.Slips = append(out.Slips, Slip{c.Name, t})
				continue
			}
			if t.Sort == fit.Play {
				add(Lesson{Key: t.Key, Name: t.Name, Sort: fit.Play}, value{of: c.Name, off: (t.Value - t.Mean).MM(), times: 1, was: 2 * t.SD.MM()})
				continue
			}
			r := rowOf(t).reduced(solved)
			if main, others, ok := r.main(); ok {
				v := value{of: c.Name, off: r.off, times: float64(main.SD / (main.PlusMinus / 2)), others: others, was: main.PlusMinus.MM()}
				if t.Sort == fit.Layer { // a maker wants to know how far it is off what was told
					v.off, v.times = (t.Value - t.Planned).MM(), 1
				}
				add(Lesson{Key: main.Key, Name: nameOf(t, main.Key), Sort: t.Sort}, v)
			}
			solved = r.among(solved)
		}
	}
	for _, l := range order {
		out.Lessons = append(out.Lessons, l.from(values[l.Key]))
	}
	slices.SortStableFunc(out.Lessons, func(a, b Lesson) int {
		return cmp.Or(cmp.Compare(rank(a.Sort), rank(b.Sort)), cmp.Compare(a.Key, b.Key))
	})
	return out
}

// simplestFirst returns layers first, then sizes, those that fewest things go into first,
// then play.
func simplestFirst(taken []Taken) []Taken {
	out := slices.Clone(taken)
	slices.SortStableFunc(out, func(a, b Taken) int {
		return cmp.Or(cmp.Compare(rank(a.Sort), rank(b.Sort)), cmp.Compare(len(a.Counts)+len(a.Off), len(b.Counts)+len(b.Off)))
	})
	return out
}

// rank puts layers before the hand, and that before play.
func rank(s fit.Sort) int { return slices.Index([]fit.Sort{fit.Layer, fit.Size, fit.Play}, s) }

// nameOf says what a lesson is about, after its key.
func nameOf(t Taken, key string) string {
	_, name, _ := strings.Cut(key, ".")
	if t.Sort == fit.Layer {
		return "thickness of the " + strings.ReplaceAll(name, "_", " ")
	}
	return name
}

// from works a lesson out from what tells of it.
func (l Lesson) from(values []value) Lesson {
	var of []string
	var raw, own []float64
	var others, was float64
	for _, v := range values {
		if !slices.Contains(of, v.of) {
			of = append(of, v.of)
		}
		raw, own = append(raw, v.off), append(own, v.off/v.times)
		others += v.others / (v.times * v.times) / float64(len(values))
		was += v.was / float64(len(values))
	}
	l.Cases, l.Was, l.Enough = len(of), Length(was), len(of) >= Fewest
	if len(values) > 1 {
		l.Off, l.Own = estimate(raw), estimate(own).less(others)
	}
	return l
}

// row is an equation: how far a length came out otherwise, and of what that is the sum.
type row struct {
	off    float64
	counts map[string]float64 // of layers and cut lengths
	layers map[string]Length  // the deviation of one layer
	hand   []fit.Off
	pivot  string // what it tells of
}

// rowOf returns what a length tells by itself.
func rowOf(t Taken) row {
	return row{off: (t.Value - t.Mean).MM(), counts: maps.Clone(t.Counts), layers: t.Layers, hand: slices.Clone(t.Off)}
}

// reduced takes away from a row what others, already measured, tell of. The errors of the
// hand that both have are the same errors.
func (r row) reduced(by []row) row {
	for _, b := range by {
		k := r.counts[b.pivot] / b.counts[b.pivot]
		if k == 0 {
			continue
		}
		r.off -= k * b.off
		for key, v := range b.counts {
			if r.counts[key] -= k * v; math.Abs(r.counts[key]) < 1e-3 {
				delete(r.counts, key)
			}
		}
		for _, o := range b.hand {
			if _, layer := r.layers[b.pivot]; layer { // what a layer is off is in its count
				break
			}
			if i := slices.IndexFunc(r.hand, func(h fit.Off) bool { return h.Key == o.Key }); i >= 0 {
				r.hand[i].SD = (r.hand[i].SD - Length(math.Abs(k))*o.SD).Abs()
			}
		}
	}
	return r
}

// among adds a row to those that others can be reduced by, where it tells of something
// that was not measured yet.
func (r row) among(rows []row) []row {
	most := 0.0
	for _, key := range slices.Sorted(maps.Keys(r.counts)) {
		_, layer := r.layers[key]
		if size := math.Abs(r.counts[key]); size > most && !layer {
			most, r.pivot = size, key
		}
	}
	if r.pivot == "" && len(r.counts) == 1 && len(r.hand) == 1 { // a layer by itself
		for key := range r.counts {
			r.pivot = key
		}
	}
	if r.pivot == "" {
		return rows
	}
	return append(rows, r)
}

// main returns the error that makes up most of what is left in a row, and the variance of
// all the others; ok is false where none makes up half of it.
func (r row) main() (main fit.Off, others float64, ok bool) {
	var sum, most float64
	for _, key := range slices.Sorted(maps.Keys(r.counts)) {
		sum += math.Pow(r.counts[key]*r.layers[key].MM(), 2)
	}
	if len(r.layers) == 0 && len(r.hand) == 1 && r.hand[0].PlusMinus > 0 { // a layer
		return r.hand[0], 0, true
	}
	for _, o := range r.hand {
		v := float64(o.SD * o.SD)
		sum += v
		if v > most && o.PlusMinus > 0 {
			most, main = v, o
		}
	}
	return main, sum - most, most >= sum/2 && most > 1e-8
}
