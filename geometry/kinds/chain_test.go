package kinds_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/geometry/fit"
	"forel/geometry/job"
	"forel/geometry/kinds"
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
