package slipcase_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/geometry/slipcase"
)

// stretched draws a case without stretch and the same with it.
func stretched(t *rapid.T) (lies, cut slipcase.Case) {
	lies = casesWith(func(t *rapid.T, j *slipcase.Job) {
		j.Covering = rapid.SampledFrom([]string{slipcase.ClothAndPaper, slipcase.AllCloth, slipcase.AllPaper, slipcase.SidesOnly}).Draw(t, "covering")
		j.ThumbHole.Shape = rapid.SampledFrom([]string{slipcase.NoHole, slipcase.Triangle, slipcase.Semicircle}).Draw(t, "hole")
		if rapid.Bool().Draw(t, "divided") {
			j.Books, j.Compartments = append(j.Books, j.Books[0]), slipcase.EachItsOwn
		}
	}).Draw(t, "case")
	j := lies.Job
	j.Cloth.Stretch = rapid.Float64Range(0, 5).Draw(t, "cloth grows")
	j.SidePaper.Stretch = rapid.Float64Range(0, 5).Draw(t, "paper grows")
	cut, err := slipcase.Make(j)
	require.NoError(t, err)
	return lies, cut
}

// A covering that is pasted grows across its grain to the size it should have;
// along the grain it is cut to that size. What is not pasted over the case,
// boards and linings trimmed flush, is cut as it is.
func TestStretchedCoveringsGrowToTheirSize(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		lies, cut := stretched(t)
		require.Len(t, cut.Pieces, len(lies.Pieces))
		for i, p := range cut.Pieces {
			whole := lies.Pieces[i]
			grown := map[geometry.Material]float64{
				geometry.Cloth: 1 + cut.Job.Cloth.Stretch/100,
				geometry.Paper: 1 + cut.Job.SidePaper.Stretch/100,
			}[p.Material]
			if grown == 0 {
				assert.Equal(t, whole.Outline, p.Outline, p.Name)
				assert.Equal(t, whole.Guides, p.Guides, p.Name)
				continue
			}
			gx, gy := grown, 1.0
			if p.Grain == geometry.GrainWidth {
				gx, gy = gy, gx
			}
			grow := func(q geometry.Point) geometry.Point {
				return geometry.Pt(q.X*slipcase.Length(gx), q.Y*slipcase.Length(gy))
			}
			w, h := p.Size()
			wantW, wantH := whole.Size()
			assert.InDelta(t, wantW.MM(), w.MM()*gx, eps, p.Name)
			assert.InDelta(t, wantH.MM(), h.MM()*gy, eps, p.Name)
			// Chords stay within 0.005 mm of the arcs.
			assert.InDelta(t, whole.Outline.SignedArea(), p.Outline.SignedArea()*grown, 0.005*200, p.Name)
			require.Len(t, p.Slits, len(whole.Slits), p.Name)
			for n, s := range p.Slits {
				assertPath(t, whole.Slits[n], s, grow, p.Name)
			}
			require.Len(t, p.Folds, len(whole.Folds), p.Name)
			for n, f := range p.Folds {
				assertPath(t, whole.Folds[n], f, grow, p.Name)
			}
		}
	})
}

// assertPath: the ends of a path grow to where they should be.
func assertPath(t require.TestingT, want, cut geometry.Path, grow func(geometry.Point) geometry.Point, name string) {
	for _, end := range []struct{ want, cut geometry.Vertex }{
		{want.Vertices[0], cut.Vertices[0]},
		{want.Vertices[len(want.Vertices)-1], cut.Vertices[len(cut.Vertices)-1]},
	} {
		assert.InDelta(t, 0, end.want.Distance(grow(end.cut.Point)).MM(), eps, name)
	}
}

// How a material grows changes nothing of the finished case.
func TestStretchLeavesTheCase(t *testing.T) {
	lies, err := slipcase.Make(exampleJob(func(*slipcase.Job) {}))
	require.NoError(t, err)
	cut, err := slipcase.Make(exampleJob(func(j *slipcase.Job) { j.Cloth.Stretch, j.SidePaper.Stretch = 2, 1 }))
	require.NoError(t, err)
	assert.Equal(t, lies.Stands.Cavity(), cut.Stands.Cavity())
	assert.Equal(t, lies.Stands.Outside(), cut.Stands.Outside())
	assert.Equal(t, lies.Stands.Mouth(), cut.Stands.Mouth())
	// 147.15 from the spine to the mouth line, 13 past it, with 1 in a hundred
	// to grow: (153.15 - 6 + 13) / 1.01.
	w, _ := piecesOf(cut)["side paper"].Size()
	assert.InDelta(t, 160.15/1.01, w.MM(), eps)
}
