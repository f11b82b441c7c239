package box

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/geometry/plan/plantest"
)

// anyJob draws a job of any size, about half of them with every measure at random.
func anyJob(t *rapid.T) Job {
	length := func(lo, hi float64, name string) Length { return Length(rapid.Float64Range(lo, hi).Draw(t, name)) }
	j := DefaultJob(geometry.MM)
	j.Books = book(length(40, 400, "height"), length(20, 320, "width"), length(1, 100, "thickness"))
	j.Board, j.Cloth = length(1.5, 3, "board"), length(0.15, 0.5, "cloth")
	for _, s := range j.Settings().Words() {
		*s.Word = rapid.SampledFrom(s.Words).Draw(t, s.Key)
	}
	if rapid.Bool().Draw(t, "all at random") {
		for _, s := range j.Settings().Lengths() {
			if s.Auto && rapid.Bool().Draw(t, s.Key+" is auto") {
				continue
			}
			*s.Length = length(s.Min, s.Max, s.Key)
		}
	}
	return j
}

// mended returns a job after the changes that its refusals name.
func mended(t *rapid.T, j Job) Job {
	require.NoError(t, plantest.Mended(&j))
	return j
}

// A job that is refused is taken after the changes named, and a job that is taken is
// sound.
func TestAnyJob(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := mended(t, anyJob(t))
		sound, _, _ := j.Check()
		_, err := sound.Make()
		require.NoError(t, err)
	})
}

// Where a job is refused for one reason, a change that is a little smaller than the one
// named is refused again.
func TestFixesAreSmallest(t *testing.T) {
	const little = 0.0101 // limits are rounded to a hundredth, so that they keep within
	rapid.Check(t, func(t *rapid.T) {
		j := anyJob(t)
		_, refused, _ := j.Check()
		for draws := 0; len(refused) != 1 && draws < 100; draws++ { // few have one reason
			j = anyJob(t)
			_, refused, _ = j.Check()
		}
		if len(refused) != 1 {
			t.Skip("not one reason")
		}
		p := refused[0]
		enough := j
		require.NoError(t, plantest.Typed(enough.Settings(), p, 0))
		if _, still, _ := enough.Check(); p.Key != "box.cloth" { // of too thick a cloth nothing else is reckoned
			require.Empty(t, still, p.Error())
		} else if len(still) > 0 {
			t.Skip("not the only reason")
		}
		require.NoError(t, plantest.Typed(j.Settings(), p, -little))
		_, again, _ := j.Check()
		require.NotEmpty(t, again, "%v, yet less does too", p)
	})
}
