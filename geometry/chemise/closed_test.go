package chemise

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/geometry/plan"
	"forel/geometry/plan/plantest"
)

// anyJob draws a job of any size, about half of them with every measure at
// random.
func anyJob(t *rapid.T) Job {
	length := func(lo, hi float64, name string) Length { return Length(rapid.Float64Range(lo, hi).Draw(t, name)) }
	j := DefaultJob(geometry.MM)
	j.Books = book(length(40, 400, "height"), length(20, 320, "width"), length(1, 100, "thickness"))
	j.ForeEdge = rapid.SampledFrom(ForeEdges).Draw(t, "fore-edge")
	j.Board, j.Covering = length(0.8, 2.5, "board"), length(0.15, 0.5, "covering")
	if j.ForeEdge == Hooks {
		j.BookCover = length(1, 8, "book's cover")
	}
	if rapid.Bool().Draw(t, "all at random") {
		for _, s := range j.Settings() {
			if s.Length != nil && s.Key != "chemise.book_cover" {
				*s.Length = length(s.Min, s.Max, s.Key)
			}
		}
	}
	return j
}

// mended returns a job after the changes that its refusals name.
func mended(t *rapid.T, j Job) Job {
	require.NoError(t, plantest.Mended(&j))
	return j
}

// A job that is refused is accepted after the changes named, and a job that is
// taken is sound: it folds up and closes as it should, to the room that was asked
// for and the outside that is told.
func TestAnyJob(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := mended(t, anyJob(t))
		sound, _, _ := j.Check()
		c, err := sound.(plan.Sound[made])()
		require.NoError(t, err)
		for _, f := range c.proof.Clearances[0].Parts {
			want := map[string]Length{"height": j.Clearance.Height, "depth": j.Clearance.Width, "thickness": j.Clearance.Thickness}[f.Key]
			assert.InDelta(t, want.MM(), f.Length.MM(), 2e-3, f.Key)
		}
		for i, g := range j.Chain().Left(j.Chain().Drawn()) {
			require.False(t, g != g, "gap %d", i)
		}
	})
}

// Where a job is refused for one reason, a change that is a little smaller than the
// one named is refused again.
func TestFixesAreSmallest(t *testing.T) {
	const little = 0.0101 // limits are rounded to a hundredth, so that they keep within
	rapid.Check(t, func(t *rapid.T) {
		j := anyJob(t)
		_, refused, _ := j.Check()
		if len(refused) != 1 {
			t.Skip("not one reason")
		}
		p := refused[0]
		less := j
		require.NoError(t, plantest.Typed(less.Settings(), p, -little))
		_, again, _ := less.Check()
		if p.Key == "chemise.fore_edge" {
			return // a word
		}
		if s, _ := less.Settings().Find(p.Key); *s.Length < Length(s.Min) || *s.Length > Length(s.Max) {
			return // refused by its range
		}
		require.NotEmpty(t, again, "%v, yet less does too", p)
	})
}

// The chain of the fit gives, as drawn, the clearances and the outside.
func TestChainAsDrawn(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := mended(t, anyJob(t))
		c := j.Chain()
		left := c.Left(c.Drawn())
		want := []Length{j.Clearance.Height, j.Clearance.Width, j.Clearance.Thickness}
		if j.ForeEdge == Lapped {
			want = append(want, j.Clearance.Thickness)
		}
		o := j.outside()
		want = append(want, o.Height, o.Width, o.Thickness)
		require.Len(t, left, len(want))
		for i := range want {
			assert.InDelta(t, want[i].MM(), left[i].MM(), 1e-6, i)
		}
	})
}
