package bed_test

import (
	"context"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/plan"
	"forel/geometry/plan/plantest"
	"forel/geometry/slipcase"
	"forel/paper/bed"
	"forel/paper/stock"
)

func machined(t *rapid.T, name string) (plan.Plan, error) {
	j := slipcase.DefaultJob(geometry.MM)
	j.Books = []job.Book{{
		Height: job.Readings{L(rapid.Float64Range(150, 260).Draw(t, name+" height"))}, Width: job.Readings{140},
		Thickness: job.Readings{L(rapid.Float64Range(15, 60).Draw(t, name+" thickness"))},
	}}
	j.Covering = rapid.SampledFrom([]string{slipcase.SidesOnly, slipcase.AllPaper}).Draw(t, "covering")
	j.Pattern = slipcase.Pattern{Across: 21, Along: 64, Direction: rapid.SampledFrom([]string{slipcase.AnyWay, slipcase.OneWay}).Draw(t, "direction"),
		Match:     rapid.SampledFrom([]string{slipcase.MatchNothing, slipcase.MatchHeight, slipcase.MatchMirrored, slipcase.MatchRound}).Draw(t, "match"),
		FromSpine: L(rapid.Float64Range(0, 60).Draw(t, "from spine")), FromTail: 20}
	c, err := plantest.Make[slipcase.Case](j)
	if err != nil {
		return plan.Plan{}, err
	}
	return c.Plan(), nil
}

// Every piece of patterned stock lies so that its lines fall on those of one
// pattern over the bed, and never with its top the wrong way.
func TestOnePatternOverTheBed(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var jobs []bed.Job
		for _, name := range []string{"one", "two"} {
			p, err := machined(t, name)
			if err != nil {
				t.Skip(err)
			}
			jobs = append(jobs, bed.Job{Name: name, Pieces: p.Machined()})
		}
		s := setup(700, 600)
		s.Kerf = L(rapid.Float64Range(0, 0.4).Draw(t, "kerf"))
		g := rapid.SampledFrom([]geometry.Grain{geometry.GrainHeight, geometry.GrainWidth, stock.NoGrain}).Draw(t, "grain")
		s.Grain = map[geometry.Material]geometry.Grain{geometry.Paper: g, geometry.Board: stock.NoGrain, geometry.Lining: stock.NoGrain}
		beds, err := bed.Lay(context.Background(), s, jobs, quick)
		if err != nil {
			t.Skip(err)
		}
		faces := 0
		for _, b := range beds {
			checkSteps(t, s, b)
			for i, p := range b.Parts {
				assert.Equal(t, b.Material == geometry.Paper, p.Piece.FaceOf != "")
				if p.Piece.FaceOf == "" {
					continue
				}
				faces++
				r, box := p.Piece.Pattern, p.Outline.Bounds()
				// Where its first line is on the bed: as drawn, or turned counterclockwise.
				x, y, atX, atY, stepX, stepY := box.Min.X+r.First.X, box.Max.Y-r.First.Y, r.AtX, r.AtY, r.Across, r.Along
				if p.Turned {
					_, h := p.Piece.Size()
					x, y, atX, atY, stepX, stepY = box.Min.X+h-r.First.Y, box.Max.Y-r.First.X, r.AtY, r.AtX, r.Along, r.Across
				}
				if atX {
					assert.InDelta(t, 0, math.Remainder((x-b.Register.AtX).MM(), stepX.MM()), 1e-6, p.Name())
				}
				if atY {
					assert.InDelta(t, 0, math.Remainder((y-b.Register.AtY).MM(), stepY.MM()), 1e-6, p.Name())
				}
				if r.OneWay {
					assert.Equal(t, map[bool]string{false: "top", true: "left"}[p.Turned], b.Register.Up)
				}
				assert.Equal(t, g == geometry.GrainWidth, p.Turned)
				for _, q := range b.Parts[:i] {
					assert.True(t, p.Cut.Bounds().Grow(s.Gap-0.001).Intersect(q.Cut.Bounds()).Empty(), "too near")
				}
				assert.True(t, geometry.Bx(0, 0, b.Width, b.Height).Grow(-s.Margin+0.001).Contains(p.Cut.Bounds()))
			}
		}
		want := 0
		for _, j := range jobs {
			for _, p := range j.Pieces {
				if p.FaceOf != "" {
					want++
				}
			}
		}
		require.Equal(t, want, faces)
	})
}
