package search

import (
	"slices"
	"sort"
)

// order returns a list of the items from the one to lay first.
func (p *Problem) order(key func(Item) float64) []int32 {
	by := make([]int32, len(p.Items))
	k := make([]float64, len(p.Items))
	for i, it := range p.Items {
		by[i], k[i] = int32(i), key(it)
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

// greedy lays the items in their order, each in its best place, and opens a
// sheet of the kind preferred when there is none.
func (p *Problem) greedy(order []int32, prefer []int, free bool) *Solution {
	s := &Solution{}
	used := make([]int, len(p.Kinds))
	var q quest
	var refused []int // bins in which the item locked others in
	for n := 0; n < len(order); n++ {
		item := order[n]
		it := &p.Items[item]
		q.begin()
		for b, bin := range s.Bins {
			if !slices.Contains(refused, b) {
				bin.offer(&q, b, it)
			}
		}
		if !q.found() {
			for _, k := range prefer {
				if (p.Kinds[k].Count == 0 || used[k] < p.Kinds[k].Count) && p.fits(it, k) {
					used[k]++
					s.Bins = append(s.Bins, p.bin(k, free))
					s.Bins[len(s.Bins)-1].offer(&q, len(s.Bins)-1, it)
					break
				}
			}
		}
		if !q.found() {
			s.Left = append(s.Left, item)
			continue
		}
		if s.Bins[q.bin].lay(q.place, item, it); free && !p.Free && !s.Bins[q.bin].apart() {
			refused = append(refused, q.bin)
			n--
			continue
		}
		refused = refused[:0]
	}
	s.Cost = p.cost(s.Bins)
	return s
}

// First returns the best of the greedy layouts.
func (p *Problem) First() *Solution {
	tried := keys
	ways := []bool{p.Free}
	if !p.Free && !p.roll() && len(p.Items) <= 2000 {
		ways = []bool{true, false}
	}
	if len(p.Items) > 2000 {
		tried = keys[:2]
	}
	var found *Solution
	for _, key := range tried {
		order := p.order(key)
		for k := range p.Kinds {
			prefer := []int{k}
			for j := range p.Kinds {
				if j != k {
					prefer = append(prefer, j)
				}
			}
			for _, free := range ways {
				if s := p.greedy(order, prefer, free); found == nil || s.better(found) {
					found = s
				}
			}
		}
	}
	return found
}
