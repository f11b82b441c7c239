package search

import (
	"math/rand/v2"
	"slices"

	"forel/paper/pack/internal/slicing"
)

// cutSheet is a sheet cut edge to edge.
type cutSheet struct {
	slicing.Tree
	cuts []uint64
}

func (c *cutSheet) copyFrom(o sheet)          { c.Copy(&o.(*cutSheet).Tree) }
func (c *cutSheet) used() int                 { return c.Area }
func (c *cutSheet) items(out []int32) []int32 { return c.Items(0, out) }

// anyWay is the rule of rough scores: any place may win now and then.
const anyWay = 3

// scan offers the Open nodes. The best is the one whose free room loses least of
// the sum of its squared areas, which leaves few large rectangles.
func (c *cutSheet) scan(q *quest, bin int, w, h float64, turned bool) {
	for _, f := range c.OpenNodes() {
		if w > f.W || h > f.H || q.overlook() {
			continue
		}
		dw, dh := f.W-w, f.H-h
		all, r, b := f.W*f.H, dw*f.H, w*dh
		all *= all
		x := all - r*r - b*b
		b, r = f.W*dh, dw*h
		y := all - r*r - b*b
		if q.rule == anyWay {
			x *= 0.5 + q.rnd.Float64()
			y *= 0.5 + q.rnd.Float64()
		}
		if x < q.score {
			q.place = place{bin, f.Node, turned, slicing.X, x}
		}
		if y < q.score {
			q.place = place{bin, f.Node, turned, slicing.Y, y}
		}
	}
}

// ruin takes out the pieces of up to most nodes, of any depth.
func (c *cutSheet) ruin(r *rand.Rand, most int, out []int32) []int32 {
	for k := 1 + r.IntN(most); k > 0 && c.Area > 0; {
		n := int32(r.IntN(len(c.N)))
		if it := c.N[n].Item; it == slicing.Open || it == slicing.Idle {
			continue
		}
		out = c.Items(n, out)
		c.Remove(n)
		k--
	}
	return out
}

func (c *cutSheet) worth(full float64) float64 {
	v := 0.0
	for _, f := range c.OpenNodes() {
		a := f.W * f.H / full
		v += a * a
	}
	return v
}

// settings counts the distances that each stage of cuts has.
func (c *cutSheet) settings() int {
	c.cuts = c.Cuts(0, 0, c.cuts[:0])
	slices.Sort(c.cuts)
	n := 0
	for i, d := range c.cuts {
		if i == 0 || d != c.cuts[i-1] {
			n++
		}
	}
	return n
}
