package slicing

import "forel/paper/pack/internal/maxrects"

// From makes the tree of a sheet of w by h on which pieces lie, if they come
// apart by cuts from edge to edge. The list is sorted on the way.
func (t *Tree) From(w, h int, pieces []maxrects.Placed) bool {
	t.Reset(w, h)
	if len(pieces) == 0 {
		return true
	}
	t.unlist(0)
	return t.grow(0, pieces, X, false)
}

// grow parts a node, not listed, in direction dir as its pieces allow. Stuck
// tells that the other direction parted nothing.
func (t *Tree) grow(n int32, pieces []maxrects.Placed, dir int8, stuck bool) bool {
	if p := &pieces[0]; len(pieces) == 1 && p.W == t.N[n].W && p.H == t.N[n].H {
		t.N[n].Item = p.Item
		t.Area += p.W * p.H
		return true
	}
	maxrects.Sort(pieces, dir == X)
	rest := *t.N[n].Side(dir)
	whole := rest
	last := int32(none)
	child := func(size int) int32 {
		c := Node{W: t.N[n].W, H: t.N[n].H, parent: n, first: none, next: none, prev: last, Item: Open}
		*c.Side(dir) = size
		at := t.add(c)
		if last == none {
			t.N[n].first = at
		} else {
			t.N[last].next = at
		}
		last = at
		return at
	}
	from, begin, end := 0, 0, 0
	for i := 0; i <= len(pieces); i++ {
		if i < len(pieces) {
			lo, hi := pieces[i].Span(dir == X)
			if i == from {
				begin, end = lo, hi
				continue
			}
			if lo < end {
				end = max(end, hi)
				continue
			}
		}
		if size := end - begin; size == whole {
			// One group, as large as the node.
			return !stuck && t.grow(n, pieces, 1-dir, true)
		} else if rest -= size; !t.grow(child(size), pieces[from:i], 1-dir, false) {
			return false
		}
		if from = i; i < len(pieces) {
			begin, end = pieces[i].Span(dir == X)
		}
	}
	t.N[n].Item, t.N[n].Dir = Inner, dir
	if rest > 0 {
		t.list(child(rest))
	}
	return true
}

// Rects appends the pieces in a node where they lie if the node is at x, y.
func (t *Tree) Rects(n int32, x, y int, to []maxrects.Placed) []maxrects.Placed {
	m := &t.N[n]
	if m.Item >= 0 {
		return append(to, maxrects.Placed{Rect: maxrects.Rect{X: x, Y: y, W: m.W, H: m.H}, Item: m.Item})
	}
	if m.Item == Inner {
		for c := m.first; c != none; c = t.N[c].next {
			to = t.Rects(c, x, y, to)
			if m.Dir == X {
				x += t.N[c].W
			} else {
				y += t.N[c].H
			}
		}
	}
	return to
}
