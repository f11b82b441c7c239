package chemise

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry/job"
)

// anyJob draws a job of any size, about half of them with every measure at
// random.
func anyJob(t *rapid.T) Job {
	length := func(lo, hi float64, name string) Length { return Length(rapid.Float64Range(lo, hi).Draw(t, name)) }
	j := DefaultJob()
	j.Books = book(length(40, 400, "height"), length(20, 320, "width"), length(1, 100, "thickness"))
	j.ForeEdge = rapid.SampledFrom(ForeEdges).Draw(t, "fore-edge")
	j.Board, j.Covering = length(0.8, 2.5, "board"), length(0.15, 0.5, "covering")
	if j.ForeEdge == Hooks {
		j.BookCover = length(1, 8, "book's cover")
	}
	if rapid.Bool().Draw(t, "all at random") {
		for _, s := range j.own() {
			if s.Length != nil && s.Key != "chemise.book_cover" {
				*s.Length = length(s.Min, s.Max, s.Key)
			}
		}
	}
	return j
}

// set changes a job as a fix says, through its settings.
func set(t require.TestingT, j *Job, p job.Problem) {
	for _, s := range j.own() {
		if s.Key != p.Key {
			continue
		}
		if s.Word != nil {
			*s.Word = Lapped
			return
		}
		var v float64
		for _, words := range []string{"at least %g mm", "at most %g mm"} {
			if n, _ := fmt.Sscanf(p.Fix, words, &v); n == 1 {
				*s.Length = Length(v)
				return
			}
		}
	}
	require.Fail(t, "no such change: "+p.Error())
}

// A job that is refused is accepted after the changes named; one that is taken
// closes to just the room that was asked for, and to the outside that is told,
// and no two boards stand in one place.
func TestClosed(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := anyJob(t)
		_, refused, _ := j.Check()
		for round := 0; len(refused) > 0 && round < 6; round++ {
			for _, p := range refused {
				set(t, &j, p)
			}
			_, refused, _ = j.Check()
		}
		require.Empty(t, refused)
		c := shut(j.panels(), evenly(j.joint(), len(j.panels())), j.Board, j.Covering, j.Lining)
		in := j.room()
		width, thick := c.clear(j.ForeEdge)
		assert.InDelta(t, in.width.MM(), width.MM(), 1e-6)
		require.Empty(t, c.overlaps(j.panels(), j.ForeEdge))
		_, w, spine, fore := j.outsides()
		gotW, gotT := c.extent()
		assert.InDelta(t, w.MM(), gotW.MM(), 1e-6)
		if j.ForeEdge == Hooks { // its covers are not parallel: a hook each, and the book's pages between
			room, hook := c.hook()
			assert.InDelta(t, (j.BookCover + j.CoverPlay).MM(), room.MM(), 1e-6)
			assert.InDelta(t, fore.MM(), (2*hook + in.thickness - 2*j.BookCover).MM(), 1e-6)
			return
		}
		assert.InDelta(t, in.thickness.MM(), thick.MM(), 1e-6)
		assert.InDelta(t, spine.MM(), gotT.MM(), 1e-6)
		assert.Equal(t, spine, fore)
	})
}
