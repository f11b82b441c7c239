package pack_test

import (
	"context"
	"fmt"
	"math/rand/v2"
	"testing"

	"forel/geometry"
	"forel/paper/pack"
)

// cases gives the boards of so many invented cases: two sides, a spine wall, a head
// and a tail wall each, all of whole millimetres.
func cases(n int) (items []pack.Item) {
	r := rand.New(rand.NewPCG(1, 2))
	for i := range n {
		h, w, t := geometry.Length(150+r.IntN(180)), geometry.Length(110+r.IntN(130)), geometry.Length(15+r.IntN(60))
		for _, p := range []geometry.Point{{X: w, Y: h}, {X: w, Y: h}, {X: t, Y: h}, {X: w - 3, Y: t}, {X: w - 3, Y: t}} {
			items = append(items, pack.Item{Width: p.X, Height: p.Y, Turn: i%2 == 0})
		}
	}
	return items
}

func BenchmarkFirst(b *testing.B) {
	for _, n := range []int{15, 150, 1500, 15000} {
		for _, kind := range []string{"guillotine", "free", "roll"} {
			b.Run(fmt.Sprintf("%s/%d", kind, n), func(b *testing.B) {
				p := pack.Problem{Items: cases(n / 5), Gap: 2, Stock: []pack.Stock{{Width: 1010, Height: 710}}}
				switch kind {
				case "free":
					p.Free = true
				case "roll":
					p.Stock[0].Roll, p.Stock[0].Height = true, 0
				}
				for b.Loop() {
					l := pack.Solve(context.Background(), p, pack.Effort{})
					b.ReportMetric(l.Value/l.Bound, "value/bound")
				}
			})
		}
	}
}
