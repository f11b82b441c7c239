package maxrects

import "slices"

// Apart tells whether the pieces come apart by cuts from edge to edge. Cutting
// wherever one can spoils no later cut, so the first found will do.
func (s *Sheet) Apart() bool {
	s.sorted = append(s.sorted[:0], s.Placed...)
	return apart(s.sorted)
}

func apart(g []Placed) bool {
	if len(g) < 4 {
		return true // fewer than four can't lock into each other
	}
	for _, along := range []bool{true, false} {
		Sort(g, along)
		from, end, cut := 0, 0, false
		for i := range g {
			lo, hi := g[i].Span(along)
			if i > from && lo >= end {
				cut = true
				if !apart(g[from:i]) {
					return false
				}
				from = i
			}
			end = max(end, hi)
		}
		if cut {
			return apart(g[from:])
		}
	}
	return false
}

// Span returns from where to where a piece reaches across the sheet, or down it.
func (p *Placed) Span(x bool) (from, to int) {
	if x {
		return p.X, p.X + p.W
	}
	return p.Y, p.Y + p.H
}

// Sort sorts pieces by where they begin across the sheet, or down it.
func Sort(g []Placed, x bool) {
	slices.SortFunc(g, func(a, b Placed) int {
		p, _ := a.Span(x)
		q, _ := b.Span(x)
		return p - q
	})
}
