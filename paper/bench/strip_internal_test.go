package bench

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/paper/pack"
)

// Whatever pieces are to come off one strip, each is in one strip once; a strip has the one
// breadth and its pieces lie along it with the kerf between, turned only where they may be;
// a sheet takes it; and two strips would not do as one.
func TestStrips(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		side := func(name string) Length {
			return Length(rapid.IntRange(5, 240).Draw(t, name)) + Length(rapid.IntRange(0, 63).Draw(t, name))/64*25.4
		}
		kerf, breadth, turn := side("kerf")/40, side("breadth"), rapid.Bool().Draw(t, "turn")
		stands := rapid.Bool().Draw(t, "stands")
		var pieces []bundle
		for i := range rapid.IntRange(1, 9).Draw(t, "pieces") {
			p := bundle{Item: pack.Item{Width: side("long"), Height: breadth, Turn: turn}, which: []int{i}, turned: []bool{rapid.Bool().Draw(t, "turned")}}
			if stands || turn && rapid.Bool().Draw(t, "across") {
				p.Width, p.Height = p.Height, p.Width
			}
			pieces = append(pieces, p)
		}
		if rapid.IntRange(0, 5).Draw(t, "odd") == 0 {
			pieces[0].Width, pieces[0].Height = 1, 2
		}
		on := []pack.Stock{{Width: side("w") * 2, Height: side("h") * 2}}
		got := strip(pieces, on, kerf)
		seen := map[int]bool{}
		for _, s := range got {
			a := s.along
			long := -kerf
			for n, i := range s.which {
				require.False(t, seen[i])
				seen[i] = true
				p := pieces[i]
				lies := p.Item
				if s.turned[n] != p.turned[0] {
					require.True(t, p.Turn || p.Width == p.Height)
					lies.Width, lies.Height = lies.Height, lies.Width
				}
				require.True(t, a.other().side(&lies).Near(*a.other().side(&s.Item)), "one breadth")
				long += *a.side(&lies) + kerf
			}
			require.InDelta(t, float64(long), float64(*a.side(&s.Item)), 1e-9)
			if len(s.which) > 1 {
				st := on[0]
				require.True(t, s.Width <= st.Width+hair && s.Height <= st.Height+hair || s.Turn && s.Width <= st.Height+hair && s.Height <= st.Width+hair)
			}
		}
		require.Len(t, seen, len(pieces))
	})
}
