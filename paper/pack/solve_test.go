package pack_test

import (
	"context"
	"errors"
	"fmt"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/geometry"
	"forel/paper/pack"
	"forel/paper/pack/packtest"
)

// solved lays out and has the layout checked.
func solved(t *testing.T, p pack.Problem, e pack.Effort) *pack.Layout {
	t.Helper()
	l, err := pack.Solve(context.Background(), p, e)
	require.NoError(t, err)
	require.NoError(t, packtest.Verify(l, p.Items, p.Stock))
	return l
}

func equal(n int, w, h geometry.Length) (items []pack.Item) {
	for i := range n {
		items = append(items, pack.Item{ID: fmt.Sprint("piece ", i+1), Width: w, Height: h})
	}
	return items
}

var modes = []pack.Mode{pack.Guillotine, pack.Free}

// Three pieces of 33 with two gaps of 0.5 fill 100 exactly; a micrometre less
// takes another sheet. So do eight pieces of 1/8 in with gaps of 1/64 in.
func TestExactFits(t *testing.T) {
	in := geometry.Inch
	for _, mode := range modes {
		p := pack.Problem{Mode: mode, Gap: 0.5, Items: equal(9, 33, 33), Stock: []pack.Stock{{Width: 100, Height: 100}}}
		assert.Len(t, solved(t, p, pack.Effort{}).Sheets, 1)
		p.Stock[0].Width = 99.999
		assert.Len(t, solved(t, p, pack.Effort{Iterations: 500}).Sheets, 2)
		p = pack.Problem{Mode: mode, Gap: in / 64, Items: equal(8, in/8, in), Stock: []pack.Stock{{Width: in + 7*in/64, Height: in}}}
		assert.Len(t, solved(t, p, pack.Effort{}).Sheets, 1)
	}
}

func TestPieceLargerThanEverySheet(t *testing.T) {
	p := pack.Problem{
		Items: []pack.Item{{ID: "side", Width: 90, Height: 110}, {ID: "wall", Width: 10, Height: 130, Turn: true}, {ID: "small", Width: 5, Height: 5}},
		Stock: []pack.Stock{{Name: "half board", Width: 120, Height: 100}, {Name: "offcut", Width: 80, Height: 125}},
	}
	_, err := pack.Solve(context.Background(), p, pack.Effort{})
	var wrong *pack.InputError
	require.ErrorAs(t, err, &wrong)
	require.Len(t, wrong.Faults, 2)
	for i, id := range []string{"side (90 x 110 mm)", "wall (10 x 130 mm)"} {
		assert.Contains(t, wrong.Faults[i], id)
		assert.Contains(t, wrong.Faults[i], "half board (120 x 100 mm), offcut (80 x 125 mm)")
	}
	p.Items[0].Turn, p.Items[1].Height = true, 125
	solved(t, p, pack.Effort{})
}

func TestStockRunsOut(t *testing.T) {
	for _, mode := range modes {
		p := pack.Problem{Mode: mode, Items: equal(11, 50, 50), Stock: []pack.Stock{{Width: 100, Height: 100, Count: 2}}}
		l, err := pack.Solve(context.Background(), p, pack.Effort{Iterations: 300})
		var short *pack.ShortError
		require.ErrorAs(t, err, &short)
		assert.Len(t, short.Left, 3)
		assert.Contains(t, err.Error(), "3 of 11 pieces left")
		assert.NoError(t, packtest.VerifySome(l, p.Items, p.Stock, rest(p, short.Left)))
	}
}

func TestFaultsOfInput(t *testing.T) {
	nan := geometry.Length(0)
	nan /= nan
	sheet := []pack.Stock{{Width: 100, Height: 100}}
	for says, p := range map[string]pack.Problem{
		"no stock":          {Items: equal(1, 5, 5)},
		"a gap of -1":       {Gap: -1, Stock: sheet},
		"a gap of NaN":      {Gap: nan, Stock: sheet},
		"sides must be":     {Items: equal(1, 0, 5), Stock: sheet},
		"too small":         {Items: equal(1, 1e-9, 5), Stock: sheet},
		"leaves nothing":    {Stock: []pack.Stock{{Width: 10, Height: 10, Trim: pack.Trim{Left: 5, Right: 5}}}},
		"trim is under 0":   {Stock: []pack.Stock{{Width: 10, Height: 10, Trim: pack.Trim{Top: -1}}}},
		"count under 0":     {Stock: []pack.Stock{{Width: 10, Height: 10, Count: -1}}},
		"cost under 0":      {Stock: []pack.Stock{{Width: 10, Height: 10, Cost: -1}}},
		"mode 7":            {Mode: 7, Stock: sheet},
		"can't be mixed":    {Stock: []pack.Stock{{Width: 10, Roll: true}, {Width: 10, Height: 10}}},
		"no side in common": {Stock: sheet, Items: []pack.Item{{ID: "a", Width: 5, Height: 6, Strip: "s"}, {ID: "b", Width: 7, Height: 8, Strip: "s"}}},
	} {
		_, err := pack.Solve(context.Background(), p, pack.Effort{})
		var wrong *pack.InputError
		if assert.ErrorAs(t, err, &wrong, says) {
			assert.Len(t, wrong.Faults, 1, says)
			assert.Contains(t, err.Error(), says)
		}
	}
}

// Where a small sheet does, it is taken instead of a large one, and of two that do
// the cheaper.
func TestCheaperStock(t *testing.T) {
	for _, mode := range modes {
		p := pack.Problem{Mode: mode, Items: equal(5, 50, 50), Stock: []pack.Stock{{Width: 100, Height: 100}, {Width: 50, Height: 50}}}
		l := solved(t, p, pack.Effort{Iterations: 2000})
		assert.InDelta(t, 0.0125, l.Value, 1e-9) // square metres: one large and one small, or five small
		assert.True(t, l.Optimal)
		p.Stock[0].Cost, p.Stock[1].Cost = 1, 0.3
		l = solved(t, p, pack.Effort{Iterations: 2000})
		assert.InDelta(t, 1.3, l.Value, 1e-9)
	}
}

// Ten pieces of 30 by 20 on a roll 60 wide: 100 long, and trim beside that.
func TestRoll(t *testing.T) {
	for _, mode := range modes {
		p := pack.Problem{Mode: mode, Items: equal(10, 30, 20), Stock: []pack.Stock{{Width: 62, Roll: true, Trim: pack.Trim{Left: 1, Right: 1, Top: 3, Bottom: 4}}}}
		l := solved(t, p, pack.Effort{Iterations: 5000})
		assert.InDelta(t, 107, l.Value, 1e-9)
		assert.True(t, l.Optimal)
		require.Len(t, l.Sheets, 1)
	}
}

// The walls of a case come off one strip though they would fit elsewhere.
func TestStripStaysTogether(t *testing.T) {
	items := []pack.Item{
		{ID: "spine wall", Width: 34, Height: 231, Strip: "walls"},
		{ID: "head wall", Width: 150, Height: 34, Turn: true, Strip: "walls"},
		{ID: "tail wall", Width: 150, Height: 34, Turn: true, Strip: "walls"},
		{ID: "side", Width: 153, Height: 231}, {ID: "side", Width: 153, Height: 231},
	}
	p := pack.Problem{Items: items, Stock: []pack.Stock{{Width: 400, Height: 600}}}
	l := solved(t, p, pack.Effort{Iterations: 2000})
	x := l.Sheets[0].Places[0].X
	n := 0
	for _, pl := range l.Sheets[0].Places {
		if items[pl.Item].Strip != "" {
			if n++; n == 1 {
				x = pl.X
			}
			assert.Equal(t, x, pl.X, "one below the other")
			assert.InDelta(t, 34, pl.Width.MM(), 1e-9)
		}
	}
	assert.Equal(t, 3, n)
}

// A context that has ended still gets the first layout; one that ends on the
// way stops the search.
func TestContext(t *testing.T) {
	ctx, stop := context.WithCancel(context.Background())
	p := pack.Problem{Items: cases(20), Stock: []pack.Stock{{Width: 1020, Height: 720}}}
	calls := 0
	l, err := pack.Solve(ctx, p, pack.Effort{Time: time.Hour, Progress: func(done float64) {
		assert.LessOrEqual(t, done, 1.0)
		calls++
		stop()
	}})
	require.NoError(t, err)
	require.NoError(t, packtest.Verify(l, p.Items, p.Stock))
	assert.GreaterOrEqual(t, calls, 2)
	assert.True(t, errors.Is(ctx.Err(), context.Canceled))
}
