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
		l.Left = append(l.Left, int(item))
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

// part writes a node at x, y, of w by h without the gap past it.
func (wr *writer) part(n int32, x, y, w, h int) Part {
	node := &wr.tree.N[n]
	p := Part{Box: Box{length(x), length(y), length(w), length(h)}, Item: -1, Cut: AlongY}
	switch {
	case node.Item == slicing.Open:
		p.Cut = None
		return p
	case node.Item >= 0:
		return wr.piece(int(node.Item), x, y, w, h)
	case node.Dir == slicing.Y:
		p.Cut = AlongX
	}
	open := func(n int32) int {
		if wr.tree.N[n].Item == slicing.Open {
			return 1
		}
		return 0
	}
	size := func(n int32) int { return *wr.tree.N[n].Side(node.Dir) }
	var parts []int32
	wr.tree.Parts(n, func(c int32) { parts = append(parts, c) })
	if len(parts) == 1 {
		return wr.part(parts[0], x, y, w, h)
	}
	// What is left over comes last, larger before smaller.
	slices.SortStableFunc(parts, func(a, b int32) int { return cmp.Or(open(a)-open(b), size(b)-size(a)) })
	for _, c := range parts {
		cw, ch := size(c)-wr.gap, h
		if node.Dir == slicing.Y {
			cw, ch = w, size(c)-wr.gap
		}
		if open(c) == 0 || cw > 0 && ch > 0 {
			p.Parts = append(p.Parts, wr.part(c, x, y, cw, ch))
		}
		if node.Dir == slicing.X {
			x += size(c)
		} else {
			y += size(c)
		}
	}
	return p
}

// places writes a sheet on which pieces lie anywhere.
func (wr *writer) places(b *maxrects.Sheet) {
	for _, p := range b.Placed {
		wr.piece(int(p.Item), p.X, p.Y, p.W-wr.gap, p.H-wr.gap)
	}
	slices.SortStableFunc(wr.sheet.Places, func(a, b Place) int {
		return cmp.Or(cmp.Compare(a.Y, b.Y), cmp.Compare(a.X, b.X))
	})
}
