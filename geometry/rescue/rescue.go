// Package rescue finds the way back where a book does not fit the case that was made for
// it: which of the remedies that a kind of case tells of are the least work, how much of
// each, what is cut again, and whether the book then fits, by the chain that the fit is
// reckoned by. It knows no kind of case.
package rescue

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"gonum.org/v1/gonum/stat/combin"

	"forel/geometry"
	"forel/geometry/fit"
	"forel/geometry/job"
	"forel/geometry/plan"
	"forel/geometry/tolerance"
)

// Length is a distance in millimetres.
type Length = geometry.Length

// Stands is a case as it stands.
type Stands struct {
	Play  map[string]Length // as measured, by fit.PlayKey; less than zero: what is missing
	Early bool              // it was measured while the case was still open; see plan.Chain.Early
}

// felt is the plus or minus of play that is felt out with strips of paper beside the book
// (common practice, no source).
const felt Length = 0.15

// Place is a place where room decides whether the book fits.
type Place struct {
	plan.Gap
	Told     bool   // it was measured; else it is taken for as planned
	Measured Length // as told
	Room     Length // in the finished case, as it will be if nothing is done
	Planned  Length
	SD       Length // of Room
	Slip     bool   // what was told is more likely a slip of reading or writing
}

// TooTight tells whether the room is too little.
func (p Place) TooTight() bool { return p.Room < p.Tight }

// TooLoose tells whether it is too much.
func (p Place) TooLoose() bool { return p.Loose > 0 && p.Room > p.Loose }

// Step is a remedy, and how much of it.
type Step struct {
	plan.Remedy
	Amount Length
}

// Way is a way back: remedies that are done together.
type Way struct {
	Steps   []Step
	Minutes int
	Again   []string     // what is cut again; pieces, materials or parts
	Sets    []job.Change // of the job as planned, to cut it for the case that stands
	Room    []Length     // at each place afterwards
	Chance  fit.Chance   // of the whole case afterwards
}

// Fits tells whether the book is then neither too tight nor too loose more than once in
// 50.
func (w Way) Fits() bool { return w.Chance.Enough() }

// Report is what there is to do.
type Report struct {
	Places []Place
	Early  string // what it means that the case is open; see plan.Chain.Early
	Ways   []Way  // the least work first; none where nothing needs to be done
}

// most is how many remedies are done together, and how many ways are told.
const (
	mostTogether = 3
	mostWays     = 4
)

// Of returns the ways back for a case that stands, from the chain of its job as it was
// planned.
func Of(c plan.Chain, s Stands) Report {
	f := finder{chain: c, stands: s, known: map[string]anew{}}
	f.places()
	r := Report{Places: f.at, Early: c.Early}
	if !slices.ContainsFunc(f.at, func(p Place) bool { return p.TooTight() || p.TooLoose() }) {
		return r
	}
	var can, whole []plan.Remedy
	for _, m := range c.Remedies {
		if s.Early && !m.Early || !s.Early && !m.Late {
			continue
		}
		if m.Whole {
			whole = append(whole, m)
		}
		can = append(can, m)
	}
	var found []Way
	for size := 1; size <= min(mostTogether, len(can)); size++ {
		for _, set := range combin.Combinations(len(can), size) {
			var together []plan.Remedy
			for _, i := range set {
				together = append(together, can[i])
			}
			if slices.ContainsFunc(found, func(w Way) bool { return w.within(together) }) {
				continue // less does
			}
			if w, ok := f.try(together); ok {
				found = append(found, w)
			}
		}
	}
	if !slices.ContainsFunc(found, Way.whole) { // make it anew, and what stands in it
		if w, ok := f.try(whole); ok {
			found = append(found, w)
		}
	}
	slices.SortStableFunc(found, func(a, b Way) int {
		return cmp.Or(cmp.Compare(a.Minutes, b.Minutes), cmp.Compare(len(a.Steps), len(b.Steps)))
	})
	for i, w := range found {
		if i < mostWays || w.whole() && !slices.ContainsFunc(r.Ways, Way.whole) {
			r.Ways = append(r.Ways, w)
		}
	}
	return r
}

// whole tells whether a way is a new case and nothing else.
func (w Way) whole() bool {
	return !slices.ContainsFunc(w.Steps, func(s Step) bool { return !s.Whole })
}

// within tells whether all that a way takes is among some remedies.
func (w Way) within(remedies []plan.Remedy) bool {
	return !slices.ContainsFunc(w.Steps, func(s Step) bool {
		return !slices.ContainsFunc(remedies, func(m plan.Remedy) bool { return m.Name == s.Name })
	})
}

// finder looks for ways.
type finder struct {
	chain  plan.Chain
	stands Stands
	at     []Place
	known  map[string]anew // by the dimensions
}

// places works out the room at each place that decides.
func (f *finder) places() {
	drawn := f.chain.Left(f.chain.Drawn())
	reckoned := map[string]fit.Quantity{}
	for _, q := range fit.Quantities(f.chain) {
		reckoned[q.Key] = q
	}
	for i, g := range f.chain.Gaps {
		if !g.Decides {
			continue
		}
		key := fit.PlayKey(g)
		p := Place{Gap: g, Planned: drawn[i], Room: reckoned[key].Expected.Expected(), SD: reckoned[key].Expected.StandardDeviation()}
		if play, ok := f.stands.Play[key]; ok {
			p.Told, p.Measured, p.Room = true, play, play-g.Swell
			p.SD = felt / 2
			for k, o := range f.chain.Gaps {
				if f.stands.Early && f.chain.Open != "" && o.Place == f.chain.Open && o.Dimension == g.Dimension && o.Volume == g.Volume {
					p.Room -= drawn[k] - drawn[i]
				}
			}
			p.Slip = reckoned[key].Slip(p.Room + g.Swell)
		}
		f.at = append(f.at, p)
	}
}

// sure is how many standard deviations from a limit leave a chance of once in 50 beyond it.
var sure = tolerance.Distribution{SD: 1}.Under(1 - fit.Once)

// wanted returns the room that a place should come to have, with a standard deviation. Of
// a place that is neither too tight nor too loose none is asked for that it does not have.
func (p Place) wanted(sd Length) (low, high Length) {
	low, high = p.Tight+sure*sd, Length(math.Inf(1))
	if p.Loose > 0 {
		high = p.Loose - sure*sd
	}
	if low > high {
		low, high = (p.Tight+p.Loose)/2-hair, (p.Tight+p.Loose)/2+hair
	}
	if !p.TooTight() && !p.TooLoose() {
		low, high = min(low, p.Room), max(high, p.Room)
	}
	return low, high
}

// hair is what no hand sees.
const hair Length = 0.02

// target is the room that is aimed at: what was planned, as near as may be.
func (p Place) target(low, high Length) Length { return max(low, min(high, p.Planned)) }

// try returns the way that some remedies are together, if with some amount of each the
// book fits.
func (f finder) try(together []plan.Remedy) (w Way, ok bool) {
	var frees []string
	for i, m := range together {
		frees = append(frees, m.Frees...)
		for k, o := range together {
			twice := slices.ContainsFunc(m.Again, func(piece string) bool { return slices.Contains(o.Again, piece) })
			if k != i && (twice || slices.Contains(m.Without, o.Name)) {
				return w, false
			}
		}
	}
	sds := make([]Length, len(f.at))
	for i, p := range f.at {
		sds[i] = p.SD
		for _, m := range together {
			sds[i] = Length(math.Hypot(sds[i].MM(), m.PlusMinus.MM()/2*m.Gives[p.Dimension]))
		}
	}
	// Those that change several dimensions are tried with each amount that one of these asks
	// for; the rest is then up to those that change one.
	var wide []int
	for i, m := range together {
		w.Steps = append(w.Steps, Step{Remedy: m})
		if len(m.Gives) > 1 {
			wide = append(wide, i)
		}
	}
	var settle func(at int) bool
	settle = func(at int) bool {
		if at == len(wide) {
			return f.rest(w.Steps, frees, sds)
		}
		s := &w.Steps[wide[at]]
		for _, a := range f.asked(s.Remedy, sds) {
			s.Amount = a
			if settle(at + 1) {
				return true
			}
		}
		return false
	}
	if !settle(0) {
		return Way{}, false
	}
	for _, m := range together {
		w.Minutes += m.Minutes
		for _, a := range m.Again {
			if !slices.Contains(w.Again, a) {
				w.Again = append(w.Again, a)
			}
		}
	}
	f.after(&w, frees, sds)
	return w, true
}

// asked returns the amounts of a remedy that places ask for: the largest that one aims at
// first, then smaller ones, then those that are more than any aims at.
func (f finder) asked(m plan.Remedy, sds []Length) (out []Length) {
	var aim Length
	for i, p := range f.at {
		per := Length(m.Gives[p.Dimension])
		if per == 0 {
			continue
		}
		low, high := p.wanted(sds[i])
		if p.TooTight() || p.TooLoose() {
			aim = max(aim, (p.target(low, high)-p.Room)/per)
		}
		for _, room := range []Length{low, p.target(low, high), high} {
			if a := (room - p.Room) / per; a > 0 && a <= m.Most+1e-9 {
				out = append(out, min(a, m.Most))
			}
		}
	}
	out = append(out, m.Most)
	slices.SortFunc(out, func(a, b Length) int {
		if a <= aim && b <= aim {
			return cmp.Compare(b, a)
		}
		return cmp.Compare(a, b)
	})
	return slices.Compact(out)
}

// rest settles how much of each remedy is done that changes one dimension only, and tells
// whether all places then have the room that they should.
func (f finder) rest(steps []Step, frees []string, sds []Length) bool {
	for i, s := range steps {
		if len(s.Gives) == 1 {
			steps[i].Amount = 0
		}
	}
	for _, d := range f.chain.Dimensions {
		if slices.Contains(frees, d.Name) {
			continue
		}
		low, high, aim, some := Length(math.Inf(-1)), Length(math.Inf(1)), Length(0), false // of the room that is added
		for i, p := range f.at {
			if p.Dimension != d.Name {
				continue
			}
			has := p.Room + given(steps, d.Name)
			l, h := p.wanted(sds[i])
			low, high = max(low, l-has), min(high, h-has)
			if !some && (p.TooTight() || p.TooLoose()) {
				aim, some = p.target(l, h)-has, true
			}
		}
		aim = max(low, min(high, aim))
		if low > high+1e-9 {
			return false
		}
		for i, s := range steps {
			per := Length(s.Gives[d.Name])
			if len(s.Gives) != 1 || per == 0 || aim/per <= 0 {
				continue
			}
			amount := min(s.Most, aim/per)
			steps[i].Amount = amount
			aim, low, high = aim-amount*per, low-amount*per, high-amount*per
		}
		if low > 1e-9 || high < -1e-9 {
			return false
		}
	}
	return true
}

// given returns the room that remedies give in a dimension.
func given(steps []Step, dimension string) (sum Length) {
	for _, s := range steps {
		sum += s.Amount * Length(s.Gives[dimension])
	}
	return sum
}

// after works out what becomes of a way: the room, the settings for what is cut again, and
// the chances.
func (f finder) after(w *Way, frees []string, sds []Length) {
	for _, s := range w.Steps {
		for key, now := range s.Thinner {
			w.Sets = append(w.Sets, job.Change{Key: key, Value: (now - s.Amount).Round(1e-4)})
		}
	}
	slices.SortFunc(w.Sets, func(a, b job.Change) int { return cmp.Compare(a.Key, b.Key) })
	anew := f.anew(frees)
	var sets []job.Change
	free, quiet := 1.0, 1.0
	for i, p := range f.at {
		at := tolerance.Distribution{Mean: p.Room + given(w.Steps, p.Dimension), SD: sds[i]}
		if slices.Contains(frees, p.Dimension) {
			at = anew.reckoned[fit.PlayKey(p.Gap)]
		}
		w.Room = append(w.Room, at.Expected())
		free *= 1 - at.Below(p.Tight)
		if p.Loose > 0 {
			quiet *= at.Below(p.Loose)
		}
		for _, d := range f.chain.Dimensions {
			have := slices.ContainsFunc(sets, func(c job.Change) bool { return c.Key == d.Key })
			if d.Name == p.Dimension && d.Key != "" && p.Told && !have && !slices.Contains(frees, d.Name) && !w.alike(d.Name) {
				sets = append(sets, job.Change{Key: d.Key, Value: max(0, d.Clearance+(p.Room+p.Swell-p.Planned)).Round(1e-4)})
			}
		}
	}
	w.Sets = slices.Concat(w.Sets, sets, anew.sets)
	w.Chance = fit.Chance{Tight: 1 - free, Snug: free * quiet, Loose: 1 - quiet}
}

// alike tells whether what is cut again is as large as what it takes the place of,
// whatever the room in a dimension is, such as walls of thinner board.
func (w Way) alike(dimension string) bool {
	alike := false
	for _, s := range w.Steps {
		if len(s.Thinner) > 0 {
			return false
		}
		alike = alike || len(s.Again) > 0 && s.Gives[dimension] != 0
	}
	return alike
}

// anew is what is had of dimensions that are cut anew.
type anew struct {
	sets     []job.Change
	reckoned map[string]tolerance.Distribution // of the room, by the key of the play
}

// anew returns what is had of dimensions that are cut anew: the clearances of the job, or
// where these leave the book too tight or too loose too often, the smallest that do.
func (f finder) anew(frees []string) anew {
	key := strings.Join(frees, ",")
	if have, ok := f.known[key]; ok {
		return have
	}
	a := anew{reckoned: map[string]tolerance.Distribution{}}
	if !fit.Chances(f.chain, nil).Enough() {
		least := fit.Least(f.chain, nil)
		for _, d := range f.chain.Dimensions {
			i := slices.IndexFunc(least, func(c job.Change) bool { return c.Key == d.Key })
			if i >= 0 && slices.Contains(frees, d.Name) {
				a.sets = append(a.sets, least[i])
			}
		}
	}
	for _, q := range fit.Quantities(f.chain.With(a.sets)) {
		a.reckoned[q.Key] = q.Expected
	}
	f.known[key] = a
	return a
}
