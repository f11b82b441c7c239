package fit

import (
	"cmp"
	"math"
	"slices"

	"forel/geometry/plan"
	"forel/geometry/tolerance"
)

// Link is one length of a chain of dimensions and how many times it counts:
// more than zero where it gives room, less where it takes room.
type Link struct {
	plan.Link
	Counts float64
}

// Takes returns what the link adds to the clearance.
func (l Link) Takes() Length { return l.Length * Length(l.Counts) }

// Error is something that can be off, and what it does to each gap of a report,
// in the order of Report.Gaps.
type Error struct {
	plan.Deviation        // its PlusMinus is zero where there is a range instead
	Low, High      Length // the range of a thickness known by its trade name only, else zero
}

// counted returns a gap's chain: what gives room, then what takes it.
func counted(links []plan.Link, slopes []float64) []Link {
	var out []Link
	for i, counts := range slopes {
		if l := links[i]; counts != 0 && l.Length != 0 {
			out = append(out, Link{l, counts})
		}
	}
	slices.SortStableFunc(out, func(p, q Link) int {
		return cmp.Compare(math.Copysign(1, q.Counts), math.Copysign(1, p.Counts))
	})
	return out
}

// errorsOf returns every error there is with its effect on each length that Left returns,
// those that do nothing to a gap left out: of the book and the hand as the chain tells
// them, of materials by the sensitivities.
func errorsOf(c plan.Chain, slopes [][]float64) []Error {
	var out []Error
	put := func(e Error) {
		if slices.ContainsFunc(e.Effects[:len(c.Gaps)], func(f tolerance.Effect) bool { return f != tolerance.Effect{} }) {
			out = append(out, e)
		}
	}
	for _, d := range c.Off {
		put(Error{Deviation: d})
	}
	for i, l := range c.Links {
		v := l.Varies
		if v == nil {
			continue
		}
		e, off := Error{Deviation: plan.Deviation{Name: v.Name, Key: v.Key}}, v.Effect()
		if v.ByName {
			e.Low, e.High = l.Length+v.Low, l.Length+v.High
		} else {
			e.PlusMinus = v.High
		}
		for g := range slopes {
			e.Effects = append(e.Effects, off.Times(slopes[g][i]))
		}
		put(e)
	}
	return out
}

// sum returns a length with every error's effect on it, and its worst case. at is its number
// among those that the chain's Left returns.
func sum(about Length, errors []Error, at int) (d tolerance.Distribution, low, high Length) {
	effects := make([]tolerance.Effect, len(errors))
	for i, e := range errors {
		effects[i] = e.Effects[at]
	}
	return tolerance.Sum(about, effects)
}
