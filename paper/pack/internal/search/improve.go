package search

import "slices"

// Improve looks for solutions with fewer sheets until stop.
func (p *Problem) Improve(s *Solution, bound int, seed uint64, stop func(int) bool) (*Solution, int) {
	iter := 0
	var st *state
	for len(s.Bins) > bound {
		bins := p.clone(s.Bins)
		least := 0
		for i, b := range bins {
			if b.used() < bins[least].used() {
				least = i
			}
		}
		out := bins[least].items(nil)
		bins = slices.Delete(bins, least, least+1)
		if len(bins) == 0 {
			break
		}
		if st == nil {
			st = newState(p, bins, out, seed)
		} else {
			st.start(bins, out)
		}
		done := false
		for !done && !stop(iter) {
			iter++
			done = st.step()
		}
		if !done {
			break
		}
		s = &Solution{Bins: st.bins, Cost: s.Cost}
	}
	return s, iter
}
