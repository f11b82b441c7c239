package slipcase_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/slipcase"
)

// exampleJob is a book of 220 x 150 x 30 with the defaults, which is accepted;
// each example changes a little of it.
func exampleJob(change func(*slipcase.Job)) slipcase.Job {
	j := slipcase.DefaultJob(geometry.MM)
	j.Books = []job.Book{{Height: readings(220), Width: readings(150), Thickness: readings(30)}}
	change(&j)
	return j
}

// Jobs at which a rule once gave way to another, or to the arithmetic. Each is
// refused with a change that does, or accepted and sound.
func TestHardExamples(t *testing.T) {
	for name, change := range map[string]func(*slipcase.Job){
		// 6.85 - 1 and 5.15 + 2 x 0.35 are one number on paper but not in float64.
		"no cloth to lap over, but for a rounding": func(j *slipcase.Job) {
			j.Board.Thickness, j.Cloth.Overlap, j.SidePaper.Inset = 5, 6.85, 60
		},
		// 0.5 mm of play beside 5.15 + 0.7, again the same to a rounding.
		"half a millimetre of cloth to lap over, but for a rounding": func(j *slipcase.Job) {
			j.Board.Thickness, j.Cloth.Overlap, j.SidePaper.Inset = 5, 7.35, 60
		},
		// Room for an inset only between 5.85 and 5.855.
		"a hair's breadth for the inset": func(j *slipcase.Job) {
			j.Board.Thickness, j.Cloth.Overlap = 5, 6.855
		},
		// In thousandths of an inch no inset lies between 5.85 mm and 5.858 mm.
		"no thousandth of an inch for the inset": func(j *slipcase.Job) {
			j.Unit, j.Board.Thickness, j.Cloth.Overlap = geometry.IN, 5, 5
		},
		// Beyond a board of 5.15 the middle tab must lose 3 mm of a cavity of 4.35.
		"thick cloth round a thick board for a leaf": func(j *slipcase.Job) {
			j.Books[0].Thickness = readings(1)
			j.Board.Thickness, j.Cloth.Thickness, j.SidePaper.Inset = 5, 1.5, 8.15
			j.Clearance.Height, j.Clearance.Thickness = 3.05, 3.35
		},
		// 100 of flap on a carcass 3.05 thick: wedges of one degree would meet.
		"long flap over a thin carcass": func(j *slipcase.Job) {
			j.Books[0].Thickness, j.Board.Thickness, j.Lining.Thickness = readings(1), 0.5, 0
			j.Clearance.Thickness, j.Cloth.TurnIn = 1.05, 100
		},
		// 100 of tab into a cavity 3.05 wide: slits of one degree would meet.
		"long tab into a thin cavity": func(j *slipcase.Job) {
			j.Books[0].Thickness, j.Board.Thickness, j.Cloth.Thickness = readings(2), 5, 0.05
			j.Clearance.Thickness, j.Cloth.MouthTurnIn = 1.05, 100
		},
		// The case is 46.3 high, its cavity 42: 46.3 - 2.15 of a side tab don't go in.
		"side tabs as wide as a low case is high": func(j *slipcase.Job) {
			j.Books[0].Height = readings(40)
			j.Cloth.Overlap = 46.3
		},
		// The spine cloth covers 5 from the spine, head cloth starts 24 from it.
		"gap wider than the spine cloth's margin": func(j *slipcase.Job) {
			j.Cloth.Overlap, j.Cloth.SpineGap, j.SidePaper.Inset = 5, 24, 4
		},
	} {
		t.Run(name, func(t *testing.T) {
			c, err := mended(exampleJob(change))
			require.NoError(t, err)
			assert.NoError(t, checkAll(c))
		})
	}
}
