package pack

import (
	"slices"

	"forel/paper/pack/internal/search"
)

// strip is a way to lay pieces side by side: along X if they lie in a row, along
// Y if one below the other, either if the whole may be turned.
type strip struct {
	breadth    int
	row, stack bool
	along      []int // length of each piece, without the gap
	parts      [][]int
}

// addStrips joins pieces with one key into as few strips as will do. Where no sheet takes
// such a strip, or the pieces have no side in common, each is laid alone.
func (m *model) addStrips(pieces []int) {
	first := m.p.Items[pieces[0]]
	var best *strip
	for _, breadth := range []int{whole(first.Width), whole(first.Height)} {
		s := &strip{breadth: breadth, row: true, stack: true}
		if !m.along(s, pieces) || !m.share(s, pieces) {
			continue
		}
		if best == nil || len(s.parts) < len(best.parts) || len(s.parts) == len(best.parts) && s.breadth < best.breadth {
			best = s
		}
	}
	if best == nil {
		for _, i := range pieces {
			m.addPiece(i)
		}
		return
	}
	for _, part := range best.parts {
		long := 0
		for _, i := range part {
			long += best.along[slices.Index(pieces, i)] + m.gap
		}
		it := search.Item{W: long, H: best.breadth + m.gap, Turn: best.row && best.stack}
		if !best.row {
			it.W, it.H = it.H, it.W
		}
		m.in.Items = append(m.in.Items, it)
		m.members = append(m.members, part)
	}
}

// along works out how the pieces lie with the strip's breadth across it, and
// tells whether they can.
func (m *model) along(s *strip, pieces []int) bool {
	for _, i := range pieces {
		it := &m.p.Items[i]
		w, h := whole(it.Width), whole(it.Height)
		switch {
		case it.Turn && h == s.breadth:
			s.along = append(s.along, w)
		case it.Turn && w == s.breadth:
			s.along = append(s.along, h)
		case it.Turn:
			return false
		case h == s.breadth && w == s.breadth:
			s.along = append(s.along, w)
		case h == s.breadth && s.row:
			s.stack = false
			s.along = append(s.along, w)
		case w == s.breadth && s.stack:
			s.row = false
			s.along = append(s.along, h)
		default:
			return false
		}
	}
	return s.row || s.stack
}

// share parts the pieces among as few strips as the longest first gives, none
// longer than the stock takes. It tells whether all find one.
func (m *model) share(s *strip, pieces []int) bool {
	most, scarce := 0, 0
	for i := range m.p.Stock {
		st := &m.p.Stock[i]
		w, h := whole(st.Width), whole(st.Height)
		if st.endless() {
			h = 1 << 40
		}
		long := 0
		if s.row && s.breadth <= h {
			long = w
		}
		if s.stack && s.breadth <= w {
			long = max(long, h)
		}
		if st.Count > 0 {
			scarce = max(scarce, long)
		} else {
			most = max(most, long)
		}
	}
	if most < slices.Max(s.along) {
		most = scarce
	}
	by := make([]int, len(pieces))
	for i := range by {
		by[i] = i
	}
	slices.SortStableFunc(by, func(a, b int) int { return s.along[b] - s.along[a] })
	var left []int
next:
	for _, i := range by {
		need := s.along[i] + m.gap
		if need > most+m.gap {
			return false
		}
		for j := range left {
			if need <= left[j] {
				left[j] -= need
				s.parts[j] = append(s.parts[j], pieces[i])
				continue next
			}
		}
		left = append(left, most+m.gap-need)
		s.parts = append(s.parts, []int{pieces[i]})
	}
	return true
}
