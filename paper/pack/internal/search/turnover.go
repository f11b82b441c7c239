package search

import "slices"

// trees returns sheets that are cut edge to edge with the same pieces in the same
// places; the pieces must come apart so.
func (p *Problem) trees(bins []*Bin) []*Bin {
	to := make([]*Bin, len(bins))
	for i, b := range bins {
		to[i] = b
		free := b.Rects()
		if free == nil {
			continue
		}
		to[i] = p.bin(b.Kind, false)
		if !to[i].Tree().From(free.W, free.H, slices.Clone(free.Placed)) {
			panic("search: pieces that do not come apart")
		}
	}
	return to
}

// freeSheets returns sheets that pieces may lie on anywhere, with the same pieces.
func (p *Problem) freeSheets(bins []*Bin) []*Bin {
	to := make([]*Bin, len(bins))
	for i, b := range bins {
		to[i] = b
		t := b.Tree()
		if t == nil {
			continue
		}
		to[i] = p.bin(b.Kind, true)
		d := to[i].Rects()
		for _, r := range t.Rects(0, 0, 0, nil) {
			d.Put(r.Item, r.Rect)
		}
	}
	return to
}
