// Package maxrects keeps the pieces on one sheet where they may lie anywhere, and the
// room between them as maximal free rectangles. Sizes are whole numbers in any unit; a
// gap between pieces is already part of their sizes.
package maxrects

// Rect is a rectangle.
type Rect struct{ X, Y, W, H int }

// Placed is a piece where it lies.
type Placed struct {
	Rect
	Item int32
}

// Free is a maximal free rectangle: none contains another. The size is there in
// floating point too, which is exact here.
type Free struct {
	W, H           float64
	x0, y0, x1, y1 int
}

// Sheet is a sheet.
type Sheet struct {
	W, H   int
	Placed []Placed
	free   []Free
	fresh  []Free
	sorted []Placed
	Area   int // of the pieces
}

func free(x0, y0, x1, y1 int) Free {
	return Free{float64(x1 - x0), float64(y1 - y0), x0, y0, x1, y1}
}

// Reset makes the sheet empty.
func (s *Sheet) Reset(w, h int) {
	s.W, s.H, s.Area = w, h, 0
	s.Placed = s.Placed[:0]
	s.free = append(s.free[:0], free(0, 0, w, h))
}

// Copy makes the sheet equal to another, reusing memory.
func (s *Sheet) Copy(o *Sheet) {
	s.W, s.H, s.Area = o.W, o.H, o.Area
	s.Placed = append(s.Placed[:0], o.Placed...)
	s.free = append(s.free[:0], o.free...)
}

// FreeRects returns the maximal free rectangles; the slice is the sheet's own.
func (s *Sheet) FreeRects() []Free { return s.free }

// Insert lays a piece of w by h into a corner of a free rectangle: bit 0 of the
// corner is for its right, bit 1 for its lower edge.
func (s *Sheet) Insert(n int32, item int32, w, h int, corner int8) {
	f := s.free[n]
	r := Rect{f.x0, f.y0, w, h}
	if corner&1 != 0 {
		r.X = f.x1 - w
	}
	if corner&2 != 0 {
		r.Y = f.y1 - h
	}
	s.Put(item, r)
}

// Put lays a piece where there is room for it.
func (s *Sheet) Put(item int32, r Rect) {
	s.Placed = append(s.Placed, Placed{r, item})
	s.Area += r.W * r.H
	s.take(r)
}

// take makes a rectangle no longer free.
func (s *Sheet) take(r Rect) {
	x0, y0, x1, y1 := r.X, r.Y, r.X+r.W, r.Y+r.H
	s.fresh = s.fresh[:0]
	kept := 0
	for i := range s.free {
		f := &s.free[i]
		if f.x1 <= x0 || f.x0 >= x1 || f.y1 <= y0 || f.y0 >= y1 {
			if kept != i {
				s.free[kept] = *f
			}
			kept++
			continue
		}
		if f.x0 < x0 {
			s.fresh = append(s.fresh, free(f.x0, f.y0, x0, f.y1))
		}
		if f.x1 > x1 {
			s.fresh = append(s.fresh, free(x1, f.y0, f.x1, f.y1))
		}
		if f.y0 < y0 {
			s.fresh = append(s.fresh, free(f.x0, f.y0, f.x1, y0))
		}
		if f.y1 > y1 {
			s.fresh = append(s.fresh, free(f.x0, y1, f.x1, f.y1))
		}
	}
	s.free = s.free[:kept]
	for i := range s.fresh {
		f := &s.fresh[i]
		inside := false
		for j := range kept {
			if within(f, &s.free[j]) {
				inside = true
				break
			}
		}
		for j := 0; j < len(s.fresh) && !inside; j++ {
			g := &s.fresh[j]
			inside = j != i && within(f, g) && (j < i || !within(g, f))
		}
		if !inside {
			s.free = append(s.free, *f)
		}
	}
}

func within(f, g *Free) bool {
	return f.x0 >= g.x0 && f.x1 <= g.x1 && f.y0 >= g.y0 && f.y1 <= g.y1
}

// Remove takes the piece at a place in the list out; Settle must follow before
// anything is laid.
func (s *Sheet) Remove(i int) {
	s.Area -= s.Placed[i].W * s.Placed[i].H
	last := len(s.Placed) - 1
	s.Placed[i] = s.Placed[last]
	s.Placed = s.Placed[:last]
}

// Settle works out what is free.
func (s *Sheet) Settle() {
	s.free = append(s.free[:0], free(0, 0, s.W, s.H))
	for _, p := range s.Placed {
		s.take(p.Rect)
	}
}
