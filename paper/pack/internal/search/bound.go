package search

import "math"

// A dual feasible function takes a side, as a share of the sheet's, to another
// share, so that sides that add up to no more than 1 still do. Pieces whose
// sides are changed so still fit where they fitted, and the sum of their areas
// bounds the number of sheets. Fekete and Schepers (2001), "New classes of fast
// lower bounds for bin packing problems"; that the product of two of them
// bounds the packing of rectangles: Fekete and Schepers (2004), "A general
// framework for bounds for higher-dimensional orthogonal packing problems".
// Both from memory; the tests try the property on random sums.
type dual struct {
	class int // 0 as it is, 1 step up, 2 large and small, 3 halves
	k     int
}

// at returns the function's value for a side x of a sheet's c.
func (d dual) at(x, c int) float64 {
	switch d.class {
	case 1: // u(k)
		if (d.k+1)*x%c == 0 {
			break
		}
		return float64((d.k+1)*x/c) / float64(d.k)
	case 2: // U(eps)
		if x > c-d.k {
			return 1
		}
		if x < d.k {
			return 0
		}
	case 3: // Carlier, Clautiaux and Moukrim (2007), f2
		whole := c / d.k
		switch {
		case 2*x > c:
			return 1 - float64((c-x)/d.k)/float64(whole)
		case 2*x == c:
			return 0.5
		}
		return float64(x/d.k) / float64(whole)
	}
	return float64(x) / float64(c)
}

// duals returns the functions worth trying on a side c, for pieces with the sides
// given: at most about most of them.
func duals(sides []int, c, most int) []dual {
	all := []dual{{}}
	for k := 1; k <= 12; k++ {
		all = append(all, dual{1, k})
	}
	seen := map[int]bool{}
	var values []int
	for _, x := range sides {
		for _, v := range []int{x, c - x, c - x + 1, x + 1} {
			if v > 0 && 2*v <= c && !seen[v] {
				seen[v] = true
				values = append(values, v)
			}
		}
	}
	step := max(1, 2*len(values)/most)
	for i := 0; i < len(values); i += step {
		all = append(all, dual{2, values[i]}, dual{3, values[i]})
	}
	return all
}

// Bound returns what a solution can't cost less than. It stops looking once it
// reaches enough.
func (p *Problem) Bound(enough float64) float64 {
	area := 0.0
	for i := range p.Items {
		area += p.Items[i].area()
	}
	if len(p.Items) == 0 {
		return 0
	}
	if len(p.Kinds) > 1 {
		rate, least := math.Inf(1), math.Inf(1)
		for _, k := range p.Kinds {
			rate = min(rate, k.Cost/float64(k.W)/float64(k.H))
			least = min(least, k.Cost)
		}
		return max(area*rate*(1-1e-12), least)
	}
	k := &p.Kinds[0]
	// Of a roll the length counts: one side of the piece stays as it is.
	value := func(sum float64) float64 { return math.Ceil(sum*(1-1e-12)-1e-7) * k.Cost }
	bound := value(area / (float64(k.W) * float64(k.H)))
	if k.Roll {
		step := float64(max(p.Step, 1))
		value = func(sum float64) float64 { return math.Ceil(sum*(1-1e-12)/step-1e-7) * step }
		bound = value(area / float64(k.W))
		for i := range p.Items {
			it := &p.Items[i]
			least := it.H
			if it.Turn && it.H <= k.W {
				least = min(it.W, it.H)
				if it.W > k.W {
					least = it.W
				}
			}
			bound = max(bound, float64(least))
		}
	}
	if len(p.Items) > 5000 {
		return bound
	}
	return p.dualBound(bound, enough, value)
}

// dualBound betters a bound by pairs of functions, one for each direction.
func (p *Problem) dualBound(bound, enough float64, value func(float64) float64) float64 {
	k, n := &p.Kinds[0], len(p.Items)
	var sides []int
	for i := range p.Items {
		sides = append(sides, p.Items[i].W, p.Items[i].H)
	}
	ft := table(duals(sides, k.W, 150), sides, k.W)
	gt := ft
	switch {
	case k.Roll:
		gt = [][]float64{make([]float64, 2*n)}
		for i, x := range sides {
			gt[0][i] = float64(x)
		}
	case k.W != k.H:
		gt = table(duals(sides, k.H, 150), sides, k.H)
	}
	spent := 0
	for i := range ft {
		for j := range gt {
			if bound >= enough {
				return bound
			}
			if spent += n; i == 0 || j == 0 || k.W == k.H && i == j || spent < 2e5 {
				bound = max(bound, value(p.total(ft[i], gt[j])))
			}
		}
	}
	return bound
}

// table returns the values of functions for sides.
func table(fs []dual, sides []int, c int) [][]float64 {
	t := make([][]float64, len(fs))
	for i, f := range fs {
		t[i] = make([]float64, len(sides))
		for j, x := range sides {
			if x <= c {
				t[i][j] = f.at(x, c)
			}
		}
	}
	return t
}

// total returns the area of all pieces, with their sides changed, each as it lies
// smallest.
func (p *Problem) total(f, g []float64) float64 {
	k, sum := &p.Kinds[0], 0.0
	for j := range p.Items {
		it := &p.Items[j]
		up := it.W <= k.W && it.H <= k.H
		turned := it.Turn && it.H <= k.W && it.W <= k.H
		a, b := f[2*j]*g[2*j+1], f[2*j+1]*g[2*j]
		switch {
		case up && turned:
			sum += min(a, b)
		case up:
			sum += a
		case turned:
			sum += b
		}
	}
	return sum
}
