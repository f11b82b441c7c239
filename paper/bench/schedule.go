package bench

import (
	"cmp"
	"slices"
	"strconv"

	"forel/geometry"
)

// start is a sheet with what is to be cut from it.
type start struct {
	sheet Sheet
	cell  *cell
}

// cutAll cuts every sheet of a group: lengths off the roll and trims first, then
// at one setting of the fence whatever can be cut at it, on every sheet, before
// the fence is moved.
//
// Sheets are numbered from first.
func cutAll(g *group, starts []start, first int, keep Length) {
	s := &shop{group: g, kerf: g.kerf(), keep: keep, ready: map[key]*bucket{}, future: map[key]int{}, given: map[int]int{}}
	var parts []*part
	for i, st := range starts {
		st.sheet.Number = first + i
		g.Sheets = append(g.Sheets, st.sheet)
		s.expect(st.cell, [2]bool{true, true})
	}
	for i, st := range starts {
		if st.sheet.Roll {
			s.cutOff(i, st)
		}
	}
	for i, st := range starts {
		p := &part{sheet: i, name: s.sheetName(i), box: geometry.Bx(0, 0, st.sheet.Width, st.sheet.Height), cell: st.cell, keep: keep}
		s.trim(p)
		parts = append(parts, p)
	}
	for _, p := range parts {
		if s.settle(p) {
			s.offer(p)
		}
	}
	for len(s.ready) > 0 {
		s.fence = s.next()
		s.setting++
		for s.ready[s.fence] != nil {
			s.cutNext()
		}
	}
	g.Settings = s.setting
	s.finish()
}

// sheetName names a whole sheet as a part.
func (s *shop) sheetName(i int) string { return strconv.Itoa(s.Sheets[i].Number) }

// bucket is all that can be cut at one setting.
type bucket struct {
	parts []*part
	cuts  int // ready in them
}

// offer puts a part among those that can be cut now.
func (s *shop) offer(p *part) {
	p.next = p.options()
	for _, o := range p.next {
		k := keyOf(o.fence)
		if s.ready[k] == nil {
			s.ready[k] = &bucket{}
		}
		s.ready[k].parts = append(s.ready[k].parts, p)
		s.ready[k].cuts += o.times
	}
}

// withdraw takes a part from among those that can be cut.
func (s *shop) withdraw(p *part) {
	for _, o := range p.next {
		k := keyOf(o.fence)
		b := s.ready[k]
		b.parts = slices.DeleteFunc(b.parts, func(q *part) bool { return q == p })
		if b.cuts -= o.times; len(b.parts) == 0 {
			delete(s.ready, k)
		}
	}
}

// cutNext makes one cut at the setting of the fence.
func (s *shop) cutNext() {
	parts := s.ready[s.fence].parts
	p := parts[0]
	if n := len(s.Cuts); n > 0 { // what is at the fence already is cut on
		last := s.Cuts[n-1]
		for _, q := range parts {
			if q.sheet == last.Sheet && q.name == last.Part {
				p = q
				break
			}
		}
	}
	s.withdraw(p)
	for _, o := range p.next {
		if keyOf(o.fence) == s.fence {
			for _, q := range s.cutPart(p, o) {
				s.offer(q)
			}
			return
		}
	}
}

// next returns the setting to move the fence to: one that is done with once
// everything ready for it is cut, if there is one; of several the one on the
// first sheet, then the largest.
func (s *shop) next() key {
	type choice struct {
		k     key
		again bool
		sheet int
	}
	var best choice
	for k, b := range s.ready {
		c := choice{k: k, again: s.future[k] > b.cuts, sheet: b.parts[0].sheet}
		for _, p := range b.parts {
			c.sheet = min(c.sheet, p.sheet)
		}
		if best.k == 0 || cmp.Or(less(c.again, best.again), cmp.Compare(c.sheet, best.sheet), cmp.Compare(best.k, c.k)) < 0 {
			best = c
		}
	}
	return best.k
}

func less(a, b bool) int {
	switch {
	case a == b:
		return 0
	case b:
		return -1
	}
	return 1
}

// cutOff cuts a length off a roll, whose end is cut square first.
func (s *shop) cutOff(i int, st start) {
	w, h := st.sheet.Width, st.sheet.Height
	if t := s.Stock[st.sheet.Stock].Trim; t > 0 && !slices.ContainsFunc(s.Cuts, func(c Cut) bool { return s.Sheets[c.Sheet].Stock == st.sheet.Stock }) {
		s.Cuts = append(s.Cuts, Cut{Number: len(s.Cuts) + 1, Kind: Square, Sheet: i, Part: roll, Fence: t,
			From: geometry.Pt(0, 0), To: geometry.Pt(w, 0)})
	}
	s.Cuts = append(s.Cuts, Cut{Number: len(s.Cuts) + 1, Kind: CutOff, Sheet: i, Part: roll, Fence: h,
		From: geometry.Pt(0, h), To: geometry.Pt(w, h),
		Takes: Result{Kind: APart, Part: s.sheetName(i), Box: geometry.Bx(0, 0, w, h)}})
}

// trim cuts away the left and the upper edge of a sheet, which then lie to the
// fence; the other two go when what is left over does.
func (s *shop) trim(p *part) {
	sh := s.Sheets[p.sheet]
	t := s.Stock[sh.Stock].Trim
	if t <= 0 {
		return
	}
	b := p.box
	cut := func(alongY bool, from, to geometry.Point) {
		s.Cuts = append(s.Cuts, Cut{Number: len(s.Cuts) + 1, Kind: Square, Sheet: p.sheet, Part: p.name, Fence: t, AlongY: alongY,
			From: from, To: to, Leaves: Result{Kind: APart, Part: p.name, Box: p.box}})
	}
	p.box.Min.X = t
	cut(true, geometry.Pt(t, 0), geometry.Pt(t, b.Max.Y))
	if sh.Roll {
		return
	}
	p.box.Min.Y = t
	cut(false, geometry.Pt(t, t), geometry.Pt(b.Max.X, t))
}

// roll is what a length is cut off.
const roll = "the roll"
