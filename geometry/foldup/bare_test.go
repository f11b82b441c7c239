package foldup_test

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry/foldup"
	"forel/geometry/slipcase"
)

// Invariant 2 without any algebra of polygons: wherever one puts a finger on
// the outside or on an edge of the mouth, some place of some flat piece comes to
// lie there. A gap may be as broad as the covering beside it is thick, on
// average; so twice as broad at its broad end.
func TestNoBareBoardAnywhere(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := everyJob().Draw(t, "job")
		j.Cloth.Stretch, j.SidePaper.Stretch = 0, 0 // cut as it lies on the case
		if j.Covering == slipcase.SidesOnly {
			j.Covering = slipcase.ClothAndPaper
		}
		c, err := mended(j)
		require.NoError(t, err)
		u := unfold(c)
		places := rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "places"), 0))
		for _, f := range ofCarcass(c) {
			if f.Inside {
				continue
			}
			for n := range 40 {
				at := [2]float64{
					f.Extent.Min.X.MM() + f.Extent.Width().MM()*places.Float64(),
					f.Extent.Min.Y.MM() + f.Extent.Height().MM()*places.Float64(),
				}
				if n%2 == 1 { // near a corner, where coverings meet
					at[0] = fromEnd(f.Extent.Min.X, f.Extent.Max.X, n&2 == 2, 8*places.Float64())
					at[1] = fromEnd(f.Extent.Min.Y, f.Extent.Max.Y, n&4 == 4, 8*places.Float64())
				}
				require.True(t, u.inHole(f, at) || u.coveredNear(f, at), "%s is bare at %v: %+v", f.Face, at, c.Job)
			}
		}
	})
}

// inHole tells whether the thumb hole has taken the board at a place.
func (u unfolded) inHole(f foldup.FaceReport, at [2]float64) bool {
	switch {
	case strings.HasPrefix(string(f.Face), "mouth edge"): // alike on both sides, as deep as the board
		return strings.HasSuffix(string(f.Face), "side") && u.turnedRoundHole(0, at[1]-u.h/2)
	case strings.HasSuffix(string(f.Face), "side"):
		return u.turnedRoundHole(u.d-at[0], at[1]-u.h/2)
	}
	return false
}

// coveredNear tells whether something lies at a place, or so near that its
// thickness closes the gap.
func (u unfolded) coveredNear(f foldup.FaceReport, at [2]float64) bool {
	if len(u.layers(f.Face, at)) > 0 {
		return true
	}
	thick := 0.0
	for _, l := range f.Layers {
		k := u.job.Cloth.Thickness
		if l.Piece == "side paper" || u.job.Covering == slipcase.AllPaper {
			k = u.job.SidePaper.Thickness
		}
		thick = max(thick, k.MM())
	}
	for way := range 16 {
		sin, cos := math.Sincos(float64(way) * math.Pi / 8)
		for _, far := range []float64{0.1, 0.5, 1, 1.5, 2} {
			if len(u.layers(f.Face, [2]float64{at[0] + cos*far*thick, at[1] + sin*far*thick})) > 0 {
				return true
			}
		}
	}
	return false
}
