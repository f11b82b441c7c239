package slipcase_test

import (
	"math"
	"testing"

	"github.com/peterstace/simplefeatures/geom"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/geometry/slipcase"
)

// Inside, the tabs of a semicircle go 4 mm past its edge, straight away from its
// middle. So the tab next to the mouth lies along the mouth edge, where the
// turn-in already lies: two layers on each side, and the clearance is less by
// both of them.
func TestTabsOfAHoleLieOnTheTurnIn(t *testing.T) {

	for covering, change := range map[string]func(*slipcase.Job){
		slipcase.SidesOnly: func(j *slipcase.Job) { j.SidePaper.Thickness = 0.9 },
		slipcase.AllCloth:  func(j *slipcase.Job) { j.Cloth.Thickness = 0.9 },
	} {
		t.Run(covering, func(t *testing.T) {
			j := exampleJob(func(j *slipcase.Job) {
				j.Covering, j.ThumbHole = covering, slipcase.ThumbHole{Shape: slipcase.Semicircle, Radius: 14}
				change(j)
			})
			whole := j
			whole.ThumbHole.Shape = slipcase.NoHole
			_, err := slipcase.Make(whole)
			require.NoError(t, err, "without a hole")
			c, err := slipcase.Make(j)
			if err != nil {
				assert.True(t, names(refusal(t, j), "clearance.thickness"), "%v", err)
				return
			}
			p, mouth := withHole(t, c)
			_, h := p.Size()
			edge, _ := boards(j)
			// A place of the tab, 1 mm past the edge inside and 1 mm from the mouth,
			// and the place of the turn-in that lies there too.
			off := math.Sqrt(15*15 - 1)
			require.True(t, inOutline(p, mouth+edge+1, h.MM()/2+off), "the turn-in is there")
			// Flat, that place of the tab is as far before the fold as it comes to lie
			// past it, and the edge of the board.
			before := (14 - 1 - edge) / 15
			require.True(t, inOutline(p, mouth-before*1, h.MM()/2+before*off), "the tab is there")
			assert.LessOrEqual(t, c.Stands.Mouth().Thickness.MM(), 2-4*0.9+eps, "two layers on each side")
		})
	}
}

func inOutline(p geometry.Piece, x, y float64) bool {
	at := geometry.Pt(slipcase.Length(x), slipcase.Length(y))
	return within(judgedLine(at, at.Add(geometry.Pt(1e-3, 0))), p.Outline)
}

// The tabs of a hole keep clear of what is folded over head and tail wall, as
// the turn-in beside them has to: in a cavity 42 high the tabs of a hole of 16
// end 21 - 16 - 4 = 1 mm from the walls, on which cloth of 0.8 lies double in the
// corners.
func TestTabsOfAHoleClearTheClothOnTheWalls(t *testing.T) {

	j := exampleJob(func(j *slipcase.Job) {
		j.Books[0].Height = readings(40)
		j.Cloth.Thickness, j.Cloth.Overlap, j.Cloth.CornerDistance, j.Cloth.SpineGap = 0.8, 5.6, 2, 2
		j.SidePaper.Inset = 4
		j.ThumbHole = slipcase.ThumbHole{Shape: slipcase.Semicircle, Radius: 16}
	})
	c, err := slipcase.Make(j)
	if err != nil {
		assert.True(t, names(refusal(t, j), "thumb_hole.radius"), "%v", err)
		return
	}
	for _, f := range c.Proof.Faces {
		if f.Face == slipcase.HeadInside {
			assert.LessOrEqual(t, 16+4+f.Corners.MM(), c.Stands.Cavity().Height.MM()/2)
		}
	}
}

// Where the edge of a hole meets the mouth edge the board has a corner, as it has
// at head and tail; a cut that reaches it leaves it bare. The covering keeps a
// web there, a tenth of a millimetre at least, as the proof asks of every other
// corner.
func TestCornersOfAHoleKeepAWeb(t *testing.T) {

	for _, shape := range []string{slipcase.Semicircle, slipcase.Triangle} {
		for _, covering := range []string{slipcase.ClothAndPaper, slipcase.AllCloth} {
			t.Run(shape+" "+covering, func(t *testing.T) {
				c, err := slipcase.Make(exampleJob(func(j *slipcase.Job) {
					j.Covering, j.ThumbHole = covering, slipcase.ThumbHole{Shape: shape, Radius: 14}
				}))
				require.NoError(t, err)
				p, mouth := withHole(t, c)
				_, h := p.Size()
				for _, y := range []float64{h.MM()/2 - 14, h.MM()/2 + 14} {
					corner := geom.XY{X: mouth, Y: y}.AsPoint().AsGeometry()
					d, ok := geom.Distance(judgedPolygon(p.Outline).Boundary().AsGeometry(), corner)
					require.True(t, ok)
					assert.GreaterOrEqual(t, d, 0.1, "corner at %v, %v", mouth, y)
				}
			})
		}
	}
}

// A tab is longer than it is wide where the board is thick and the hole small, so what its
// chord leaves of the arc is more over the edge of the board. That is no fault of the pieces:
// by their rule two tabs part by no more than 1 mm.
func TestNarrowTabsRoundThickBoards(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		tabs := rapid.IntRange(11, 19).Draw(t, "tabs") // of a board that lets them part by 1 mm, or just less
		board := 0.5/math.Tan(math.Pi/2/float64(tabs)) - 0.2 - rapid.Float64Range(1e-6, 0.02).Draw(t, "thinner")
		radius := board + 0.2 + 4 + 1 + rapid.Float64Range(0.05, 3).Draw(t, "radius beyond the least")
		c, err := slipcase.Make(exampleJob(func(j *slipcase.Job) {
			j.Board.Thickness, j.Lining.Thickness = slipcase.Length(board), 0.2
			j.Cloth.Overlap, j.Cloth.MouthTurnIn = 15, 12
			j.SidePaper.Inset = 10
			j.ThumbHole = slipcase.ThumbHole{Shape: slipcase.Semicircle, Radius: slipcase.Length(radius)}
		}))
		require.NoError(t, err)
		require.NotZero(t, c)
	})
}
