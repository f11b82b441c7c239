package search

import (
	"math"
	"sort"

	"forel/paper/pack/internal/slice"
)

// order gives a list of the items from the one to lay first.
func (p *Problem) order(key func(Item) float64) []int {
	by := make([]int, len(p.Items))
	k := make([]float64, len(p.Items))
	for i, it := range p.Items {
		by[i], k[i] = i, key(it)
	}
	sort.SliceStable(by, func(a, b int) bool { return k[by[a]] > k[by[b]] })
	return by
}

var keys = []func(Item) float64{
	func(i Item) float64 { return float64(i.W) * float64(i.H) },
	func(i Item) float64 { return float64(max(i.W, i.H)) },
	func(i Item) float64 { return float64(min(i.W, i.H)) },
	func(i Item) float64 { return float64(i.W + i.H) },
}

// place is where a piece would go.
type place struct {
	bin   int
	node  int32
	turn  bool
	first int8
	score float64
}

// best looks for the best Open node of a tree for a piece of w by h: the one
// whose free room loses least of the sum of its squared areas, which leaves
// few large rectangles.
func best(t *slice.Tree, w, h int, into *place, bin int, turned bool) {
	for _, n := range t.OpenNodes() {
		W, H := t.N[n].W, t.N[n].H
		if w > W || h > H {
			continue
		}
		a, b := float64(W), float64(H)
		c, d := float64(W-w), float64(H-h)
		sq := func(x float64) float64 { return x * x }
		all := sq(a * b)
		x := all - sq(c*b) - sq(float64(w)*d)
		if x < into.score {
			*into = place{bin, n, turned, slice.X, x}
		}
		y := all - sq(a*d) - sq(float64(h)*c)
		if y < into.score {
			*into = place{bin, n, turned, slice.Y, y}
		}
	}
}

// greedy lays the items in their order, each in its best place, and opens a
// sheet of the kind preferred when there is none.
func (p *Problem) greedy(order []int, prefer []int) *Solution {
	s := &Solution{}
	used := make([]int, len(p.Kinds))
	for _, item := range order {
		it := p.Items[item]
		at := place{score: math.Inf(1)}
		try := func(bin int) {
			best(&s.Bins[bin].Tree, it.W, it.H, &at, bin, false)
			if it.Turn && it.W != it.H {
				best(&s.Bins[bin].Tree, it.H, it.W, &at, bin, true)
			}
		}
		for b := range s.Bins {
			try(b)
		}
		if math.IsInf(at.score, 1) {
			for _, k := range prefer {
				if (p.Kinds[k].Count == 0 || used[k] < p.Kinds[k].Count) && p.fits(item, k) {
					used[k]++
					b := &Bin{Kind: k}
					b.Tree.Reset(p.Kinds[k].W, p.Kinds[k].H)
					s.Bins = append(s.Bins, b)
					s.Cost += p.Kinds[k].Cost
					try(len(s.Bins) - 1)
					break
				}
			}
		}
		if math.IsInf(at.score, 1) {
			s.Left = append(s.Left, item)
			continue
		}
		w, h := it.W, it.H
		if at.turn {
			w, h = h, w
		}
		s.Bins[at.bin].Tree.Insert(at.node, int32(item), w, h, at.first)
	}
	return s
}

// First gives the best of the greedy layouts.
func (p *Problem) First() *Solution {
	var found *Solution
	for _, key := range keys {
		order := p.order(key)
		for k := range p.Kinds {
			prefer := []int{k}
			for j := range p.Kinds {
				if j != k {
					prefer = append(prefer, j)
				}
			}
			s := p.greedy(order, prefer)
			if found == nil || len(s.Left) < len(found.Left) || len(s.Left) == len(found.Left) && s.Cost < found.Cost {
				found = s
			}
		}
	}
	return found
}
