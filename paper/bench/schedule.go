package bench

import (
	"cmp"
	"maps"
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
	s := &shop{group: g, keep: keep, given: map[int]int{}}
	for i, st := range starts {
		st.sheet.Number = first + i
		g.Sheets = append(g.Sheets, st.sheet)
	}
	for i, sh := range g.Sheets {
		if sh.Roll {
			s.cutOff(i, sh)
		}
	}
	for i, st := range starts {
		p := &part{sheet: i, name: s.sheetName(i), box: geometry.Bx(0, 0, st.sheet.Width, st.sheet.Height), cell: st.cell}
		s.trim(p)
		if s.settle(p) {
			s.offer(p)
		}
	}
	for len(s.parts) > 0 {
		s.fence = s.next()
		s.setting++
		for s.cutNext() {
		}
	}
	g.Settings = s.setting
	s.finish()
}

// sheetName names a whole sheet as a part.
func (s *shop) sheetName(i int) string { return strconv.Itoa(s.Sheets[i].Number) }

// offer puts a part among those that can be cut now.
func (s *shop) offer(p *part) {
	p.next = p.options(s.keep)
	s.parts = append(s.parts, p)
}

// cutNext makes one cut at the setting of the fence, if there is one to make. What is at the
// fence already is cut on.
func (s *shop) cutNext() bool {
	var last Cut
	if n := len(s.Cuts); n > 0 {
		last = s.Cuts[n-1]
	}
	at, cut := -1, option{}
	for i, p := range s.parts {
		n := slices.IndexFunc(p.next, func(o option) bool { return keyOf(o.fence) == s.fence })
		there := p.sheet == last.Sheet && p.name == last.Part
		if n >= 0 && (at < 0 || there) {
			at, cut = i, p.next[n]
			if there {
				break
			}
		}
	}
	if at < 0 {
		return false
	}
	p := s.parts[at]
	s.parts = slices.Delete(s.parts, at, at+1)
	s.cutPart(p, cut)
	return true
}

// next returns the setting to move the fence to: one that is done with once
// everything ready for it is cut, if there is one; of several the one on the
// first sheet, then the largest.
func (s *shop) next() key {
	type ready struct{ cuts, sheet int }
	at, future := map[key]ready{}, map[key]int{} // how many cells still need a side of that length
	for _, p := range s.parts {
		p.cell.expect([2]bool{!p.settled[0], !p.settled[1]}, future)
		for _, o := range p.next {
			r, known := at[keyOf(o.fence)]
			if !known {
				r.sheet = p.sheet
			}
			at[keyOf(o.fence)] = ready{r.cuts + o.times, min(r.sheet, p.sheet)}
		}
	}
	again := func(k key) bool { return future[k] > at[k].cuts }
	return slices.MinFunc(slices.Collect(maps.Keys(at)), func(k, l key) int {
		return cmp.Or(less(again(k), again(l)), cmp.Compare(at[k].sheet, at[l].sheet), cmp.Compare(l, k))
	})
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
func (s *shop) cutOff(i int, sh Sheet) {
	b := geometry.Bx(0, 0, sh.Width, sh.Height)
	if t := s.Stock[sh.Stock].Trim; t > 0 && !slices.ContainsFunc(s.Cuts, func(c Cut) bool { return s.Sheets[c.Sheet].Stock == sh.Stock }) {
		s.note(Cut{Kind: Square, Sheet: i, Part: roll, Fence: t}, acrossY, 0, b)
	}
	s.note(Cut{Kind: CutOff, Sheet: i, Part: roll, Fence: sh.Height, Takes: Result{Kind: APart, Part: s.sheetName(i), Box: b}}, acrossY, sh.Height, b)
}

// trim cuts away the left and the upper edge of a sheet, which then lie to the
// fence; the other two go when what is left over does. The ends of a length off a roll are
// cut already.
func (s *shop) trim(p *part) {
	sh := s.Sheets[p.sheet]
	t := s.Stock[sh.Stock].Trim
	if t <= 0 {
		return
	}
	edges := []axis{acrossX, acrossY}
	if sh.Roll {
		edges = edges[:1]
	}
	for _, a := range edges {
		*a.of(&p.box.Min) = t
		s.note(Cut{Kind: Square, Sheet: p.sheet, Part: p.name, Fence: t, Leaves: Result{Kind: APart, Part: p.name, Box: p.box}}, a, t, p.box)
	}
}

// roll is what a length is cut off.
const roll = "the roll"
