package paper

import (
	"cmp"
	"slices"

	"forel/geometry"
)

// rough lays tiles on sheets in one go, fast enough to try every way to cut the
// templates up: the largest tile first, each into the free corner that it fits
// most closely, what is left of that parted in two.
type rough struct {
	areas []geometry.Box
	sizes []tileSize // of the last try, and where each lies
	spots []spot
	turns []bool // templates of it that are turned
	open  []sheetLeft
}

// tileSize is a tile to be placed, with the white that parts it from the next.
type tileSize struct {
	width, height  Length
	turn           bool // it may be turned
	template, tile int
	part, words    bool // of a template that is joined; room for words
}

// sheetLeft is a sheet and what is left free of it.
type sheetLeft struct {
	lying bool
	free  []geometry.Box // no two overlap
	used  float64        // mm²
	of    int            // the template whose parts lie on it, from 1; 0: none
}

// corner is where a tile may go.
type corner struct {
	sheet, free int
	turned      bool
	waste       Length // the shorter side left over beside it
}

// try places the tiles of templates, as long as that can come cheaper than a
// limit. The cost is the number of sheets, less the part of the emptiest that is
// free: it falls as that one empties.
func (r *rough) try(chosen []split, limit float64) (cost float64, ok bool) {
	r.sizes, r.spots, r.turns = r.sizes[:0], r.spots[:0], append(r.turns[:0], make([]bool, len(chosen))...)
	r.open = r.open[:0]
	for i, s := range chosen {
		for k, t := range s.tiles {
			w, h := t.Window.Width()+between, t.Window.Height()+between
			r.sizes = append(r.sizes, tileSize{w, h, s.whole() && !s.words, i, k, !s.whole(), s.words})
		}
	}
	slices.SortStableFunc(r.sizes, func(a, b tileSize) int {
		switch { // in the corner of the first sheet
		case a.words:
			return -1
		case b.words:
			return 1
		}
		return cmp.Or(cmp.Compare(max(b.width, b.height), max(a.width, a.height)), cmp.Compare(min(b.width, b.height), min(a.width, a.height)))
	})
	for _, t := range r.sizes {
		at, ok := r.best(t)
		if !ok {
			if float64(len(r.open)) >= limit {
				return 0, false // with one more sheet
			}
			at = r.add(t)
		}
		w, h := t.width, t.height
		if at.turned {
			w, h = h, w
			r.turns[t.template] = true
		}
		s := &r.open[at.sheet]
		if t.part {
			s.of = t.template + 1
		}
		r.spots = append(r.spots, spot{at.sheet, s.lying, s.free[at.free].Min})
		s.take(at.free, w, h)
	}
	least := 1.0
	for _, s := range r.open {
		a := r.area(s.lying)
		least = min(least, s.used/(a.Width()*a.Height()).MM())
	}
	cost = float64(len(r.open)) - 1 + least
	return cost, cost < limit
}

// placed returns the templates as the last try placed them.
func (r *rough) placed(chosen []split) []placed {
	out := make([]placed, len(chosen))
	for i, s := range chosen {
		out[i] = placed{s, make([]spot, len(s.tiles))}
		out[i].turned90 = out[i].turned90 || r.turns[i]
	}
	for i, t := range r.sizes {
		out[t.template].on[t.tile] = r.spots[i]
	}
	return out
}

// area returns the area of a sheet, with the white that the last tile in a row
// does not need.
func (r *rough) area(lying bool) geometry.Box {
	a := r.areas[0]
	if lying {
		a = r.areas[1]
	}
	return geometry.Bx(0, 0, a.Width()+between, a.Height()+between)
}

// best returns the free corner of the open sheets that a tile fits most closely. Parts
// of two templates share no sheet, so that nobody joins what does not belong together.
func (r *rough) best(t tileSize) (best corner, ok bool) {
	for i := range r.open {
		if of := r.open[i].of; of > 0 && t.part && of != t.template+1 {
			continue
		}
		for k, f := range r.open[i].free {
			if c, better := fits(t, f, best, ok); better {
				c.sheet, c.free = i, k
				best, ok = c, true
			}
		}
	}
	return best, ok
}

// fits tells whether a tile fits a free part, closer than in another corner if
// there is one.
func fits(t tileSize, f geometry.Box, than corner, other bool) (c corner, better bool) {
	try := func(turned bool, w, h Length) {
		waste := min(f.Width()-w, f.Height()-h)
		if waste >= -tiny && (!other || waste < than.waste) {
			c, better = corner{turned: turned, waste: waste}, true
			than, other = c, true
		}
	}
	try(false, t.width, t.height)
	if t.turn {
		try(true, t.height, t.width)
	}
	return c, better
}

// tiny is what lengths that come to the same may differ by.
const tiny Length = 1e-6

// add opens the kind of sheet that a tile fits most closely.
func (r *rough) add(t tileSize) corner {
	var best corner
	kind, found := false, false
	for _, lying := range []bool{false, true} {
		if c, ok := fits(t, r.area(lying), corner{}, false); ok && (!found || c.waste < best.waste) {
			best, kind, found = c, lying, true
		}
	}
	n := len(r.open)
	best.sheet = n
	if n < cap(r.open) { // the room of a sheet of an earlier try
		r.open = r.open[:n+1]
		s := &r.open[n]
		*s = sheetLeft{lying: kind, free: append(s.free[:0], r.area(kind))}
	} else {
		r.open = append(r.open, sheetLeft{lying: kind, free: []geometry.Box{r.area(kind)}})
	}
	return best
}

// take takes a corner of a free part; what is left of the part is parted so that
// the larger rest is as large as can be.
func (s *sheetLeft) take(n int, w, h Length) {
	f := s.free[n]
	s.used += (w * h).MM()
	right := geometry.Bx(f.Min.X+w, f.Min.Y, f.Max.X, f.Max.Y)
	below := geometry.Bx(f.Min.X, f.Min.Y+h, f.Max.X, f.Max.Y)
	if right.Width()*f.Height() > below.Height()*f.Width() {
		below.Max.X = f.Min.X + w
	} else {
		right.Max.Y = f.Min.Y + h
	}
	s.free[n] = right
	s.free = append(s.free, below)
}
