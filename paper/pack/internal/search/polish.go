package search

// polish keeps what it costs and looks for fewer fence settings and larger
// offcuts, until it finds none for a while.
func (r *Run) polish() {
	r.stop = false
	r.st.polish = true
	bins := r.p.clone(r.best.Bins)
	if r.p.roll() {
		for _, b := range bins {
			b.Tree().Shorten(b.Used(), nil, nil)
		}
	}
	r.st.start(bins, nil)
	best := r.st.cost()
	most := 1000 + 20*len(r.p.Items)
	var keep []*Bin
	for idle := 0; idle < most && !r.over(1); idle++ {
		if r.st.step() && r.st.cost() < best-1e-9 {
			best, idle = r.st.cost(), 0
			keep = r.p.clone(r.st.bins)
		}
	}
	if keep != nil {
		r.st.bins, r.st.out = keep, nil
		r.found()
	}
}
