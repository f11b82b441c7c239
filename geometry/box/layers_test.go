package box

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/geometry"
	"forel/geometry/foldup"
	"forel/geometry/plan/plantest"
)

// The layers of the design's table, counted where a finger would be put: on the walls and
// the rim one, inside two within an end flap of the open end and within a lap of a corner
// at the fore-edge; on the floor cloth and lining on the border, the lining alone in the
// middle, and the hinge between at the open end.
func TestLayers(t *testing.T) {
	j := usualJob()
	r := prove(j.pieces(), j)
	for _, tr := range []foldedTray{r.closed.small, r.closed.large} {
		layers := func(face geometry.Face, x, y Length) int {
			return len(foldup.Within(tr.On(face), geometry.Bx(x-0.01, y-0.01, x+0.01, y+0.01)))
		}
		f := tr.f
		b, l, d := tr.b, tr.l, tr.d
		for _, e := range f.ends {
			assert.Equal(t, 1, layers(e.out, 50, d/2), e.out)
		}
		assert.Equal(t, 1, layers(f.fore, 50, d/2))
		assert.Equal(t, 1, layers(f.foreRim, tr.wide-1, tr.long/2), "rim")
		assert.Equal(t, 2, layers(f.ends[0].in, 5, d/2), "inside, near the open end")
		assert.Equal(t, 1, layers(f.ends[0].in, 15, d/2), "inside, past the end flap of 10")
		assert.Equal(t, 1, layers(f.ends[0].in, b-2, d/2))
		assert.Equal(t, 2, layers(f.foreIn, 2, d/2), "in a corner, within the lap of 4")
		assert.Equal(t, 1, layers(f.foreIn, 6, d/2))
		assert.Equal(t, 1, layers(f.floor, b/2, l/2), "floor, middle: the lining")
		assert.Equal(t, 2, layers(f.floor, b/2, 8), "floor, border: cloth and lining")
		assert.Equal(t, 2, layers(f.floor, 10, l/2), "floor, open end: hinge and lining")
		assert.Equal(t, 3, layers(f.floor, 10, 8), "and in the corner cloth, hinge and lining")
		assert.Equal(t, 1, layers(f.under, 8, tr.long/2), "under the base, the border")
		assert.Equal(t, 0, layers(f.under, tr.wide/2, tr.long/2), "under the base, glued to the case")
		assert.Equal(t, 1, layers(f.edge, tr.long/2, tr.t/2), "edge of the base: the hinge")
		assert.Equal(t, 2, layers(f.edge, tr.t+8, tr.t/2), "and on a tab")
	}
}

// A tray that is seen whole has a row of the handout to itself: beside another it would be too
// small to see what is turned where. Parts drawn larger (in a frame) may stand side by side.
func TestWholeTraysAreDrawnLarge(t *testing.T) {
	j := usualJob()
	made, err := plantest.Plan(&j)
	require.NoError(t, err)
	for _, s := range made.Steps {
		if !strings.HasPrefix(s.Title, "Cover") && !strings.HasPrefix(s.Title, "Turn") && !strings.HasPrefix(s.Title, "Glue the") {
			continue
		}
		for _, row := range s.Pictures {
			for _, p := range row {
				assert.True(t, len(row) == 1 || p.Focus != nil, s.Title)
			}
		}
	}
}
