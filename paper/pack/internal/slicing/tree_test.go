package slicing

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/paper/pack/internal/maxrects"
)

// sound looks whether the parts of each node fill it exactly, no two of them
// free, and the list of Open nodes is right.
func sound(t *rapid.T, tr *Tree) {
	open, area := 0, 0
	var walk func(n int32)
	walk = func(n int32) {
		m := &tr.N[n]
		switch m.Item {
		case Open:
			open++
			require.Equal(t, Free{float64(m.W), float64(m.H), n}, tr.open[m.slot])
		case Inner:
			sum, free := 0, 0
			tr.Parts(n, func(c int32) {
				k := &tr.N[c]
				require.Equal(t, n, k.parent)
				if k.Item == Open {
					free++
				}
				if m.Dir == X {
					require.Equal(t, m.H, k.H)
					sum += k.W
				} else {
					require.Equal(t, m.W, k.W)
					sum += k.H
				}
				walk(c)
			})
			want := m.W
			if m.Dir == Y {
				want = m.H
			}
			require.Equal(t, want, sum)
			require.LessOrEqual(t, free, 1)
		default:
			require.GreaterOrEqual(t, m.Item, int32(0))
			area += m.W * m.H
		}
	}
	walk(0)
	require.Len(t, tr.open, open)
	require.Equal(t, tr.Area, area)
}

func TestTreeStaysSound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var tr Tree
		tr.Reset(rapid.IntRange(1, 30).Draw(t, "W"), rapid.IntRange(1, 30).Draw(t, "H"))
		on := map[int32]bool{}
		for i := range int32(rapid.IntRange(1, 40).Draw(t, "moves")) {
			if free := tr.OpenNodes(); len(free) > 0 && rapid.IntRange(0, 2).Draw(t, "lay") > 0 {
				n := free[rapid.IntRange(0, len(free)-1).Draw(t, "node")].Node
				w, h := rapid.IntRange(1, tr.N[n].W).Draw(t, "w"), rapid.IntRange(1, tr.N[n].H).Draw(t, "h")
				tr.Insert(n, i, w, h, int8(rapid.IntRange(0, 1).Draw(t, "first")))
				at := slices.IndexFunc(tr.N, func(m Node) bool { return m.Item == i })
				require.Equal(t, []int{w, h}, []int{tr.N[at].W, tr.N[at].H})
				on[i] = true
			} else {
				n := int32(rapid.IntRange(0, len(tr.N)-1).Draw(t, "gone"))
				if it := tr.N[n].Item; it == Open || it == Idle {
					continue
				}
				for _, item := range tr.Items(n, nil) {
					delete(on, item)
				}
				tr.Remove(n)
			}
			sound(t, &tr)
			require.Len(t, tr.Items(0, nil), len(on))
		}
		// Another tree with the pieces in the same places.
		rects := tr.Rects(0, 0, 0, nil)
		var other Tree
		require.True(t, other.From(tr.N[0].W, tr.N[0].H, rects))
		sound(t, &other)
		require.ElementsMatch(t, tr.Items(0, nil), other.Items(0, nil))
		// As short as it can be without loss.
		require.Empty(t, other.Shorten(other.Length(0), nil, nil))
		sound(t, &other)
		require.Equal(t, tr.Area, other.Area)
	})
}

func TestPinwheelDoesNotComeApart(t *testing.T) {
	var tr Tree
	require.False(t, tr.From(3, 3, []maxrects.Placed{{Rect: maxrects.Rect{W: 2, H: 1}}, {Rect: maxrects.Rect{X: 2, W: 1, H: 2}, Item: 1}, {Rect: maxrects.Rect{X: 1, Y: 2, W: 2, H: 1}, Item: 2}, {Rect: maxrects.Rect{Y: 1, W: 1, H: 2}, Item: 3}}))
}
