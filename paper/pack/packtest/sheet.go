package packtest

import (
	"sort"

	"forel/paper/pack"
)

// sheet is one sheet under examination.
type sheet struct {
	*faults
	at    int
	s     *pack.Sheet
	items []pack.Item
	gap   float64
	room  box // of a roll as much as is used
}

func (v *sheet) verify(st pack.Stock, want []int, free bool) {
	s := v.s
	v.room = box{0, 0, st.Width.MM(), st.Height.MM()}
	if st.Roll && s.Cuts != nil { // the length used; of a roll with a length no more than that
		used := edges(s.Cuts.Box).y1
		if st.Height > 0 && used > v.room.y1+slack {
			v.add("sheet %d: %.6g mm are used of a roll of %.6g", v.at, used, v.room.y1)
		}
		v.room.y1 = used
	}
	boxes := make([]box, 0, len(s.Places))
	for _, p := range s.Places {
		b := edges(p.Box)
		boxes = append(boxes, b)
		if p.Item < 0 || p.Item >= len(v.items) {
			v.add("sheet %d: there is no item %d", v.at, p.Item)
			continue
		}
		want[p.Item]--
		it := v.items[p.Item]
		w, h := it.Width.MM(), it.Height.MM()
		if p.Turned {
			w, h = h, w
		}
		if !same(b.w(), w) || !same(b.h(), h) {
			v.add("sheet %d: item %d is %.6g x %.6g mm", v.at, p.Item, b.w(), b.h())
		}
		if p.Turned && !it.Turn && !same(w, h) {
			v.add("sheet %d: item %d is turned", v.at, p.Item)
		}
		if !b.within(v.room) {
			v.add("sheet %d: item %d is not within the sheet", v.at, p.Item)
		}
	}
	v.apart(boxes)
	if !free {
		v.tree()
	} else if s.Cuts != nil {
		v.add("sheet %d: a free layout has a tree of cuts", v.at)
	}
}

// near tells whether two boxes come nearer than the gap, overlap included.
func near(a, b box, gap float64) bool {
	return a.x0 < b.x1+gap-slack && b.x0 < a.x1+gap-slack && a.y0 < b.y1+gap-slack && b.y0 < a.y1+gap-slack
}

// apart looks at all pairs that share some height, by a sweep down the sheet.
func (v *sheet) apart(boxes []box) {
	by := make([]int, len(boxes))
	for i := range by {
		by[i] = i
	}
	sort.Slice(by, func(a, b int) bool { return boxes[by[a]].y0 < boxes[by[b]].y0 })
	var live []int
	for _, i := range by {
		kept := live[:0]
		for _, j := range live {
			if boxes[j].y1+v.gap > boxes[i].y0 {
				kept = append(kept, j)
			}
		}
		live = kept
		for _, j := range live {
			if near(boxes[i], boxes[j], v.gap) {
				v.add("sheet %d: items %d and %d are nearer than the gap, or overlap", v.at, v.s.Places[i].Item, v.s.Places[j].Item)
			}
		}
		live = append(live, i)
	}
}
