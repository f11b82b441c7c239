package pack_test

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/paper/pack"
	"forel/paper/pack/packtest"
)

// side draws a length: often whole millimetres, so that pieces meet exactly, or
// in 64ths of an inch, or any.
func side(t *rapid.T, name string, least, most float64) geometry.Length {
	switch rapid.IntRange(0, 3).Draw(t, name+" in") {
	case 0:
		n := rapid.IntRange(int(least/25.4*64)+1, int(most/25.4*64)).Draw(t, name)
		return geometry.Length(n) * geometry.Inch / 64
	case 1:
		return geometry.Length(rapid.Float64Range(least, most).Draw(t, name))
	}
	return geometry.Length(rapid.IntRange(int(least), int(most)).Draw(t, name))
}

func problem(t *rapid.T) pack.Problem {
	p := pack.Problem{Free: rapid.Bool().Draw(t, "free")}
	if rapid.Bool().Draw(t, "with a gap") {
		p.Gap = side(t, "gap", 1, 6)
	}
	kinds := rapid.IntRange(1, 3).Draw(t, "kinds")
	roll := rapid.IntRange(0, 3).Draw(t, "a roll") == 0
	if roll {
		kinds, p.Free = 1, false
	}
	for range kinds {
		s := pack.Stock{
			Width: side(t, "width", 250, 900), Height: side(t, "height", 250, 900),
		}
		if roll {
			s.Roll = true
			if rapid.Bool().Draw(t, "endless") {
				s.Height = 0
			}
		}
		if rapid.IntRange(0, 2).Draw(t, "counted") == 0 {
			s.Count = rapid.IntRange(1, 4).Draw(t, "count")
		}
		if rapid.Bool().Draw(t, "priced") {
			s.Cost = rapid.Float64Range(0.1, 9).Draw(t, "cost")
		}
		p.Stock = append(p.Stock, s)
	}
	n := rapid.IntRange(0, 25).Draw(t, "items")
	for range n {
		it := pack.Item{Width: side(t, "w", 3, 260), Height: side(t, "h", 3, 260), Turn: rapid.Bool().Draw(t, "turn")}
		if len(p.Items) > 0 && rapid.IntRange(0, 2).Draw(t, "again") == 0 {
			it.Width, it.Height = p.Items[0].Width, p.Items[0].Height
		}
		p.Items = append(p.Items, it)
	}
	return p
}

// Whatever the problem, a layout is sound, and nothing is left where a sheet takes it and there
// are as many as are needed.
func TestLayoutsAreSound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := problem(t)
		e := pack.Effort{Iterations: rapid.IntRange(0, 1500).Draw(t, "iterations"), Seed: rapid.Uint64().Draw(t, "seed")}
		l := pack.Solve(context.Background(), p, e)
		require.NoError(t, packtest.Verify(l, p))
		require.LessOrEqual(t, l.Bound, l.Value*(1+1e-9))
		if p.Stock[0].Roll {
			var used geometry.Length
			for _, s := range l.Sheets {
				used += s.Cuts.Height
			}
			require.LessOrEqual(t, used.MM(), l.Value+1e-6)
		}
		for _, i := range l.Left {
			it := p.Items[i]
			for _, s := range p.Stock {
				fits := func(w, h geometry.Length) bool { return w < s.Width && (h < s.Height || s.Roll && s.Height == 0) }
				require.False(t, s.Count == 0 && (!s.Roll || s.Height == 0) && (fits(it.Width, it.Height) || it.Turn && fits(it.Height, it.Width)), "item %d is left though a sheet takes it", i)
			}
		}
		require.Equal(t, l, pack.Solve(context.Background(), p, e), "the same problem, seed and iterations give the same layout")
	})
}

func TestNothingToLay(t *testing.T) {
	l := pack.Solve(context.Background(), pack.Problem{Stock: []pack.Stock{{Width: 100, Height: 100}}}, pack.Effort{Iterations: 100})
	assert.Empty(t, l.Sheets)
	assert.Zero(t, l.Value)
	assert.True(t, l.Optimal)
}
