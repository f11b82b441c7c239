package onepiece_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/geometry"
	"forel/geometry/onepiece"
)

// Cornell University Library, Conservation manual guide 11A (1999), a one-piece
// slip case of corrugated board: for a book of 20.3 x 13.0 x 2.2 cm the blank is
// 25.2 x 28.2 cm, the height and 0.5 cm and two thicknesses by two widths and a
// thickness, scored at 2.2 cm from head and tail and at 13.0 cm from each end. It
// makes no allowance for the board's thickness.
func TestCornell(t *testing.T) {
	c, err := onepiece.Make(jobFor(203, 130, 22, func(j *onepiece.Job) {
		j.Card.Thickness = 0
		j.Clearance.Height, j.Clearance.Width, j.Clearance.Thickness = 5, 0, 0
		j.Flaps = onepiece.Flaps{}
	}))
	require.NoError(t, err)
	require.Len(t, c.Pieces, 1)
	blank := c.Pieces[0]
	width, height := blank.Size()
	assert.InDelta(t, 282, width.MM(), eps)
	assert.InDelta(t, 252, height.MM(), eps)

	// Along each of the four lines lie scores; no score lies elsewhere.
	const fromEnds, fromHeadAndTail = 130, 22
	var across, up = map[float64]float64{}, map[float64]float64{}
	for _, f := range blank.Folds {
		from, to := f.Vertices[0], f.Vertices[1]
		if from.X.Near(to.X) {
			up[from.X.Round(eps).MM()] += from.Distance(to.Point).MM()
		} else {
			require.True(t, from.Y.Near(to.Y), "a score is askew")
			across[from.Y.Round(eps).MM()] += from.Distance(to.Point).MM()
		}
	}
	assert.InDeltaMapValues(t, map[float64]float64{fromEnds: 208, 282 - fromEnds: 208}, up, eps)
	assert.InDeltaMapValues(t, map[float64]float64{fromHeadAndTail: 282, 252 - fromHeadAndTail: 282}, across, eps)
	assert.Len(t, blank.Slits, 2, "at head and tail, beside the spine")
}

// The allowance by hand, half a thickness at each fold (common practice, no
// source), for a book of 200 x 120 x 30 with 3, 1 and 2 of clearance in card of
// 1.6: a cavity of 203 x 121 x 32. Side 121 + 0.8; spine 32 + 2 x 0.8; left side
// 203 + 1.6 between its scores; spine and right side 1.6 more at head and tail
// each: 207.8. With 0.4 of relief the inner flap is 32 + 0.8 - 0.4 long and the
// outer one, to the outer face of the left side, 32 + 0.8 + 1.6 - 0.4. Flaps
// taper by 1.
func TestAllowanceByHand(t *testing.T) {
	c, err := onepiece.Make(jobFor(200, 120, 30, func(j *onepiece.Job) {
		j.Card.Thickness, j.Card.Bend = 1.6, 0.5
		j.Clearance.Height, j.Clearance.Width, j.Clearance.Thickness = 3, 1, 2
		j.Flaps = onepiece.Flaps{Relief: 0.4, Taper: 1}
	}))
	require.NoError(t, err)
	blank := c.Pieces[0]
	width, height := blank.Size()
	assert.InDelta(t, 121.8+33.6+121.8, width.MM(), eps)
	assert.InDelta(t, 207.8+2*34, height.MM(), eps)

	b := partsOf(blank)
	assert.InDelta(t, 121.8, b.left.MM(), eps)
	assert.InDelta(t, 155.4, b.right.MM(), eps)
	assert.InDelta(t, 204.6, (b.innerHead - b.innerTail).MM(), eps)
	assert.InDelta(t, 207.8, (b.outerHead - b.outerTail).MM(), eps)
	assert.InDelta(t, 34, b.outerTail.MM(), eps)

	// The flaps at the head, whose scores are 34 + 207.8 up and 1.6 less. Inner
	// flap: 0.8 + 0.4 cut away beside the spine, 1 narrower at its end. Spine flap:
	// a nick of 0.8 + 0.2 at the corner, 0.8 high, then the mitre; 1 narrower at the
	// 33.6 - 0.2 that the mitre would reach, which it meets at h with
	// h = 33.4 - h / 33.4. Outer flap: the like nick and mitre, to a height of 34.
	h := 33.4 * 33.4 / 34.4
	want := [][2]float64{
		{0, 240.2}, {120.6, 240.2}, {119.6, 272.6}, {0, 272.6},
		{121.8, 240.2}, {121.8, 241.8}, {154.4, 241.8}, {154.4, 242.6}, {121.8 + h/33.4, 241.8 + h},
		{156.4, 241.8}, {156.4, 242.6}, {189.6, 275.8}, {276.2, 275.8}, {277.2, 241.8},
	}
	head := b.pointsIn(geometry.Bx(0, height/2, width, height))
	assert.Len(t, head, len(want))
	for _, w := range want {
		assert.True(t, slices.ContainsFunc(head, geometry.Pt(geometry.Length(w[0]), geometry.Length(w[1])).Near), "no corner at %v, but %v", w, head)
	}

	assert.InDelta(t, 203+4*1.6, c.Job.Outside().Height.MM(), eps)
	assert.InDelta(t, 121+1.6, c.Job.Outside().Width.MM(), eps)
	assert.InDelta(t, 32+2*1.6, c.Job.Outside().Thickness.MM(), eps)
}
