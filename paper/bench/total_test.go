package bench_test

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/paper/bench"
	"forel/paper/money"
	"forel/paper/stock"
)

// What is bought for lots one after the other is what is bought for each, added up; no
// piece is lost.
func TestTotalAddsUp(t *testing.T) {
	books := class(12)
	price := money.Of(7).Div(money.Of(2))
	books[0].Stock = []stock.Stock{{Material: geometry.Board, Width: 600, Height: 900, Grain: geometry.GrainHeight, Price: &price}}
	rapid.Check(t, func(t *rapid.T) {
		var plans []bench.Plan
		jobs, pieces, sheets, bought, cost := 0, 0, 0, 0.0, money.Amount{}
		for range rapid.IntRange(1, 3).Draw(t, "lots") {
			from := rapid.IntRange(0, 9).Draw(t, "first book")
			p, err := bench.Lay(context.Background(), books[from:from+3], bench.Options{})
			require.NoError(t, err)
			plans = append(plans, p.Slim())
			jobs += len(p.Jobs)
			for _, g := range p.Groups {
				area, _, _ := g.Areas()
				bought += area
				for _, u := range g.Used {
					sheets += u.Sheets
					c, _ := g.Cost(u)
					cost = cost.Add(c)
				}
				for _, s := range g.Sheets {
					pieces += len(s.Pieces)
				}
			}
		}
		all := bench.Total(plans)
		require.Len(t, all.Jobs, jobs)
		for _, g := range all.Groups {
			area, _, _ := g.Areas()
			bought -= area
			for _, u := range g.Used {
				sheets -= u.Sheets
				c, _ := g.Cost(u)
				cost = cost.Sub(c)
			}
			for _, s := range g.Sheets {
				pieces -= len(s.Pieces)
			}
		}
		assert.Zero(t, sheets)
		assert.Zero(t, pieces)
		assert.InDelta(t, 0, bought, 1e-3)
		assert.True(t, cost.IsZero(), "to the last cent")
	})
}
