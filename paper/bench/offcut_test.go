package bench_test

import (
	"context"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/paper/bench"
	"forel/paper/pack"
	"forel/paper/stock"
)

// Offcuts are used before whole sheets wherever a piece finds a place on one by its grain,
// each once, and the walls of a case all come off offcuts or none does. The cuts give just the
// pieces and what is left, and areas add up.
func TestOffcutsFirst(t *testing.T) {
	pool := class(30)
	rapid.Check(t, func(t *rapid.T) {
		j := rapid.SampledFrom(pool).Draw(t, "job")
		grains := []geometry.Grain{geometry.GrainHeight, geometry.GrainWidth, stock.NoGrain}
		for n := range rapid.IntRange(1, 6).Draw(t, "offcuts") {
			j.Stock = append(j.Stock, stock.Stock{Material: geometry.Board, Offcut: n + 1, Count: 1, Per: stock.Metre,
				Width: geometry.Length(rapid.IntRange(40, 500).Draw(t, "across")), Height: geometry.Length(rapid.IntRange(100, 700).Draw(t, "along")),
				Grain: rapid.SampledFrom(grains).Draw(t, "grain")})
		}
		if rapid.Bool().Draw(t, "sheets") {
			j.Stock = append(j.Stock, stock.Stock{Material: geometry.Board, Width: 700, Height: 1000, Grain: rapid.SampledFrom(grains[:2]).Draw(t, "sheet grain"), Trim: 5, Per: stock.Metre})
		}
		p, err := bench.Lay(context.Background(), []bench.Job{j}, bench.Options{Effort: pack.Effort{Iterations: 50}})
		require.NoError(t, err)
		g := p.Groups[0]
		simulate(t, g)
		used := map[int]int{}
		walls, onOffcuts := 0, 0
		for _, sh := range g.Sheets {
			of := g.Stock[sh.Stock]
			used[of.Offcut]++
			area := float64(sh.Width * sh.Height)
			for _, q := range sh.Pieces {
				area -= float64(q.Box.Width() * q.Box.Height())
				turned, either := of.Turned(q.Grain)
				require.True(t, either || q.Turned == turned, "the grain of %s", q.Name)
				if q.Name == "spine wall" || q.Name == "head wall" || q.Name == "tail wall" {
					walls++
					if of.Offcut > 0 {
						onOffcuts++
					}
				}
			}
			for _, o := range sh.Offcuts {
				area -= float64(o.Box.Width() * o.Box.Height())
			}
			require.InDelta(t, 0, area, float64(of.Trim)*2*float64(sh.Width+sh.Height)+1, "pieces, offcuts and waste are the sheet")
		}
		require.Contains(t, []int{0, walls}, onOffcuts)
		for n := range len(j.Stock) {
			require.LessOrEqual(t, used[n+1], 1)
		}
		for _, sh := range g.Sheets {
			if g.Stock[sh.Stock].Offcut > 0 {
				continue
			}
			for _, q := range sh.Pieces {
				for _, s := range j.Stock {
					if q.Name == "side" && s.Offcut > 0 && used[s.Offcut] == 0 {
						require.False(t, s.Takes(q.Width, q.Height, q.Grain), "%s finds a place on offcut %d", q.Name, s.Offcut)
					}
				}
			}
		}
	})
}
