package box

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry/job"
	"forel/geometry/plan"
	"forel/geometry/plan/plantest"
)

// The large tray follows the covered small one by exactly what that measures otherwise,
// the case with it; boards and cloth of the small tray stay as they were cut (the design,
// "As built").
func TestTheLargeTrayFollows(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := mended(t, anyJob(t))
		s := j.covered(j.small())
		off := func(name string) Length { return Length(rapid.Float64Range(0, 2).Draw(t, name)) }
		y := plan.Size{Height: off("height"), Width: off("width"), Thickness: off("depth")}
		k := j
		k.AsBuilt = AsBuilt{job.Readings{s.Height + y.Height - 0.3, s.Height + y.Height}, job.Readings{s.Width + y.Width}, job.Readings{s.Thickness + y.Thickness}}
		sound, refused, _ := k.Check()
		if len(refused) > 0 { // a longer tray needs a longer turn-in, no more
			k = mended(t, k)
			sound, _, _ = k.Check()
		}
		p, err := sound.Make()
		require.NoError(t, err)
		was, is := sizesOf(j.pieces()), sizesOf(p.Pieces)
		near := func(want Length, name string, at int) {
			assert.InDelta(t, want.MM(), is[name][at]-was[name][at], 1e-6, name)
		}
		for _, same := range []string{"small base", "small fore-edge wall", "small side wall", "small tray cloth"} {
			assert.Equal(t, was[same], is[same], same)
		}
		near(y.Width, "large base", 0)
		near(y.Height, "large base", 1)
		near(y.Height, "large fore-edge wall", 0)
		near(y.Thickness, "large side wall", 1)
		near(y.Thickness, "case spine", 0)
		near(y.Height, "case board", 1)
		near(y.Width, "case board", 0)
		near(y.Height, "hinge", 1)
		near(y.Width, "small floor lining", 0)
	})
}

// A small tray that leaves the book no room is refused, and what it says would do.
func TestSmallTrayTooSmall(t *testing.T) {
	j := usualJob()
	j.AsBuilt.Height = job.Readings{227.05}
	_, refused, _ := j.Check()
	require.Len(t, refused, 1)
	assert.Equal(t, "as_built.height", refused[0].Key)
	assert.Equal(t, "at least 227.15 mm", refused[0].Fix, "220 + 2t + 6k, and 0.05")
	require.NoError(t, plantest.Typed(j.Settings(), refused[0], 0))
	accepted(t, j)
	j.AsBuilt = AsBuilt{Width: job.Readings{153}}
	_, refused, _ = j.Check()
	require.Len(t, refused, 1)
	assert.Equal(t, "at least 153.55 mm", refused[0].Fix, "150 + t + 3k")
}

// What is measured otherwise by more than a millimetre is told, with what the book has.
func TestAsBuiltIsTold(t *testing.T) {
	j := usualJob()
	j.AsBuilt.Height = job.Readings{229.2}
	_, refused, suspect := j.Check()
	require.Empty(t, refused)
	require.Len(t, suspect, 1)
	assert.Contains(t, suspect[0].Sentence(), "is 1.3 mm more than planned")
	assert.Contains(t, suspect[0].Sentence(), "the book has 2.1 mm from head to tail at the open end") // 0.8 and 1.3
	j.AsBuilt.Height = job.Readings{228.8}
	_, _, suspect = j.Check()
	assert.Empty(t, suspect)
}

// Of the room between the trays as drawn measuring changes nothing; of what can be off it
// leaves the large tray alone.
func TestMeasuringTheSmallTray(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := mended(t, anyJob(t))
		k := j
		k.Order = AsMeasured
		a, b := j.Chain(), k.Chain()
		assert.InDeltaSlice(t, numbers(a.Left(a.Drawn())), numbers(b.Left(b.Drawn())), 1e-9)
		want := []Length{nestHigh: j.Room.Height, nestDeep: j.Room.Width, nestThick: j.Room.Depth, bookHighMiddle: j.Clearance.Height,
			bookHighEnd: j.Clearance.Height - 2*j.Cloth, bookDeep: j.Clearance.Width - j.Cloth, bookThickGap: j.Clearance.Thickness + j.Room.Depth - 2*j.hingeCloth()}
		assert.InDeltaSlice(t, numbers(want), numbers(a.Left(a.Drawn())[:gapCount]), 1e-9)
		for i, row := range b.Sensitivities() {
			if i == nestHigh || i == nestDeep || i == nestThick {
				assert.Zero(t, row[smallLong]+row[smallWide]+row[smallHigh], "the small tray is as it is")
			}
		}
	})
}

func numbers(all []Length) (out []float64) {
	for _, l := range all {
		out = append(out, l.MM())
	}
	return out
}

var _ plan.Outer = (*Job)(nil)
