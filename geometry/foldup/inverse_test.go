package foldup_test

import (
	"maps"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/geometry/foldup"
	"forel/geometry/slipcase"
)

// How a covering goes round a box can be said backward: each place on the case
// has a place on the flat piece that comes to lie there, or several. unfolding_test.go
// says it so, in the symbols of the design; what is counted there must be what
// the proof reports, piece by piece, at any place of any face.
func TestLayersAreThoseThatUnfoldingGives(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := everyJob().Draw(t, "job")
		j.Cloth.Stretch, j.SidePaper.Stretch = 0, 0 // cut as it lies on the case
		c, err := mended(j)
		require.NoError(t, err)
		u := unfold(c)
		places := rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "places"), 0))
		for _, f := range ofCarcass(c) {
			for range 20 {
				compareLayers(t, u, f, [2]float64{
					f.Extent.Min.X.MM() + f.Extent.Width().MM()*places.Float64(),
					f.Extent.Min.Y.MM() + f.Extent.Height().MM()*places.Float64(),
				})
			}
			for corner := range 16 { // near them it is crowded
				compareLayers(t, u, f, [2]float64{
					fromEnd(f.Extent.Min.X, f.Extent.Max.X, corner&1 == 1, 6*places.Float64()),
					fromEnd(f.Extent.Min.Y, f.Extent.Max.Y, corner&2 == 2, 6*places.Float64()),
				})
			}
		}
	})
}

// fromEnd gives a place some way in from the low or the high end of a stretch,
// at most to its other end.
func fromEnd(lo, hi slipcase.Length, high bool, in float64) float64 {
	if in = min(in, (hi - lo).MM()); high {
		return hi.MM() - in
	}
	return lo.MM() + in
}

// compareLayers compares at a place and just beside it; where it matters which,
// on an edge, either may be right.
func compareLayers(t *rapid.T, u unfolded, f foldup.FaceReport, at [2]float64) {
	if strings.HasPrefix(string(f.Face), "mouth edge") && u.inHole(f, at) {
		return // no board is there; the webs at the corners of the hole are pinched over it
	}
	const beside = 0.02 // arcs are chords, up to 0.01 off the arc
	want, got := u.layers(f.Face, at), reported(f, at)
	for _, d := range [][2]float64{{beside, 0}, {-beside, 0}, {0, beside}, {0, -beside}} {
		near := [2]float64{at[0] + d[0], at[1] + d[1]}
		if !maps.Equal(want, u.layers(f.Face, near)) || !maps.Equal(got, reported(f, near)) {
			return
		}
	}
	require.Equal(t, want, got, "%s at %v: %+v", f.Face, at, u.job)
}

// reported counts the layers of each piece that a proof reports at a place.
func reported(f foldup.FaceReport, at [2]float64) map[string]int {
	n := map[string]int{}
	for _, l := range f.Layers {
		if inRing(at[0], at[1], l.Shape[0].Rings[0]) {
			n[l.Piece]++
		}
	}
	return n
}

// inRing tells whether a place lies in a ring of points by the angle that the
// ring winds round it.
func inRing(x, y float64, ring []geometry.Point) bool {
	angle := 0.0
	for i, a := range ring {
		b := ring[(i+1)%len(ring)]
		ax, ay, bx, by := a.X.MM()-x, a.Y.MM()-y, b.X.MM()-x, b.Y.MM()-y
		angle += math.Atan2(ax*by-ay*bx, ax*bx+ay*by)
	}
	return math.Abs(angle) > math.Pi
}
