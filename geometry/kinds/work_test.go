package kinds_test

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/kinds"
	"forel/geometry/plan/plantest"
	"forel/geometry/work"
)

// Every step of every plan takes time, by tasks that have one: work by tasks of the hands,
// drying by what dries. The finished thing is left to dry or tried last.
func TestEveryStepTakesTime(t *testing.T) {
	dries := map[work.Task]bool{}
	for _, u := range work.TaskTimes {
		_, twice := dries[u.Task]
		require.False(t, twice, u.Task)
		require.Positive(t, u.Usual, u.Task)
		require.Equal(t, u.Dries, u.Pieces == "", u.Task)
		dries[u.Task] = u.Dries
	}
	rapid.Check(t, func(t *rapid.T) {
		_, p := anyPlan(t)
		for _, s := range p.Steps {
			assert.Positive(t, work.UsualTimes().Of(s.Spells...), s.Title)
			for _, spell := range s.Spells {
				assert.Equal(t, len(s.Spells) > 1, spell.Says != "", "%s: spells of one step are told apart", s.Title)
				for _, l := range spell.Work {
					of, known := dries[l.Task]
					assert.True(t, known && !of && l.Count > 0, "%s: %v", s.Title, l)
				}
				if spell.Dries == (work.Drying{}) {
					continue
				}
				assert.True(t, dries[spell.Dries.As], "%s: %v", s.Title, spell.Dries)
				assert.NotEmpty(t, spell.Dries.What, s.Title)
				assert.False(t, spell.Wet, "%s: it dries, and is worked on while wet", s.Title)
			}
		}
		last := p.Steps[len(p.Steps)-1].Spells
		assert.False(t, last[len(last)-1].Wet)
	})
}

// What a case has more of takes longer: work is by the piece.
func TestWorkGrowsWithThePieces(t *testing.T) {
	tried := 0
	for _, k := range kinds.All {
		j := k.New(geometry.MM)
		s, ok := j.Settings().Find("compartments")
		if !ok || s.Word == nil {
			continue
		}
		var before time.Duration
		for n := 1; n <= 3; n++ {
			j := k.New(geometry.MM)
			s, _ := j.Settings().Find("compartments")
			*s.Word = s.Words[len(s.Words)-1]
			j.Shared().Books = nil
			for range n {
				j.Shared().Books = append(j.Shared().Books, job.Book{Height: job.Readings{221}, Width: job.Readings{148.5}, Thickness: job.Readings{32}})
			}
			p, err := plantest.Plan(j)
			if n > 1 && err != nil {
				break // holds one book
			}
			require.NoError(t, err)
			tried = max(tried, n)
			var sum time.Duration
			for _, s := range p.Steps {
				sum += work.UsualTimes().Of(s.Spells...)
			}
			assert.Greater(t, sum, before, "%d volumes, %s", n, k.About)
			before = sum
		}
	}
	require.Equal(t, 3, tried)
}
