package pack_test

import (
	"context"
	"errors"
	"fmt"
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
	p := pack.Problem{Mode: pack.Mode(rapid.IntRange(0, 1).Draw(t, "mode"))}
	if rapid.Bool().Draw(t, "with a gap") {
		p.Gap = side(t, "gap", 1, 6)
	}
	trim := func(name string) geometry.Length {
		if rapid.Bool().Draw(t, name) {
			return 0
		}
		return side(t, name, 1, 12)
	}
	kinds := rapid.IntRange(1, 3).Draw(t, "kinds")
	roll := rapid.IntRange(0, 3).Draw(t, "a roll") == 0
	if roll {
		kinds = 1
	}
	for i := range kinds {
		s := pack.Stock{
			Name: fmt.Sprint("kind ", i), Width: side(t, "width", 250, 900), Height: side(t, "height", 250, 900),
			Trim: pack.Trim{Left: trim("left"), Right: trim("right"), Top: trim("top"), Bottom: trim("bottom")},
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
	for i := range n {
		it := pack.Item{ID: fmt.Sprint("piece ", i), Width: side(t, "w", 3, 260), Height: side(t, "h", 3, 260), Turn: rapid.Bool().Draw(t, "turn")}
		if len(p.Items) > 0 && rapid.IntRange(0, 2).Draw(t, "again") == 0 {
			it.Width, it.Height = p.Items[0].Width, p.Items[0].Height
		}
		p.Items = append(p.Items, it)
	}
	if rapid.Bool().Draw(t, "with strips") {
		for key := range rapid.IntRange(1, 2).Draw(t, "strips") {
			breadth := side(t, "breadth", 10, 200)
			along := rapid.IntRange(0, 2).Draw(t, "strip way")
			for j := range rapid.IntRange(1, 8).Draw(t, "strip pieces") {
				it := pack.Item{ID: fmt.Sprint("strip ", key, " piece ", j), Width: side(t, "long", 5, 240), Height: breadth, Strip: fmt.Sprint("s", key), Turn: along == 2}
				if along == 1 || along == 2 && rapid.Bool().Draw(t, "stands") {
					it.Width, it.Height = it.Height, it.Width
				}
				p.Items = append(p.Items, it)
			}
		}
	}
	return p
}

// rest gives the indices of the items that are not left.
func rest(p pack.Problem, left []int) []int {
	out := map[int]bool{}
	for _, i := range left {
		out[i] = true
	}
	var some []int
	for i := range p.Items {
		if !out[i] {
			some = append(some, i)
		}
	}
	return some
}

// Whatever the problem, a layout is sound, or the fault is told.
func TestLayoutsAreSound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := problem(t)
		e := pack.Effort{Iterations: rapid.IntRange(0, 1500).Draw(t, "iterations"), Seed: rapid.Uint64().Draw(t, "seed")}
		l, err := pack.Solve(context.Background(), p, e)
		var wrong *pack.InputError
		if errors.As(err, &wrong) {
			for _, f := range wrong.Faults {
				require.Contains(t, f, "piece") // the random problems have faults of pieces only
			}
			return
		}
		all := rest(p, nil)
		var short *pack.ShortError
		if errors.As(err, &short) {
			require.NotEmpty(t, short.Left)
			require.Contains(t, err.Error(), fmt.Sprintf("%d of %d", len(short.Left), len(p.Items)))
			all = rest(p, short.Left)
		} else {
			require.NoError(t, err)
		}
		require.NoError(t, packtest.VerifySome(l, p.Items, p.Stock, all))
		require.LessOrEqual(t, l.Bound, l.Value*(1+1e-9))

		again, _ := pack.Solve(context.Background(), p, e)
		require.Equal(t, l, again, "the same problem, seed and iterations give the same layout")
	})
}

func TestNothingToLay(t *testing.T) {
	l, err := pack.Solve(context.Background(), pack.Problem{Stock: []pack.Stock{{Width: 100, Height: 100}}}, pack.Effort{Iterations: 100})
	require.NoError(t, err)
	assert.Empty(t, l.Sheets)
	assert.Zero(t, l.Value)
	assert.True(t, l.Optimal)
}
