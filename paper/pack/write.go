package pack

import (
	"cmp"
	"math"
	"slices"

	"forel/paper/pack/internal/maxrects"
	"forel/paper/pack/internal/search"
	"forel/paper/pack/internal/slicing"
)

// value returns a solution's Value and Bound. Of rolls the search counts a gap past
// the last piece of each, which is none of its length: of several rolls no more
// of them may count for the bound than could be begun at no more than the value.
func (m *model) value(s *search.Solution) (value, bound float64) {
	st := m.p.Stock[0]
	if !st.Roll || len(s.Bins) == 0 {
		return s.Cost, s.Bound
	}
	gap := length(m.gap).MM()
	value = s.Cost/8000 - float64(len(s.Bins))*gap
	most := 1.0
	if !st.endless() {
		least := math.Inf(1) // that a roll is used
		for _, it := range m.in.Items {
			least = min(least, length(min(it.W, it.H)-m.gap).MM())
		}
		most = max(1, math.Floor(value/least+1e-9))
		if st.Count > 0 {
			most = min(most, float64(st.Count))
		}
	}
	return value, s.Bound/8000 - most*gap
}

// layout writes a solution in millimetres.
func (m *model) layout(s *search.Solution) *Layout {
	l := &Layout{}
	l.Value, l.Bound = m.value(s)
	for _, b := range s.Bins {
		l.Sheets = append(l.Sheets, m.sheet(b))
	}
	full := func(s *Sheet) (a float64) {
		for _, p := range s.Places {
			a += p.Area()
		}
		return a
	}
	slices.SortStableFunc(l.Sheets, func(a, b Sheet) int {
		return cmp.Or(cmp.Compare(a.Stock, b.Stock), cmp.Compare(full(&b), full(&a)))
	})
	for _, item := range s.Left {
		l.Left = append(l.Left, m.members[item]...)
	}
	slices.Sort(l.Left)
	if len(l.Left) > 0 {
		l.Bound = 0
	} else {
		l.Optimal = l.Value <= l.Bound*(1+1e-9)
	}
	return l
}

func (m *model) sheet(b *search.Bin) Sheet {
	sh := Sheet{Stock: b.Kind}
	k := m.in.Kinds[b.Kind]
	wr := &writer{model: m, sheet: &sh, tree: b.Tree()}
	if wr.tree == nil {
		wr.places(b.Rects())
		return sh
	}
	if k.Roll {
		k.H = b.Used()
		wr.tree.Shorten(k.H, nil, nil)
	}
	root := wr.part(0, 0, 0, k.W-m.gap, k.H-m.gap)
	sh.Cuts = &root
	return sh
}

type writer struct {
	*model
	sheet *Sheet
	tree  *slicing.Tree
}

// piece writes one of our items.
func (wr *writer) piece(item, x, y, w, h int) Part {
	p := Part{Box: Box{length(x), length(y), length(w), length(h)}, Item: item}
	it := &wr.p.Items[item]
	turned := whole(it.Width) != w || whole(it.Height) != h
	wr.sheet.Places = append(wr.sheet.Places, Place{Item: item, Box: p.Box, Turned: turned})
	return p
}

// leaf is a node to write: one of the tree, or a piece of a strip.
type leaf struct {
	node int32
	item int // of a strip's piece, else -1
	size int // across the cuts, with the gap
}

// part writes a node at x, y, of w by h without the gap past it.
func (wr *writer) part(n int32, x, y, w, h int) Part {
	node := &wr.tree.N[n]
	p := Part{Box: Box{length(x), length(y), length(w), length(h)}, Item: -1}
	var parts []leaf
	dir := int8(slicing.X)
	switch {
	case node.Item == slicing.Open:
		return p
	case node.Item >= 0 && len(wr.members[node.Item]) == 1:
		return wr.piece(wr.members[node.Item][0], x, y, w, h)
	case node.Item >= 0:
		parts, dir = wr.strip(n)
	default:
		dir = node.Dir
		wr.tree.Parts(n, func(c int32) {
			inner, way := wr.strip(c)
			if way == dir {
				parts = append(parts, inner...)
				return
			}
			size := wr.tree.N[c].W
			if dir == slicing.Y {
				size = wr.tree.N[c].H
			}
			parts = append(parts, leaf{c, -1, size})
		})
	}
	if len(parts) == 1 && parts[0].item < 0 {
		return wr.part(parts[0].node, x, y, w, h)
	}
	p.Cut = AlongY
	if dir == slicing.Y {
		p.Cut = AlongX
	}
	open := func(l leaf) int {
		if l.item < 0 && wr.tree.N[l.node].Item == slicing.Open {
			return 1
		}
		return 0
	}
	// What is left over comes last, larger before smaller.
	slices.SortStableFunc(parts, func(a, b leaf) int {
		return cmp.Or(open(a)-open(b), b.size-a.size)
	})
	for _, c := range parts {
		cw, ch := c.size-wr.gap, h
		if dir == slicing.Y {
			cw, ch = w, c.size-wr.gap
		}
		switch {
		case c.item >= 0:
			p.Parts = append(p.Parts, wr.piece(c.item, x, y, cw, ch))
		case open(c) == 0 || cw > 0 && ch > 0:
			p.Parts = append(p.Parts, wr.part(c.node, x, y, cw, ch))
		}
		if dir == slicing.X {
			x += c.size
		} else {
			y += c.size
		}
	}
	return p
}

// strip returns the pieces of a node that is a strip of several, and the way they
// lie; -1 if it is none.
func (wr *writer) strip(n int32) (parts []leaf, dir int8) {
	node := &wr.tree.N[n]
	if node.Item < 0 || len(wr.members[node.Item]) == 1 {
		return nil, -1
	}
	items := wr.members[node.Item]
	for _, way := range []int8{slicing.X, slicing.Y} {
		breadth, long := node.H, node.W
		if way == slicing.Y {
			breadth, long = long, breadth
		}
		parts = parts[:0]
		for _, i := range items {
			it := &wr.p.Items[i]
			w, h := whole(it.Width)+wr.gap, whole(it.Height)+wr.gap
			if way == slicing.Y {
				w, h = h, w
			}
			switch {
			case h == breadth:
				parts = append(parts, leaf{n, i, w})
				long -= w
			case w == breadth && it.Turn:
				parts = append(parts, leaf{n, i, h})
				long -= h
			}
		}
		if len(parts) == len(items) && long == 0 {
			return parts, way
		}
	}
	panic("pack: a strip that does not hold its pieces")
}

// places writes a sheet on which pieces lie anywhere.
func (wr *writer) places(b *maxrects.Sheet) {
	for _, p := range b.Placed {
		wr.piece(wr.members[p.Item][0], p.X, p.Y, p.W-wr.gap, p.H-wr.gap)
	}
	slices.SortStableFunc(wr.sheet.Places, func(a, b Place) int {
		return cmp.Or(cmp.Compare(a.Y, b.Y), cmp.Compare(a.X, b.X))
	})
}
