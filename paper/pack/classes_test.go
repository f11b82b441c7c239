package pack_test

import (
	"math"
	"math/rand/v2"
	"sort"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/geometry"
	"forel/paper/pack"
)

// likeClass makes an instance as the published classes define theirs, with turns
// allowed. Berkey and Wang (1987), "Two-dimensional finite bin-packing algorithms": classes 1
// to 6, sides even over 1 to 10, 35 or 100, bins of 10 and 30, 40 and 100,
// 100 and 300. Martello and Vigo (1998), "Exact solution of the two-dimensional finite
// bin packing problem": classes 7 to 10, bins of 100, four types of item
// of which the class's own makes 70 % and the others 10 % each. Both from memory.
func likeClass(class, n int, r *rand.Rand) pack.Problem {
	bin := []int{10, 30, 40, 100, 100, 300, 100, 100, 100, 100}[class-1]
	most := []int{10, 10, 35, 35, 100, 100}
	p := pack.Problem{Stock: []pack.Stock{{Width: geometry.Length(bin), Height: geometry.Length(bin)}}}
	even := func(from, to int) geometry.Length { return geometry.Length(from + r.IntN(to-from+1)) }
	for range n {
		it := pack.Item{Turn: true}
		if class <= 6 {
			it.Width, it.Height = even(1, most[class-1]), even(1, most[class-1])
		} else {
			kind := class - 6
			if other := r.IntN(10); other < 3 {
				kind = 1 + (kind+other)%4
			}
			switch kind {
			case 1:
				it.Width, it.Height = even(67, 100), even(1, 50)
			case 2:
				it.Width, it.Height = even(1, 50), even(67, 100)
			case 3:
				it.Width, it.Height = even(50, 100), even(50, 100)
			case 4:
				it.Width, it.Height = even(1, 50), even(1, 50)
			}
		}
		p.Items = append(p.Items, it)
	}
	return p
}

// shelves lays items on shelves, next fit by falling height, shelf on shelf, each
// upright: a plain method to be no worse than. Coffman, Garey, Johnson and Tarjan
// (1980).
func shelves(p pack.Problem) int {
	by := append([]pack.Item(nil), p.Items...)
	sort.SliceStable(by, func(a, b int) bool { return by[a].Height > by[b].Height })
	w, h := p.Stock[0].Width, p.Stock[0].Height
	bins, x, y, shelf := 1, geometry.Length(0), geometry.Length(0), by[0].Height
	for _, it := range by {
		if x+it.Width > w {
			x, y, shelf = 0, y+shelf, it.Height
		}
		if y+it.Height > h {
			bins, x, y, shelf = bins+1, 0, 0, it.Height
		}
		x += it.Width
	}
	return bins
}

func TestLikePublishedClasses(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for class := 1; class <= 10; class++ {
		for _, free := range modes {
			p := likeClass(class, 40, r)
			p.Free = free
			l := solved(t, p, pack.Effort{Iterations: 1500})
			area := 0.0
			for _, it := range p.Items {
				area += float64(it.Width) * float64(it.Height)
			}
			s := p.Stock[0]
			require.GreaterOrEqual(t, l.Bound, math.Ceil(area/float64(s.Width)/float64(s.Height)))
			assert.LessOrEqual(t, len(l.Sheets), shelves(p), "class %d", class)
		}
	}
}
