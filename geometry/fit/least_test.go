package fit_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/geometry/fit"
	"forel/geometry/job"
	"forel/geometry/kinds"
	"forel/geometry/plan"
	"forel/geometry/tolerance"
)

// The smallest clearances make a case too tight no more than once in 50, and a step less
// of any of them makes its dimension so more often than its share; so too where cases
// come out tighter than reckoned.
func TestLeastClearances(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		k := rapid.SampledFrom(kinds.All).Draw(t, "kind")
		j := k.New(geometry.MM)
		mm := func(lo, hi int, name string) job.Readings {
			return job.Readings{geometry.Length(rapid.IntRange(lo, hi).Draw(t, name))}
		}
		j.Shared().Books = []job.Book{{Height: mm(120, 320, "height"), Width: mm(90, 230, "width"), Thickness: mm(10, 60, "thickness")}}
		if s, ok := j.Settings().Find("chemise.book_cover"); ok {
			*s.Length = 2.5
		}
		for _, key := range []string{"uncertainty.cutting", "uncertainty.placing", "uncertainty.cloth"} {
			s, _ := j.Settings().Find(key)
			*s.Length = geometry.Length(rapid.IntRange(1, 10).Draw(t, key)) / 20
		}
		sound, refused, _ := j.Check()
		require.Empty(t, refused)
		p, err := sound.Make()
		require.NoError(t, err)
		tighter := geometry.Length(rapid.Float64Range(-0.5, 1).Draw(t, "tighter"))
		as := func(_ plan.Gap, d tolerance.Distribution) tolerance.Distribution {
			d.Mean -= tighter
			return d
		}
		sets := fit.Least(p.Chain, as)
		require.NotEmpty(t, sets)
		least := fit.Chances(p.Chain.With(sets), as).Tight
		assert.LessOrEqual(t, least, fit.Once+1e-3, "%s", k.About) // other rules of the geometry change with a clearance
		for i, s := range sets {
			if s.Value < 0.1 {
				continue
			}
			less := append([]job.Change(nil), sets...)
			less[i].Value -= 0.1
			assert.Greater(t, fit.Chances(p.Chain.With(less), as).Tight, least, "%s: %s", k.About, s.Key)
		}
		for i := range sets { // two steps less of each are no longer enough
			sets[i].Value = max(0, sets[i].Value-0.2)
		}
		assert.Greater(t, fit.Chances(p.Chain.With(sets), as).Tight, fit.Once, "%s", k.About)
	})
}
