package packtest

import (
	"forel/paper/pack"
)

// tree follows the cuts and looks whether they yield the places.
func (v *sheet) tree() {
	root := v.s.Cuts
	if root == nil {
		v.add("sheet %d: there is no tree of cuts", v.at)
		return
	}
	r := edges(root.Box)
	if !same(r.x0, v.room.x0) || !same(r.y0, v.room.y0) || !same(r.x1, v.room.x1) || !same(r.y1, v.room.y1) {
		v.add("sheet %d: the tree of cuts does not begin with the sheet", v.at)
	}
	got := map[int]box{}
	v.node(root, got)
	for _, p := range v.s.Places {
		b, there := got[p.Item]
		q := edges(p.Box)
		if !there || !same(b.x0, q.x0) || !same(b.y0, q.y0) || !same(b.x1, q.x1) || !same(b.y1, q.y1) {
			v.add("sheet %d: the cuts do not yield item %d where it lies", v.at, p.Item)
		}
		delete(got, p.Item)
	}
	for i := range got {
		v.add("sheet %d: the cuts yield item %d, which does not lie there", v.at, i)
	}
}

func (v *sheet) node(p *pack.Part, got map[int]box) {
	b := edges(p.Box)
	if b.w() <= 0 || b.h() <= 0 {
		v.add("sheet %d: a part of %.6g x %.6g mm", v.at, b.w(), b.h())
	}
	if p.Cut == pack.None {
		if len(p.Parts) > 0 {
			v.add("sheet %d: a part that is not cut has parts", v.at)
		}
		if p.Item >= 0 {
			if _, twice := got[p.Item]; twice {
				v.add("sheet %d: the cuts yield item %d twice", v.at, p.Item)
			}
			got[p.Item] = b
		}
		return
	}
	if p.Item >= 0 || len(p.Parts) == 0 {
		v.add("sheet %d: a part that is cut is a piece or has no parts", v.at)
	}
	for i := range p.Parts {
		c := edges(p.Parts[i].Box)
		// The part spans its parent across, and follows the one before by the gap.
		ok := same(c.x0, b.x0) && same(c.x1, b.x1)
		at, end, limit := c.y0, c.y1, b.y1
		first := b.y0
		if p.Cut == pack.AlongY {
			ok = same(c.y0, b.y0) && same(c.y1, b.y1)
			at, end, limit = c.x0, c.x1, b.x1
			first = b.x0
		}
		if i > 0 {
			q := edges(p.Parts[i-1].Box)
			first = q.y1 + v.gap
			if p.Cut == pack.AlongY {
				first = q.x1 + v.gap
			}
		}
		if !ok || !same(at, first) || end > limit+slack {
			v.add("sheet %d: a cut does not run from edge to edge of its part, or not beside the last", v.at)
		}
		if i == len(p.Parts)-1 && limit-end > v.gap+slack {
			v.add("sheet %d: %.6g mm past the last cut is nobody's", v.at, limit-end)
		}
		v.node(&p.Parts[i], got)
	}
}
