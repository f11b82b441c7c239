package pack_test

import (
	"context"
	"errors"
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
	l := pack.Solve(context.Background(), p, e)
	require.Empty(t, l.Left)
	require.NoError(t, packtest.Verify(l, p))
	return l
}

func equal(n int, w, h geometry.Length) (items []pack.Item) {
	for range n {
		items = append(items, pack.Item{Width: w, Height: h})
	}
	return items
}

var modes = []bool{false, true} // of Problem.Free

// Three pieces of 33 with two gaps of 0.5 fill 100 exactly; a micrometre less
// takes another sheet. So do eight pieces of 1/8 in with gaps of 1/64 in.
func TestExactFits(t *testing.T) {
	in := geometry.Inch
	for _, free := range modes {
		p := pack.Problem{Free: free, Gap: 0.5, Items: equal(9, 33, 33), Stock: []pack.Stock{{Width: 100, Height: 100}}}
		assert.Len(t, solved(t, p, pack.Effort{}).Sheets, 1)
		p.Stock[0].Width = 99.999
		assert.Len(t, solved(t, p, pack.Effort{Iterations: 500}).Sheets, 2)
		p = pack.Problem{Free: free, Gap: in / 64, Items: equal(8, in/8, in), Stock: []pack.Stock{{Width: in + 7*in/64, Height: in}}}
		assert.Len(t, solved(t, p, pack.Effort{}).Sheets, 1)
	}
}

func TestPieceLargerThanEverySheet(t *testing.T) {
	for _, free := range modes {
		p := pack.Problem{
			Free:  free,
			Items: []pack.Item{{Width: 90, Height: 110}, {Width: 10, Height: 130, Turn: true}, {Width: 5, Height: 5}},
			Stock: []pack.Stock{{Width: 120, Height: 100, Cost: 2}, {Width: 80, Height: 125, Cost: 1}},
		}
		for _, e := range []pack.Effort{{}, {Iterations: 100}} {
			l := pack.Solve(context.Background(), p, e)
			assert.Equal(t, []int{0, 1}, l.Left)
			require.NoError(t, packtest.Verify(l, p))
			none := p
			none.Items = p.Items[:2]
			assert.Equal(t, []int{0, 1}, pack.Solve(context.Background(), none, e).Left)
		}
		p.Items[0].Turn, p.Items[1].Height = true, 125
		solved(t, p, pack.Effort{})
	}
}

func TestStockRunsOut(t *testing.T) {
	for _, free := range modes {
		p := pack.Problem{Free: free, Items: equal(11, 50, 50), Stock: []pack.Stock{{Width: 100, Height: 100, Count: 2}}}
		l := pack.Solve(context.Background(), p, pack.Effort{Iterations: 300})
		assert.Len(t, l.Left, 3)
		assert.NoError(t, packtest.Verify(l, p))
	}
}

// Where a small sheet does, it is taken instead of a large one, and of two that do
// the cheaper.
func TestCheaperStock(t *testing.T) {
	for _, free := range modes {
		p := pack.Problem{Free: free, Items: equal(5, 50, 50), Stock: []pack.Stock{{Width: 100, Height: 100, Cost: 0.01}, {Width: 50, Height: 50, Cost: 0.0025}}}
		l := solved(t, p, pack.Effort{Iterations: 2000})
		assert.InDelta(t, 0.0125, l.Value, 1e-9) // square metres: one large and one small, or five small
		assert.True(t, l.Optimal)
		p.Stock[0].Cost, p.Stock[1].Cost = 1, 0.3
		l = solved(t, p, pack.Effort{Iterations: 2000})
		assert.InDelta(t, 1.3, l.Value, 1e-9)
	}
}

// Ten pieces of 30 by 20 on a roll 60 wide: 100 long.
func TestRoll(t *testing.T) {
	p := pack.Problem{Items: equal(10, 30, 20), Stock: []pack.Stock{{Width: 60, Roll: true}}}
	l := solved(t, p, pack.Effort{Iterations: 5000})
	assert.InDelta(t, 100, l.Value, 1e-9)
	assert.True(t, l.Optimal)
	require.Len(t, l.Sheets, 1)
}

// A context that has ended still gets the first layout; one that ends on the
// way stops the search.
func TestContext(t *testing.T) {
	ctx, stop := context.WithCancel(context.Background())
	p := pack.Problem{Items: cases(20), Stock: []pack.Stock{{Width: 1020, Height: 720}}}
	calls := 0
	l := pack.Solve(ctx, p, pack.Effort{Time: time.Hour, Progress: func(done float64) {
		assert.LessOrEqual(t, done, 1.0)
		calls++
		stop()
	}})
	require.NoError(t, packtest.Verify(l, p))
	assert.GreaterOrEqual(t, calls, 2)
	assert.True(t, errors.Is(ctx.Err(), context.Canceled))
}
