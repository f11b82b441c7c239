package search

import "slices"

// Run is a search under way.
type Run struct {
	p     *Problem
	st    *state
	spent func(steps int) float64 // share of the effort, 1 or more to stop
	steps int
	stop  bool
	best  *Solution
}

// search is the share of the effort for what counts first; the rest is for
// fence settings and offcuts.
const search = 0.92

// Solve looks for the best solution while spent returns less than 1.
func (p *Problem) Solve(seed uint64, spent func(steps int) float64) *Solution {
	r := &Run{p: p, spent: spent}
	r.best = p.First()
	r.best.Bound = p.Bound(r.best.Cost)
	if len(p.Items) == 0 || spent(0) >= 1 {
		if !p.Free {
			r.best.Bins = p.trees(r.best.Bins)
		}
		return r.best
	}
	r.st = newState(p, seed)
	if len(r.best.Left) > 0 {
		r.fill()
	}
	for !r.stop && len(r.best.Left) == 0 && !r.best.proved() {
		switch {
		case p.roll():
			r.shorter()
		case len(p.Kinds) == 1:
			r.fewer()
		default:
			r.cheaper()
		}
	}
	if !p.Free {
		r.best.Bins = p.trees(r.best.Bins)
	}
	if len(r.best.Left) == 0 {
		r.polish()
	}
	return r.best
}

// over tells, now and then, whether a share of the effort is spent.
func (r *Run) over(share float64) bool {
	if r.steps++; r.steps%8 == 0 && r.spent(r.steps) >= share {
		r.stop = true
	}
	return r.stop
}

// found keeps the state as the best solution.
func (r *Run) found() {
	s := &Solution{Bins: r.p.clone(r.st.bins), Left: slices.Clone(r.st.out), Bound: r.best.Bound}
	s.Bins = slices.DeleteFunc(s.Bins, func(b *Bin) bool { return b.used() == 0 })
	s.Cost = r.p.cost(s.Bins)
	r.best = s
}

// try takes steps until everything is laid, the effort is spent, or most steps
// are made, 0 for any number.
func (r *Run) try(bins []*Bin, out []int32, most int) bool {
	r.st.start(bins, out)
	for n := 0; most == 0 || n < most; n++ {
		if len(r.st.out) == 0 {
			return true
		}
		if r.over(search) {
			return false
		}
		r.st.step()
	}
	return len(r.st.out) == 0
}

// emptiest returns the bin with the least on it for its size.
func (r *Run) emptiest(bins []*Bin) int {
	least, at := 2.0, 0
	for i, b := range bins {
		if f := float64(b.used()) / float64(b.size); f < least {
			least, at = f, i
		}
	}
	return at
}

// fewer tries to do without the sheet that has least on it.
func (r *Run) fewer() {
	bins := r.p.clone(r.best.Bins)
	at := r.emptiest(bins)
	out := bins[at].items(nil)
	bins[at] = bins[len(bins)-1]
	bins = bins[:len(bins)-1]
	if r.p.Free {
		if r.try(bins, out, 0) {
			r.found()
		}
		return
	}
	for turn := 0; !r.stop; turn++ {
		if r.try(r.sheets(bins, turn), out, turnSteps) {
			r.found()
			return
		}
		bins, out = r.st.bins, slices.Clone(r.st.out)
	}
}

// sheets turns bins into sheets of the one or the other sort, all alike.
func (r *Run) sheets(bins []*Bin, turn int) []*Bin {
	if r.p.Free || !r.p.roll() && turn%2 == 0 && len(r.p.Items) < fewOnSheet*len(bins) {
		return r.p.freeSheets(bins)
	}
	return r.p.trees(bins)
}

// fill uses all the stock there is to leave as little out as can be.
func (r *Run) fill() {
	bins := r.p.clone(r.best.Bins)
	used := make([]int, len(r.p.Kinds))
	for _, b := range bins {
		used[b.Kind]++
	}
	for k, kind := range r.p.Kinds {
		for n := used[k]; n < kind.Count; n++ {
			bins = append(bins, r.p.bin(k, r.p.Free))
		}
	}
	if len(bins) == 0 { // no sheet takes any piece
		return
	}
	r.st.start(r.sheets(bins, 0), slices.Clone(r.best.Left))
	for !r.over(search) {
		if r.st.step() && len(r.st.out) < len(r.best.Left) {
			r.found()
			if len(r.st.out) == 0 {
				return
			}
		}
	}
}

// cheaper puts other, cheaper sheets in the place of some.
func (r *Run) cheaper() {
	rnd := r.st.rnd
	bins := r.p.clone(r.best.Bins)
	var out []int32
	saved, room := 0.0, 0.0
	area := func(k int) float64 { return float64(r.p.Kinds[k].W) * float64(r.p.Kinds[k].H) }
	for n := 1 + min(rnd.IntN(8), rnd.IntN(8)); n > 0 && len(bins) > 0; n-- {
		at := rnd.IntN(len(bins))
		if rnd.IntN(2) == 0 {
			at = r.emptiest(bins)
		}
		out = bins[at].items(out)
		saved += r.p.Kinds[bins[at].Kind].Cost
		bins[at] = bins[len(bins)-1]
		bins = bins[:len(bins)-1]
	}
	used := make([]int, len(r.p.Kinds))
	for _, b := range bins {
		used[b.Kind]++
		room += float64(b.size - b.used())
	}
	for range 4 {
		k := rnd.IntN(len(r.p.Kinds))
		kind := &r.p.Kinds[k]
		if kind.Cost < saved*(1-1e-9) && (kind.Count == 0 || used[k] < kind.Count) {
			bins = append(bins, r.p.bin(k, r.p.Free))
			used[k]++
			saved -= kind.Cost
			room += area(k)
		}
	}
	for _, i := range out {
		room -= r.p.Items[i].area()
	}
	if room < 0 || len(bins) == 0 {
		r.over(search)
		return
	}
	if r.try(r.sheets(bins, rnd.IntN(2)), out, 300+20*len(r.p.Items)) {
		r.found()
	}
}

// shorter tries to do with less of a roll: far less first, then less far.
func (r *Run) shorter() {
	step := max(r.p.Step, 1)
	for cut := (r.best.Cost - r.best.Bound) / 4; !r.stop && !r.best.proved(); {
		n := max(1, int(cut)/step) * step
		bins := r.p.clone(r.best.Bins)
		last := len(bins) - 1
		from := bins[last].Used()
		target := from - n
		if target < 1 {
			target = 1
		}
		out := bins[last].Tree().Shorten(target, r.st.rnd.IntN, nil)
		if r.try(bins, out, 300+20*len(r.p.Items)) {
			r.found()
		} else {
			cut /= 2
		}
		if cut < 1 {
			cut = float64(step)
		}
	}
}

// In guillotine mode, steps on cut sheets alternate with steps on sheets where
// pieces may lie anywhere as long as they come apart: the one is quicker where
// many pieces lie on a sheet, the other finds more where few do.
const (
	fewOnSheet = 12
	turnSteps  = 20000
)
