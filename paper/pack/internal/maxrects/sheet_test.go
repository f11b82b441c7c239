package maxrects

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// every gives all maximal free rectangles by trying each there is.
func every(s *Sheet) (all []Free) {
	empty := func(x0, y0, x1, y1 int) bool {
		if x0 < 0 || y0 < 0 || x1 > s.W || y1 > s.H {
			return false
		}
		for _, p := range s.Placed {
			if p.X < x1 && p.X+p.W > x0 && p.Y < y1 && p.Y+p.H > y0 {
				return false
			}
		}
		return true
	}
	for x0 := range s.W {
		for y0 := range s.H {
			for x1 := x0 + 1; x1 <= s.W; x1++ {
				for y1 := y0 + 1; y1 <= s.H; y1++ {
					if empty(x0, y0, x1, y1) && !empty(x0-1, y0, x1, y1) && !empty(x0, y0-1, x1, y1) && !empty(x0, y0, x1+1, y1) && !empty(x0, y0, x1, y1+1) {
						all = append(all, free(x0, y0, x1, y1))
					}
				}
			}
		}
	}
	return all
}

func TestFreeRectanglesAreTheMaximalOnes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var s Sheet
		s.Reset(rapid.IntRange(1, 9).Draw(t, "W"), rapid.IntRange(1, 9).Draw(t, "H"))
		for i := range int32(rapid.IntRange(1, 10).Draw(t, "moves")) {
			if n := len(s.FreeRects()); n > 0 && rapid.IntRange(0, 3).Draw(t, "lay") > 0 {
				at := rapid.IntRange(0, n-1).Draw(t, "at")
				f := s.FreeRects()[at]
				w, h := rapid.IntRange(1, int(f.W)).Draw(t, "w"), rapid.IntRange(1, int(f.H)).Draw(t, "h")
				s.Insert(int32(at), i, w, h, int8(rapid.IntRange(0, 3).Draw(t, "corner")))
			} else if n := len(s.Placed); n > 0 {
				s.Remove(rapid.IntRange(0, n-1).Draw(t, "gone"))
				s.Settle()
			}
			require.ElementsMatch(t, every(&s), s.FreeRects())
		}
	})
}
