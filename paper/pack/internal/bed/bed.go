// Package bed keeps the places on one sheet, and the room between them, where
// pieces may lie anywhere. Sizes are whole numbers in any unit; a gap between
// pieces is already part of their sizes.
package bed

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

// Bed is a sheet.
type Bed struct {
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
func (b *Bed) Reset(w, h int) {
	b.W, b.H, b.Area = w, h, 0
	b.Placed = b.Placed[:0]
	b.free = append(b.free[:0], free(0, 0, w, h))
}

// Copy makes the sheet equal to another, reusing memory.
func (b *Bed) Copy(o *Bed) {
	b.W, b.H, b.Area = o.W, o.H, o.Area
	b.Placed = append(b.Placed[:0], o.Placed...)
	b.free = append(b.free[:0], o.free...)
}

// FreeRects returns the maximal free rectangles; the slice is the sheet's own.
func (b *Bed) FreeRects() []Free { return b.free }

// Insert lays a piece of w by h into a corner of a free rectangle: bit 0 of the
// corner is for its right, bit 1 for its lower edge.
func (b *Bed) Insert(n int32, item int32, w, h int, corner int8) {
	f := b.free[n]
	r := Rect{f.x0, f.y0, w, h}
	if corner&1 != 0 {
		r.X = f.x1 - w
	}
	if corner&2 != 0 {
		r.Y = f.y1 - h
	}
	b.Put(item, r)
}

// Put lays a piece where there is room for it.
func (b *Bed) Put(item int32, r Rect) {
	b.Placed = append(b.Placed, Placed{r, item})
	b.Area += r.W * r.H
	b.take(r)
}

// take makes a rectangle no longer free.
func (b *Bed) take(r Rect) {
	x0, y0, x1, y1 := r.X, r.Y, r.X+r.W, r.Y+r.H
	b.fresh = b.fresh[:0]
	kept := 0
	for i := range b.free {
		f := &b.free[i]
		if f.x1 <= x0 || f.x0 >= x1 || f.y1 <= y0 || f.y0 >= y1 {
			if kept != i {
				b.free[kept] = *f
			}
			kept++
			continue
		}
		if f.x0 < x0 {
			b.fresh = append(b.fresh, free(f.x0, f.y0, x0, f.y1))
		}
		if f.x1 > x1 {
			b.fresh = append(b.fresh, free(x1, f.y0, f.x1, f.y1))
		}
		if f.y0 < y0 {
			b.fresh = append(b.fresh, free(f.x0, f.y0, f.x1, y0))
		}
		if f.y1 > y1 {
			b.fresh = append(b.fresh, free(f.x0, y1, f.x1, f.y1))
		}
	}
	b.free = b.free[:kept]
	for i := range b.fresh {
		f := &b.fresh[i]
		inside := false
		for j := range kept {
			if within(f, &b.free[j]) {
				inside = true
				break
			}
		}
		for j := 0; j < len(b.fresh) && !inside; j++ {
			g := &b.fresh[j]
			inside = j != i && within(f, g) && (j < i || !within(g, f))
		}
		if !inside {
			b.free = append(b.free, *f)
		}
	}
}

func within(f, g *Free) bool {
	return f.x0 >= g.x0 && f.x1 <= g.x1 && f.y0 >= g.y0 && f.y1 <= g.y1
}

// Remove takes the piece at a place in the list out; Settle must follow before
// anything is laid.
func (b *Bed) Remove(i int) {
	b.Area -= b.Placed[i].W * b.Placed[i].H
	last := len(b.Placed) - 1
	b.Placed[i] = b.Placed[last]
	b.Placed = b.Placed[:last]
}

// Settle works out what is free.
func (b *Bed) Settle() {
	b.free = append(b.free[:0], free(0, 0, b.W, b.H))
	for _, p := range b.Placed {
		b.take(p.Rect)
	}
}

// Largest returns the largest free rectangle, less the gap.
func (b *Bed) Largest(gap int) (r Rect) {
	most := 0.0
	for i := range b.free {
		f := &b.free[i]
		if a := (f.W - float64(gap)) * (f.H - float64(gap)); f.W > float64(gap) && f.H > float64(gap) && a > most {
			most, r = a, Rect{f.x0, f.y0, f.x1 - f.x0, f.y1 - f.y0}
		}
	}
	return r
}
