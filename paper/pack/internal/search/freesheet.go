package search

import (
	"forel/paper/pack/internal/maxrects"
	"math/rand/v2"
)

// freeSheet is a sheet on which pieces lie anywhere.
type freeSheet struct{ maxrects.Sheet }

func (b *freeSheet) copyFrom(o sheet) { b.Copy(&o.(*freeSheet).Sheet) }
func (b *freeSheet) used() int        { return b.Area }

func (b *freeSheet) items(out []int32) []int32 {
	for i := range b.Placed {
		out = append(out, b.Placed[i].Item)
	}
	return out
}

// scan offers the maximal free rectangles.
func (b *freeSheet) scan(q *quest, bin int, w, h float64, turned bool) {
	free := b.FreeRects()
	for i := range free {
		f := &free[i]
		if w > f.W || h > f.H || q.overlook() {
			continue
		}
		dw, dh := f.W-w, f.H-h
		var x float64
		switch q.rule {
		case 0:
			x = min(dw, dh) + max(dw, dh)*1e-3
		case 1:
			x = f.W*f.H - w*h
		case 2:
			r, a := max(dw*f.H, f.W*dh), f.W*f.H
			x = a*a - r*r
		}
		if x < q.score {
			q.place = place{bin, int32(i), turned, int8(q.corner), x}
		}
	}
}

// ruin takes out up to most pieces, or all that reach into a window.
func (b *freeSheet) ruin(r *rand.Rand, most int, out []int32) []int32 {
	if r.IntN(2) == 0 {
		for k := 1 + r.IntN(most); k > 0 && len(b.Placed) > 0; k-- {
			i := r.IntN(len(b.Placed))
			out = append(out, b.Placed[i].Item)
			b.Remove(i)
		}
	} else {
		c, d := b.Placed[r.IntN(len(b.Placed))], b.Placed[r.IntN(len(b.Placed))]
		x0, x1 := min(c.X, d.X), max(c.X+c.W, d.X+d.W)
		y0, y1 := min(c.Y, d.Y), max(c.Y+c.H, d.Y+d.H)
		for i := len(b.Placed) - 1; i >= 0; i-- {
			p := &b.Placed[i]
			if p.X < x1 && p.X+p.W > x0 && p.Y < y1 && p.Y+p.H > y0 {
				out = append(out, p.Item)
				b.Remove(i)
			}
		}
	}
	b.Settle()
	return out
}

func (b *freeSheet) worth(full float64) float64 {
	v := 0.0
	free := b.FreeRects()
	for i := range free {
		v = max(v, free[i].W*free[i].H/full)
	}
	return v * v
}

func (b *freeSheet) settings() int { return 0 }

// apart tells whether the pieces come apart by cuts from edge to edge; if not,
// it takes out the one laid last.
func (b *Bin) apart() bool {
	d := b.Rects()
	if d == nil || d.Apart() {
		return true
	}
	d.Remove(len(d.Placed) - 1)
	d.Settle()
	return false
}
