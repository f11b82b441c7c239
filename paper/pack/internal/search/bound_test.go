package search

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// What makes a function dual feasible: sides that add up to no more than the
// sheet's still do once they are changed.
func TestDualsKeepSums(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := rapid.IntRange(2, 120).Draw(t, "sheet")
		var sides []int
		for left := c; left > 0; {
			x := rapid.IntRange(1, left).Draw(t, "side")
			sides = append(sides, x)
			left -= x
		}
		for _, f := range duals(sides, c, 200) {
			sum := 0.0
			for _, x := range sides {
				sum += f.at(x, c)
			}
			require.LessOrEqual(t, sum, 1+1e-9, "%+v", f)
		}
	})
}

// cutUp cuts sheets at random until nothing is left over: so many do.
func cutUp(t *rapid.T, sheets, w, h int) (items []Item) {
	var cut func(w, h, depth int)
	cut = func(w, h, depth int) {
		way := rapid.IntRange(0, 3).Draw(t, "way")
		switch {
		case depth > 0 && way == 0 && w > 1:
			x := rapid.IntRange(1, w-1).Draw(t, "x")
			cut(x, h, depth-1)
			cut(w-x, h, depth-1)
		case depth > 0 && way == 1 && h > 1:
			y := rapid.IntRange(1, h-1).Draw(t, "y")
			cut(w, y, depth-1)
			cut(w, h-y, depth-1)
		default:
			it := Item{W: w, H: h, Turn: rapid.Bool().Draw(t, "turn")}
			if it.Turn && rapid.Bool().Draw(t, "turned") {
				it.W, it.H = it.H, it.W
			}
			items = append(items, it)
		}
	}
	for range sheets {
		cut(w, h, 4)
	}
	return items
}

// No bound is over a number of sheets, or a length, that is known to do.
func TestBoundsHold(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 4).Draw(t, "sheets")
		k := Kind{W: rapid.IntRange(2, 40).Draw(t, "w"), H: rapid.IntRange(2, 40).Draw(t, "h"), Cost: 1}
		items := cutUp(t, n, k.W, k.H)
		p := &Problem{Items: items, Kinds: []Kind{k}}
		require.LessOrEqual(t, p.Bound(1e9), float64(n))
		roll := k
		roll.Roll, roll.H = true, n*k.H
		p = &Problem{Items: items, Kinds: []Kind{roll}, Step: 1}
		require.LessOrEqual(t, p.Bound(1e9), float64(n*k.H))
		other := Kind{W: k.W + 3, H: k.H + 3, Cost: 2}
		p = &Problem{Items: items, Kinds: []Kind{k, other}}
		require.LessOrEqual(t, p.Bound(1e9), float64(n)*(1+1e-9))
	})
}

// The bounds better than area: pieces over half the sheet in both directions
// need a sheet each.
func TestLargePiecesNeedASheetEach(t *testing.T) {
	p := &Problem{Kinds: []Kind{{W: 100, H: 100, Cost: 1}}}
	for range 7 {
		p.Items = append(p.Items, Item{W: 51, H: 51, Turn: true})
	}
	require.Equal(t, 7.0, p.Bound(1e9))
}
