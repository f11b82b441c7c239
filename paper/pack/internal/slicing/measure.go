package slicing

import "slices"

// Items appends the pieces in a node and below it.
func (t *Tree) Items(n int32, to []int32) []int32 {
	m := &t.N[n]
	if m.Item >= 0 {
		return append(to, m.Item)
	}
	if m.Item == Inner {
		for c := m.first; c != none; c = t.N[c].next {
			to = t.Items(c, to)
		}
	}
	return to
}

// Length returns how far down the pieces in a node reach at least, with what is
// free moved to the end.
func (t *Tree) Length(n int32) int {
	m := &t.N[n]
	if m.Item != Inner {
		if m.Item == Open {
			return 0
		}
		return m.H
	}
	h := 0
	for c := m.first; c != none; c = t.N[c].next {
		switch {
		case m.Dir == X:
			h = max(h, t.Length(c))
		case t.N[c].Item != Open:
			h += t.N[c].H
		}
	}
	return h
}

// Shorten makes the sheet h high and appends the pieces that had to go: parts
// that pick chooses by number. A sheet that is parted in X first loses all.
// Nothing goes where h is no less than the Length.
func (t *Tree) Shorten(h int, pick func(n int) int, out []int32) []int32 {
	for t.Length(0) > h {
		if t.N[0].Item != Inner || t.N[0].Dir == X {
			out = t.Items(0, out)
			t.Reset(t.N[0].W, t.N[0].H)
			break
		}
		var parts []int32
		t.Parts(0, func(c int32) {
			if t.N[c].Item != Open {
				parts = append(parts, c)
			}
		})
		n := parts[pick(len(parts))]
		out = t.Items(n, out)
		t.Remove(n)
	}
	if d := t.N[0].H - h; d > 0 {
		t.lower(0, d)
	}
	return out
}

// lower takes d off a node's height, which is free there.
func (t *Tree) lower(n int32, d int) {
	t.N[n].H -= d
	if t.N[n].Item == Open {
		t.open[t.N[n].slot].H = float64(t.N[n].H)
		return
	}
	for c := t.N[n].first; c != none; {
		next := t.N[c].next
		switch {
		case t.N[n].Dir == X:
			t.lower(c, d)
		case t.N[c].Item == Open && t.N[c].H == d:
			t.unlist(c)
			t.unlink(c)
		case t.N[c].Item == Open:
			t.lower(c, d)
		}
		c = next
	}
}

// Cuts appends a number for each cut that parts a node or what is below it: the
// stage in the upper bits, the distance to the fence in the 48 lower ones.
// Parts are cut off from the largest to the smallest; the smallest needs no cut if
// nothing is left past it.
func (t *Tree) Cuts(n int32, stage uint64, to []uint64) []uint64 {
	if t.N[n].Item != Inner {
		return to
	}
	open, from := false, len(to)
	for c := t.N[n].first; c != none; c = t.N[c].next {
		if t.N[c].Item == Open {
			open = true
			continue
		}
		to = append(to, stage<<48|uint64(*t.N[c].Side(t.N[n].Dir)))
	}
	if !open {
		least := slices.Index(to[from:], slices.Min(to[from:]))
		to = slices.Delete(to, from+least, from+least+1)
	}
	for c := t.N[n].first; c != none; c = t.N[c].next {
		to = t.Cuts(c, stage+1, to)
	}
	return to
}
