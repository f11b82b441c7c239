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

// at gives the function's value for a side x of a sheet's c.
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

// duals gives the functions worth trying on a side c, for pieces with the sides
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

// Bound gives what a solution can't cost less than, with kinds of sheet of one
// size the number of them that can't be too few.
func (p *Problem) Bound() int {
	k := p.Kinds[0]
	area := 0.0
	var sides []int
	for _, it := range p.Items {
		area += float64(it.W) * float64(it.H)
		sides = append(sides, it.W, it.H)
	}
	ceil := func(x float64) int { return int(math.Ceil(x - 1e-7)) }
	bound := max(ceil(area/float64(k.W)/float64(k.H)), min(1, len(p.Items)))
	n := len(p.Items)
	if n == 0 || n > 5000 {
		return bound
	}
	fs := duals(sides, k.W, 150)
	gs := fs
	if k.W != k.H {
		gs = duals(sides, k.H, 150)
	}
	// Values of both functions for both sides of each piece.
	table := func(fs []dual, c int) [][]float64 {
		t := make([][]float64, len(fs))
		for i, f := range fs {
			t[i] = make([]float64, 2*n)
			for j, x := range sides {
				if x <= c {
					t[i][j] = f.at(x, c)
				}
			}
		}
		return t
	}
	ft, gt := table(fs, k.W), table(gs, k.H)
	try := func(f, g []float64) {
		sum := 0.0
		for j, it := range p.Items {
			v := math.Inf(1)
			if it.W <= k.W && it.H <= k.H {
				v = f[2*j] * g[2*j+1]
			}
			if it.Turn && it.H <= k.W && it.W <= k.H {
				v = min(v, f[2*j+1]*g[2*j])
			}
			if !math.IsInf(v, 1) {
				sum += v
			}
		}
		bound = max(bound, ceil(sum))
	}
	spent := 0
	for i := range ft {
		for j := range gt {
			near := i == 0 || j == 0 || k.W == k.H && i == j
			if spent += n; near || spent < 2e5 {
				try(ft[i], gt[j])
			}
		}
	}
	return bound
}
