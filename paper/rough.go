package paper

import (
	"cmp"
	"slices"

	"forel/geometry"
)

// rough lays tiles on sheets in one go, fast enough to try every way to cut the
// patterns up: the largest tile first, each into the free corner that it fits
// most closely, what is left of that parted in two.
type rough struct {
	areas []geometry.Box
	sizes []tileSize
	open  []sheetLeft
}

// tileSize is a tile to be placed, with the white that parts it from the next.
type tileSize struct {
	width, height Length
	turn          bool // it may be turned
	pattern, tile int
}

// sheetLeft is a sheet and what is left free of it.
type sheetLeft struct {
	lying bool
	free  []geometry.Box // no two overlap
	used  float64        // mm²
}

// corner is where a tile may go.
type corner struct {
	sheet, free int
	turned      bool
	waste       Length // the shorter side left over beside it
}

// lay places the tiles of patterns. cost is the number of sheets, less the part
// of the emptiest that is free: it falls as that one empties.
func (r *rough) lay(chosen []split) (out []placed, cost float64) {
	r.sizes, r.open = r.sizes[:0], r.open[:0]
	for i, s := range chosen {
		for k, t := range s.tiles {
			r.sizes = append(r.sizes, tileSize{t.Window.Width() + between, t.Window.Height() + between, s.whole(), i, k})
		}
	}
	slices.SortStableFunc(r.sizes, func(a, b tileSize) int {
		return cmp.Or(cmp.Compare(max(b.width, b.height), max(a.width, a.height)), cmp.Compare(min(b.width, b.height), min(a.width, a.height)))
	})
	out = make([]placed, len(chosen))
	for i, s := range chosen {
		out[i] = placed{s, make([]spot, len(s.tiles))}
	}
	for _, t := range r.sizes {
		at, ok := r.best(t)
		if !ok {
			at = r.add(t)
		}
		w, h := t.width, t.height
		if at.turned {
			w, h = h, w
			out[t.pattern].turned90 = true
		}
		s := &r.open[at.sheet]
		place := s.free[at.free].Min
		s.take(at.free, w, h)
		out[t.pattern].on[t.tile] = spot{at.sheet, s.lying, place}
	}
	least := 1.0
	for _, s := range r.open {
		a := r.area(s.lying)
		least = min(least, s.used/(a.Width()*a.Height()).MM())
	}
	return out, float64(len(r.open)) - 1 + least
}

// area gives the area of a sheet, with the white that the last tile in a row
// does not need.
func (r *rough) area(lying bool) geometry.Box {
	a := r.areas[0]
	if lying {
		a = r.areas[1]
	}
	return geometry.Bx(0, 0, a.Width()+between, a.Height()+between)
}

// best gives the free corner of the open sheets that a tile fits most closely.
func (r *rough) best(t tileSize) (best corner, ok bool) {
	for i, s := range r.open {
		for k, f := range s.free {
			for _, turned := range []bool{false, true} {
				w, h := t.width, t.height
				if turned {
					w, h = h, w
				}
				if turned && !t.turn || w > f.Width()+tiny || h > f.Height()+tiny {
					continue
				}
				if waste := min(f.Width()-w, f.Height()-h); !ok || waste < best.waste {
					best, ok = corner{i, k, turned, waste}, true
				}
			}
		}
	}
	return best, ok
}

// tiny is what lengths that come to the same may differ by.
const tiny Length = 1e-6

// add opens the kind of sheet that a tile fits most closely.
func (r *rough) add(t tileSize) corner {
	n := len(r.open)
	var best corner
	kind, found := false, false
	for _, lying := range []bool{false, true} {
		r.open = append(r.open[:n], sheetLeft{lying: lying, free: []geometry.Box{r.area(lying)}})
		closed := r.open[:n]
		r.open = r.open[n:]
		c, ok := r.best(t)
		r.open = append(closed, r.open...)
		if c.sheet = n; ok && (!found || c.waste < best.waste) {
			best, kind, found = c, lying, true
		}
	}
	r.open[n] = sheetLeft{lying: kind, free: []geometry.Box{r.area(kind)}}
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
