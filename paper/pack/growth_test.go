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
		add := func(name string, w, h geometry.Length) {
			items = append(items, pack.Item{ID: fmt.Sprintf("case %d, %s", i+1, name), Width: w, Height: h, Turn: i%2 == 0})
		}
		add("side", w, h)
		add("side", w, h)
		add("spine wall", t, h)
		add("head wall", w-3, t)
		add("tail wall", w-3, t)
	}
	return items
}

func BenchmarkFirst(b *testing.B) {
	for _, n := range []int{15, 150, 1500, 15000} {
		for _, kind := range []string{"guillotine", "free", "guillotine roll", "free roll"} {
			b.Run(fmt.Sprintf("%s/%d", kind, n), func(b *testing.B) {
				p := pack.Problem{Items: cases(n / 5), Gap: 2, Stock: []pack.Stock{{Width: 1020, Height: 720, Trim: pack.Trim{Left: 5, Right: 5, Top: 5, Bottom: 5}}}}
				if kind[0] == 'f' {
					p.Mode = pack.Free
				}
				if len(kind) > 10 || kind == "free roll" {
					p.Stock[0].Roll, p.Stock[0].Height = true, 0
				}
				for b.Loop() {
					l, err := pack.Solve(context.Background(), p, pack.Effort{})
					if err != nil {
						b.Fatal(err)
					}
					b.ReportMetric(l.Value/l.Bound, "value/bound")
				}
			})
		}
	}
}
