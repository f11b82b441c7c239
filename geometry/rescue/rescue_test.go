package rescue_test

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/geometry/fit"
	"forel/geometry/job"
	"forel/geometry/kinds"
	"forel/geometry/plan"
	"forel/geometry/rescue"
)

// anyChain draws a job of any kind and returns it with its chain.
func anyChain(t *rapid.T) (plan.Kind, plan.Job, plan.Plan) {
	for range 50 {
		k := rapid.SampledFrom(kinds.All).Draw(t, "kind")
		j := k.New(geometry.MM)
		mm := func(lo, hi int, name string) job.Readings {
			return job.Readings{geometry.Length(rapid.IntRange(lo, hi).Draw(t, name))}
		}
		j.Shared().Books = []job.Book{{Height: mm(120, 320, "height"), Width: mm(90, 230, "width"), Thickness: mm(4, 60, "thickness")}}
		if k.Name == "slipcase" && k.Construction == "boards" && rapid.IntRange(0, 3).Draw(t, "volumes") == 0 {
			j.Shared().Books = append(j.Shared().Books, job.Book{Height: mm(120, 320, "height"), Width: mm(90, 230, "width"), Thickness: mm(8, 60, "thickness")})
		}
		for _, s := range j.Settings().Words() {
			*s.Word = rapid.SampledFrom(s.Words).Draw(t, s.Key)
		}
		if s, ok := j.Settings().Find("chemise.book_cover"); ok {
			*s.Length = 2.5
		}
		if sound, refused, _ := j.Check(); len(refused) == 0 {
			p, err := sound.Make()
			require.NoError(t, err)
			return k, j, p
		}
	}
	t.Skip("every job was refused")
	panic("skipped")
}

// Whatever came out, there is something to do where the book does not fit, and nothing
// where it does; a new case is always among the ways. A way that is offered is done within
// its limits, in the state that the case is in, and leaves each place the room that is told,
// within its limits.
func TestWaysBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		k, j, p := anyChain(t)
		c := p.Chain
		s := rescue.Stands{Play: map[string]geometry.Length{}, Early: rapid.Bool().Draw(t, "early")}
		for _, g := range c.Gaps {
			if g.Decides && rapid.Bool().Draw(t, g.Dimension+" is measured") {
				s.Play[fit.PlayKey(g)] = geometry.Length(rapid.Float64Range(-4, 6).Draw(t, "play"))
			}
		}
		r := rescue.Of(c, s)
		out := slices.ContainsFunc(r.Places, func(p rescue.Place) bool { return p.TooTight() || p.TooLoose() })
		assert.Equal(t, out, len(r.Ways) > 0, k.About)
		if !out {
			return
		}
		assert.True(t, slices.ContainsFunc(r.Ways, func(w rescue.Way) bool {
			return !slices.ContainsFunc(w.Steps, func(s rescue.Step) bool { return !s.Whole })
		}), k.About)
		for n, w := range r.Ways {
			if n > 0 {
				assert.GreaterOrEqual(t, w.Minutes, r.Ways[n-1].Minutes)
			}
			frees, minutes := []string{}, 0
			for _, st := range w.Steps {
				minutes += st.Minutes
				frees = append(frees, st.Frees...)
				assert.True(t, s.Early && st.Early || !s.Early && st.Late, st.Name)
				assert.GreaterOrEqual(t, st.Amount.MM(), 0.0, st.Name)
				assert.LessOrEqual(t, st.Amount.MM(), st.Most.MM()+1e-9, st.Name)
			}
			assert.Equal(t, minutes, w.Minutes)
			var cut []string
			for _, st := range w.Steps {
				for _, piece := range st.Again {
					assert.NotContains(t, cut, piece, "cut again twice")
				}
				cut = append(cut, st.Again...)
			}
			for i, at := range r.Places {
				want := at.Room
				for _, st := range w.Steps {
					want += st.Amount * geometry.Length(st.Gives[at.Dimension])
				}
				if slices.Contains(frees, at.Dimension) {
					continue
				}
				assert.InDelta(t, want.MM(), w.Room[i].MM(), 1e-9, "%s: %s", k.About, at.Dimension)
				assert.GreaterOrEqual(t, w.Room[i].MM(), math.Min(at.Tight.MM(), at.Room.MM())-1e-6, "%s: %s", k.About, w.Steps[0].Name)
				if at.TooTight() {
					assert.GreaterOrEqual(t, w.Room[i].MM(), at.Tight.MM()-1e-6, "%s: %s", k.About, w.Steps[0].Name)
				}
				if at.Loose > 0 {
					assert.LessOrEqual(t, w.Room[i].MM(), at.Loose.MM()+1e-6, "%s: %s", k.About, w.Steps[0].Name)
				}
			}
			// What is cut again is there, in a job that is sound or refused with what would do.
			again := k.Planned(j)
			require.NotPanics(t, func() { again.Settings().Apply(w.Sets) })
			some, unknown := p.Only(w.Again)
			if !slices.ContainsFunc(w.Steps, func(s rescue.Step) bool { return s.Whole }) {
				assert.Empty(t, unknown, "%s: %s", k.About, w.Steps[0].Name)
			} else if w.Steps[0].Name == plan.StartAgainName {
				assert.Len(t, some.Pieces, len(p.Pieces), "%s: everything is cut again", k.About)
			}
		}
	})
}

// Tighter never takes less work.
func TestTighterIsNeverLessWork(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		k, _, p := anyChain(t)
		early := rapid.Bool().Draw(t, "early")
		var gaps []plan.Gap
		for _, g := range p.Chain.Gaps {
			if g.Decides {
				gaps = append(gaps, g)
			}
		}
		g := rapid.SampledFrom(gaps).Draw(t, "gap")
		worked := 0
		for play := g.Tight + 1; play > g.Tight-5; play -= 0.13 {
			r := rescue.Of(p.Chain, rescue.Stands{Play: map[string]geometry.Length{fit.PlayKey(g): play}, Early: early})
			if len(r.Ways) == 0 {
				assert.Zero(t, worked, "%s: %s", k.About, g.Dimension)
				continue
			}
			assert.GreaterOrEqual(t, r.Ways[0].Minutes, worked, "%s: %s %v", k.About, g.Dimension, play)
			worked = r.Ways[0].Minutes
		}
	})
}

// What a remedy is said to give, the chain gives when it is done: a layer as much thinner,
// walls as much lower, all that was cut as it was.
func TestRemediesInTheChain(t *testing.T) {
	links := map[string]string{"cloth.thickness": "cloth", "side_paper.thickness": "covering paper", "box.lid_lining": "large tray's lining"}
	seen := map[string]bool{}
	chains := func(yield func(plan.Kind, plan.Plan) bool) {
		for _, k := range kinds.All {
			for _, height := range []geometry.Length{60, 220} { // on a low case head and tail cloth meet
				coverings := []string{""}
				if s, ok := k.New(geometry.MM).Settings().Find("covering"); ok {
					coverings = s.Words
				}
				for _, covering := range coverings {
					j := k.New(geometry.MM)
					j.Shared().Books = []job.Book{{Height: job.Readings{height}, Width: job.Readings{90}, Thickness: job.Readings{30}}}
					if s, ok := j.Settings().Find("covering"); ok {
						*s.Word = covering
					}
					if s, ok := j.Settings().Find("chemise.book_cover"); ok {
						*s.Length = 2.5
					}
					sound, refused, _ := j.Check()
					if len(refused) > 0 {
						continue
					}
					p, err := sound.Make()
					require.NoError(t, err)
					if !yield(k, p) {
						return
					}
				}
			}
		}
	}
	for k, p := range chains {
		c := p.Chain
		for _, m := range c.Remedies {
			moved := c.Drawn()
			const by = 0.04
			for i, l := range c.Links {
				for key := range m.Thinner {
					if l.Name == links[key] || l.Name == links[key]+" of the slipcase" || l.Name == links[key]+" of the drop-spine box" {
						moved[i] -= by
						seen[key] = true
					}
				}
				if m.Name == "plane the walls lower" && l.Name == "walls, side to side" {
					moved[i] -= by
					seen[m.Name] = true
				}
			}
			if slices.Equal(moved, c.Drawn()) {
				continue
			}
			was, is := c.Left(c.Drawn()), c.Left(moved)
			for i, g := range c.Gaps {
				if g.Decides {
					assert.InDelta(t, by*m.Gives[g.Dimension], (is[i] - was[i]).MM(), 1e-6, "%s: %s, %s", k.About, m.Name, g.Dimension)
				}
			}
		}
	}
	for _, what := range []string{"cloth.thickness", "side_paper.thickness", "box.lid_lining", "plane the walls lower"} {
		assert.True(t, seen[what], what)
	}
}

// New walls are cut for the case that stands: as high as it came out, and as far apart as
// was planned.
func TestCutForTheCaseThatStands(t *testing.T) {
	k, _ := kinds.Find("slipcase", "boards")
	j := k.New(geometry.MM)
	j.Shared().Books = []job.Book{{Height: job.Readings{220}, Width: job.Readings{150}, Thickness: job.Readings{30}}}
	*must(j.Settings().Find("board.known")).Word = "measured"
	sizes := func(j plan.Job) (map[string][2]geometry.Length, plan.Plan) {
		sound, refused, _ := j.Check()
		require.Empty(t, refused)
		p, err := sound.Make()
		require.NoError(t, err)
		out := map[string][2]geometry.Length{}
		for _, q := range p.Pieces {
			w, h := q.Size()
			out[q.Name] = [2]geometry.Length{w, h}
		}
		return out, p
	}
	was, p := sizes(j)
	r := rescue.Of(p.Chain, rescue.Stands{Early: true, Play: map[string]geometry.Length{
		"play-height":    2 + 0.6,   // of 2 in the body: it came out 0.6 higher
		"play-thickness": 2 - 3.0}}) // and 3 narrower
	var names []string
	for _, w := range r.Ways {
		names = append(names, w.Steps[0].Name)
		if w.Steps[0].Name != "three new walls" {
			continue
		}
		again := k.Planned(j)
		again.Settings().Apply(w.Sets)
		is, _ := sizes(again)
		assert.InDelta(t, (was["spine wall"][1] + 0.6).MM(), is["spine wall"][1].MM(), 1e-6)
		assert.InDelta(t, was["spine wall"][0].MM(), is["spine wall"][0].MM(), 1e-6)
		assert.InDelta(t, was["head wall"][1].MM(), is["head wall"][1].MM(), 1e-6)
		assert.True(t, w.Fits())
	}
	assert.Contains(t, names, "three new walls")
	assert.NotContains(t, names, "pare what is turned in on the sides", "nothing is turned in yet")
}

func must(s job.Setting, ok bool) job.Setting {
	if !ok {
		panic("no such setting")
	}
	return s
}
