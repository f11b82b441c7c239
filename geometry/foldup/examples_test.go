package foldup_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/geometry/job"
	"forel/geometry/plan/plantest"
	"forel/geometry/slipcase"
)

// Jobs that the random tests found, made small: each is refused by a key that a
// maker can change and a value that does, or accepted, sound, and every outline
// in order. Books are 220 high.
func TestFoundJobs(t *testing.T) {
	for name, found := range map[string]struct {
		width, thickness slipcase.Length
		change           func(*slipcase.Job)
	}{
		// 60 of set-back in a cavity 31 deep left a divider of less than nothing,
		// and a lap of at most -29.
		"set-back past the divider": {30, 30, func(j *slipcase.Job) {
			divided(j)
			j.Divider.SetBack = 60
		}},
		// Outside 33.15 deep: paper inset by 34 starts past the mouth.
		"inset wider than a narrow side is deep": {30, 30, func(j *slipcase.Job) {
			j.Covering, j.SidePaper.Inset = slipcase.SidesOnly, 34
		}},
		"inset as wide as a narrow side is deep": {30, 30, func(j *slipcase.Job) {
			j.Covering, j.SidePaper.Inset = slipcase.SidesOnly, 33.15
		}},
		// A lining put in afterwards ends 2 before the mouth and is 29 wide; its
		// hole would reach 32 - 2 into it.
		"hole through a lining put in afterwards": {30, 30, func(j *slipcase.Job) {
			linedAfter(j)
			hole(slipcase.Semicircle)(j)
			j.Covering, j.ThumbHole.Radius = slipcase.AllCloth, 30
		}},
		"triangle through a lining put in afterwards": {30, 30, func(j *slipcase.Job) {
			linedAfter(j)
			hole(slipcase.Triangle)(j)
			j.Covering, j.ThumbHole.Radius = slipcase.AllPaper, 30
		}},
		// The lining is 42 high, 2 more round the hole than 21 - 6 leave no room.
		"hole as high as a lining put in afterwards": {150, 30, func(j *slipcase.Job) {
			linedAfter(j)
			hole(slipcase.Semicircle)(j)
			j.Books[0].Height = job.Readings{40}
			j.Board.Thickness, j.Cloth.Thickness, j.Cloth.Overlap, j.SidePaper.Inset = 4, 0.05, 5.6, 4.6
			j.ThumbHole.Radius = 19.4
		}},
		// 6 of cloth reach 2 in round a board of 4, where the linings start: the step
		// beside it is past the cloth all the way.
		"linings that start where the cloth ends": {150, 30, func(j *slipcase.Job) {
			linedAfter(j)
			j.Board.Thickness, j.Cloth.MouthTurnIn = 4, 6
		}},
		// A lining 29.6 wide, and 34.3 of cloth that reach 29.6 of it: the step begins at
		// its other end, but for rounding.
		"linings stepped from end to end": {30, 30, func(j *slipcase.Job) {
			linedAfter(j)
			j.Books[0].Height, j.Lining.Thickness, j.Lining.Trim = job.Readings{41}, 1, 50
			j.Board.Thickness, j.Clearance.Width, j.Clearance.Thickness = 3.7, 1.6, 4.8
			j.Cloth.Overlap, j.Cloth.TurnIn, j.Cloth.MouthTurnIn = 7.95, 29.5, 34.3
			j.SidePaper.Inset, j.SidePaper.TurnIn = 26.25, 23.8
		}},
		// The side is 35.15 deep, the spine wall takes 4.15 of it, the hole 32.
		"hole into the spine wall": {30, 30, func(j *slipcase.Job) {
			hole(slipcase.Semicircle)(j)
			j.Covering, j.ThumbHole.Radius, j.Board.Thickness = slipcase.AllCloth, 32, 4
		}},
		// A hole that suits is 16 here; 14.65 would fit beside an inset of 16.5.
		"no room for the hole that suits": {31, 30, func(j *slipcase.Job) {
			hole(slipcase.Semicircle)(j)
			j.Covering, j.ThumbHole.Radius, j.SidePaper.Inset = slipcase.SidesOnly, 0, 16.5
		}},
	} {
		t.Run(name, func(t *testing.T) {
			j := jobFor(220, found.width, found.thickness)
			found.change(&j)
			_, refused, _ := j.Check()
			if len(refused) == 0 {
				_, err := plantest.Make[slipcase.Case](j)
				require.NoError(t, err)
			}
			c, err := mended(j)
			require.NoError(t, err)
			assert.Empty(t, c.Proof.Faults)
			for _, p := range c.Pieces {
				assert.NoError(t, checkOutline(p, 1e-6))
			}
		})
	}
}
