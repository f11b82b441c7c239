package kinds_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/geometry/fit"
	"forel/geometry/job"
	"forel/geometry/kinds"
	"forel/geometry/plan"
)

// Whatever the kind, the chain of its fit is whole: each gap is the sum of its links,
// each effect belongs to a length, and whatever has a key is a setting of the job.
func TestChainsAreWhole(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		k, p := anyPlan(t)
		settings := k.New(geometry.MM).Settings()
		known := func(key string) {
			_, ok := settings.Find(key)
			assert.True(t, ok, "%s: no setting %s", k.About, key)
		}
		c := p.Chain
		left := c.Left(c.Drawn())
		require.Len(t, left, len(c.Gaps)+len(c.Made))
		for _, d := range c.Dimensions {
			known(d.Key)
		}
		for _, o := range c.Off {
			known(o.Key)
			assert.Len(t, o.Effects, len(left), o.Name)
		}
		for _, l := range c.Links {
			if l.Varies != nil {
				known(l.Varies.Key)
			}
		}
		var sets []job.Change
		for _, m := range c.Mends {
			for _, s := range m.Sets {
				known(s.Key)
			}
			sets = append(sets, m.Sets...)
			if m.Moves != "" {
				known(m.Moves)
			}
		}
		assert.Equal(t, left, c.With(nil).Left(c.Drawn()), k.About)
		require.NotPanics(t, func() { c.With(sets) }, k.About)
		for _, g := range fit.Of(p).Gaps {
			var sum geometry.Length
			for _, l := range g.Chain {
				sum += l.Takes()
			}
			assert.InDelta(t, g.Left().MM(), sum.MM(), 1e-4, "%s: %s, %s", k.About, g.Dimension, g.Place)
		}
	})
}

// A chemise and its case from one job: the case is that of a book as large as the closed
// chemise, so that its room is that of one made by itself for it.
func TestSizesPassOn(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		mm := func(lo, hi int, name string) geometry.Length {
			return geometry.Length(rapid.IntRange(lo, hi).Draw(t, name))
		}
		b := book(mm(120, 320, "height"), mm(90, 230, "width"), mm(10, 60, "thickness"))
		made := func(kind string, books job.Book) (p map[string]map[string]geometry.Length, pieces map[string][2]geometry.Length) {
			k, ok := kinds.Find(kind, "")
			require.True(t, ok)
			j := k.New(geometry.MM)
			j.Shared().Books = []job.Book{books}
			sound, refused, _ := j.Check()
			require.Empty(t, refused)
			plan, err := sound.Make()
			require.NoError(t, err)
			p, pieces = map[string]map[string]geometry.Length{}, map[string][2]geometry.Length{}
			for _, f := range plan.Facts {
				p[f.Key] = map[string]geometry.Length{}
				for _, part := range f.Parts {
					p[f.Key][part.Key] = part.Length
				}
			}
			for _, q := range plan.Pieces {
				w, h := q.Size()
				pieces[q.Name] = [2]geometry.Length{w, h}
			}
			return p, pieces
		}
		worn, wornPieces := made("chemise", b)
		outer := rapid.SampledFrom([]string{"slipcase", "drop-spine box"}).Draw(t, "case")
		both, all := made("chemise and "+outer, b)
		out := worn["outside"]
		assert.Equal(t, out, both["chemise_outside"])
		_, alone := made(outer, book(out["height"], out["width"], out["thickness"]))
		assert.Len(t, all, len(wornPieces)+len(alone))
		for name, size := range alone {
			assert.InDelta(t, size[0].MM(), all[name][0].MM(), 1e-9, name)
			assert.InDelta(t, size[1].MM(), all[name][1].MM(), 1e-9, name)
		}
		for name, size := range wornPieces {
			assert.Equal(t, size, all[name], name)
		}
	})
}

// Whatever the kind, what can be measured of it has a name of its own, a length that is
// real, and limits about what is expected. What the kind tells of its outside and of its
// pieces elsewhere is the same.
func TestQuantitiesAreWhole(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		k, p := anyPlan(t)
		seen := map[string]geometry.Length{}
		for _, q := range fit.Quantities(p.Chain) {
			_, twice := seen[q.Key]
			assert.False(t, twice, q.Key)
			assert.Regexp(t, `^[a-z-]+[a-z0-9-]*$`, q.Key)
			seen[q.Key] = q.Planned
			assert.NotEmpty(t, q.When, q.Key)
			low, high := q.Within()
			assert.LessOrEqual(t, low, high, q.Key)
			assert.GreaterOrEqual(t, q.Expected.Expected(), low, q.Key)
			assert.LessOrEqual(t, q.Expected.Expected(), high, q.Key)
			var variance float64
			for _, o := range q.Off {
				variance += float64(o.SD * o.SD)
			}
			for layer, sd := range q.Layers {
				variance += math.Pow(q.Counts[layer]*sd.MM(), 2)
			}
			assert.InDelta(t, math.Sqrt(variance), q.Expected.StandardDeviation().MM(), 1e-9, "%s: %s", k.About, q.Key)
			if q.Set != "" {
				s, ok := k.New(geometry.MM).Settings().Find(q.Set)
				assert.True(t, ok && s.Readings != nil, q.Set)
			}
		}
		if k.Name == "slipcase" && k.Construction == "boards" || k.Name == "chemise" {
			for i, part := range p.Fact("outside").Parts {
				at := []string{"outside-height", "outside-width", "outside-thickness"}[i]
				assert.InDelta(t, part.Length.MM(), seen[at].MM(), 1e-6, "%s: %s", k.About, at)
			}
		}
	})
}

// A case of which something was measured is planned as it was before.
func TestPlannedBeforeItWasMeasured(t *testing.T) {
	for _, k := range kinds.All {
		j := k.New(geometry.MM)
		j.Shared().Books = []job.Book{book(220, 150, 30)}
		if s, ok := j.Settings().Find("chemise.book_cover"); ok {
			*s.Length = 2.5
		}
		quantities := func(j plan.Job) []fit.Quantity {
			sound, refused, _ := j.Check()
			require.Empty(t, refused, k.About)
			p, err := sound.Make()
			require.NoError(t, err)
			return fit.Quantities(p.Chain)
		}
		j = k.Planned(j)
		if s, ok := j.Settings().Find("box.large_tray"); ok { // else measuring the small one changes what is planned
			*s.Word = "as measured"
		}
		want := quantities(j)
		measured := false
		for _, s := range j.Settings() {
			if s.Readings == nil {
				continue
			}
			for _, q := range want {
				if q.Set == s.Key {
					*s.Readings, measured = job.Readings{q.Planned + 0.6, q.Planned + 0.2}, true
				}
			}
		}
		if measured {
			assert.NotEqual(t, want, quantities(j), k.About)
		}
		assert.Equal(t, want, quantities(k.Planned(j)), k.About)
	}
}
