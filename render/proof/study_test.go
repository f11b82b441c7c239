package proof

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/geometry"
	"forel/geometry/slipcase"
)

// The cells of a face part it: together they are as large as the face, and
// those under one layer are as large as that layer's part of the face.
func TestCellsPartTheFace(t *testing.T) {
	for name, s := range subjects() {
		for _, f := range study(s.Proof) {
			var all float64
			under := make([]float64, len(f.layers))
			for _, c := range f.cells {
				all += c.shape.Size()
				for _, i := range c.on {
					under[i] += c.shape.Size()
				}
			}
			slack := 0.01 * (1 + f.Extent.Width() + f.Extent.Height()).MM() // slivers are left out
			assert.InDelta(t, f.shape.Size(), all, slack, "%s: %s", name, f.Face)
			for i, l := range f.layers {
				assert.InDelta(t, l.Shape.Size(), under[i], slack, "%s: %s: %s", name, f.Face, l.Piece)
			}
		}
	}
}

// The order of gluing, by the design: side flaps fold before the spine flap,
// paper goes on after cloth.
func TestLayersLieInTheOrderOfGluing(t *testing.T) {
	s := made(t, jobOf(221.5, 148.5, 32))
	faces := study(s.Proof)
	head, ok := faceOf(faces, slipcase.HeadOutside)
	require.True(t, ok)
	// Two side flaps at left and right, the spine flap in the middle, the cloth
	// of the head over all.
	require.Len(t, head.layers, 4)
	middle := head.Extent.Center().X
	for i := range 2 {
		b := head.layers[i].Shape.Bounds()
		assert.True(t, b.Max.X < middle || b.Min.X > middle, "side flap %v", b)
	}
	spine := head.layers[2].Shape.Bounds()
	assert.True(t, spine.Min.X < middle && spine.Max.X > middle, "spine flap %v", spine)
	assert.Equal(t, "head cloth", head.layers[3].Piece)

	// Side tabs end in the corners: the middle tab lies on the wall alone.
	tail, ok := faceOf(faces, slipcase.TailInside)
	require.True(t, ok)
	require.Len(t, tail.layers, 1)
	assert.False(t, tail.layers[0].Tucked)

	left, ok := faceOf(faces, slipcase.LeftInside)
	require.True(t, ok)
	assert.Equal(t, []string{"head cloth", "tail cloth", "side paper"}, left.pieces())
}

// Counted by hand on the left side of an ordinary case: cloth of the spine and
// of the head cross in the corner, and the paper lies on both.
func TestDepthOfLayers(t *testing.T) {
	faces := study(made(t, jobOf(221.5, 148.5, 32)).Proof)
	for face, want := range map[geometry.Face]int{
		slipcase.LeftOutside: 3, slipcase.SpineOutside: 1, slipcase.HeadOutside: 3,
		slipcase.LeftInside: 2, slipcase.SpineInside: 0, slipcase.HeadInside: 1, slipcase.HeadMouth: 1,
	} {
		f, ok := faceOf(faces, face)
		require.True(t, ok)
		assert.Equal(t, want, f.deepest, face)
	}
	// Head and tail cloth overlap on a low case: they, the spine cloth, paper.
	low, _ := faceOf(study(made(t, jobOf(40, 200, 60)).Proof), slipcase.LeftOutside)
	assert.Equal(t, 4, low.deepest)
}

// Paper cut 40 mm short leaves the mouth edge of each side bare but for what
// head and tail cloth cover of it.
func TestCovered(t *testing.T) {
	s := broken()["paper short of the mouth"]
	f, _ := faceOf(study(s.Proof), slipcase.LeftMouth)
	// Height 227.8 (221.5 + 2 + 2 x 2.15), cloth 28 at both ends.
	assert.InDelta(t, 100*2*28/227.8, f.covered, 0.01)
	whole, _ := faceOf(study(s.Proof), slipcase.SpineOutside)
	assert.Equal(t, 100.0, whole.covered)
	assert.Equal(t, 99.9, percent(99.99))
	assert.Equal(t, 100.0, percent(100))
}
