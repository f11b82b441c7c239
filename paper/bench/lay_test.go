package bench_test

import (
	"context"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/geometry/job"
	"forel/paper/bench"
	"forel/paper/pack"
	"forel/paper/stock"
)

func TestOneJob(t *testing.T) {
	p, err := bench.Lay(context.Background(), []bench.Job{caseJob(t, "Harbour log", 221.5, 148.5, 31.75)}, bench.Options{})
	require.NoError(t, err)
	sound(t, p)
	for _, g := range p.Groups {
		assert.True(t, g.Assumed)
		assert.Len(t, g.Sheets, 1, "five boards of a book this small come out of one sheet")
		if g.Material == geometry.Board || g.Material == geometry.Paper {
			assert.Empty(t, g.Remarks)
		}
	}
	b := p.Groups[0]
	assert.Equal(t, "A1, 594 × 841 mm", b.Stock[0].Size(), "a maker who works in millimetres buys ISO sizes")
	// The three walls, 33.75 wide, come off at one setting, and so do the
	// heights of sides and spine wall, 227.8 (the design's table: T + cT, H + cH + 2s).
	settings := map[string]map[int]bool{}
	for _, q := range b.Sheets[0].Pieces {
		put := func(what string, by int, l geometry.Length, want float64) {
			assert.InDelta(t, want, l.MM(), 1e-9)
			if settings[what] == nil {
				settings[what] = map[int]bool{}
			}
			settings[what][by] = true
		}
		switch q.Name {
		case "side":
			put("height", q.HeightBy, q.Height, 227.8)
		case "spine wall":
			put("height", q.HeightBy, q.Height, 227.8)
			put("walls", q.WidthBy, q.Width, 33.75)
		default:
			put("walls", q.HeightBy, q.Height, 33.75)
		}
	}
	assert.Len(t, settings["walls"], 1)
	assert.Len(t, settings["height"], 1)
}

// Linings and cloth are cut larger, so that they take fewer settings of the fence; with
// Exact they are cut to size. Boards are cut to size always.
func TestRoundedUpOrExact(t *testing.T) {
	jobs := class(20)
	settings := map[geometry.Material][2]int{}
	for i, exact := range []bool{false, true} {
		p, err := bench.Lay(context.Background(), jobs, bench.Options{Exact: exact})
		require.NoError(t, err)
		sound(t, p)
		for _, g := range p.Groups {
			both := settings[g.Material]
			both[i] += g.Settings
			settings[g.Material] = both
			for _, s := range g.Sheets {
				for _, q := range s.Pieces {
					if !exact && (g.Material == geometry.Cloth || g.Material == geometry.Lining) {
						assert.InDelta(t, 0, math.Remainder(q.Width.MM(), 5), 1e-6)
						assert.InDelta(t, 0, math.Remainder(q.Height.MM(), 5), 1e-6)
					} else if exact {
						for _, piece := range jobs[q.Job].Plan.Pieces {
							if piece.Name == q.Name {
								w, h := piece.Size()
								assert.InDelta(t, w.MM(), q.Width.MM(), 1e-9)
								assert.InDelta(t, h.MM(), q.Height.MM(), 1e-9)
							}
						}
					}
				}
			}
		}
	}
	for _, m := range []geometry.Material{geometry.Cloth, geometry.Lining} {
		assert.Less(t, settings[m][0], settings[m][1], m)
	}
	t.Log(settings)
}

// Where a job's maker works in inches, the usual sizes are American ones.
func TestUsualSizesGoByTheUnit(t *testing.T) {
	j := caseJob(t, "Chart folder", 235, 181, 19)
	j.Unit = geometry.IN
	p, err := bench.Lay(context.Background(), []bench.Job{j}, bench.Options{})
	require.NoError(t, err)
	sound(t, p)
	assert.Equal(t, "26 × 38 in", p.Groups[0].Stock[0].Size())
}

// A class of forty, with a search and without; the search never needs more
// sheets.
func TestClass(t *testing.T) {
	jobs := class(40)
	first, err := bench.Lay(context.Background(), jobs, bench.Options{})
	require.NoError(t, err)
	sound(t, first)
	better, err := bench.Lay(context.Background(), jobs, bench.Options{Effort: pack.Effort{Iterations: 2000}})
	require.NoError(t, err)
	sound(t, better)
	for i := range first.Groups {
		assert.LessOrEqual(t, len(better.Groups[i].Sheets), len(first.Groups[i].Sheets))
	}
	oneStrip(t, better)
	for _, g := range better.Groups {
		for _, c := range g.Cuts {
			assert.Regexp(t, `^(\d+[A-Z]{0,2}|the roll)$`, c.Part, "short names")
		}
	}
	again, err := bench.Lay(context.Background(), jobs, bench.Options{Effort: pack.Effort{Iterations: 2000}})
	require.NoError(t, err)
	assert.Equal(t, better, again, "the same jobs and steps give the same plan")
	t.Log("\n" + summary(better))
}

// oneStrip tells that the three walls of every case come off one strip: one cut
// gives all their widths.
func oneStrip(t *testing.T, p bench.Plan) {
	t.Helper()
	cuts := map[int]map[int]bool{}
	for _, g := range p.Groups {
		for _, s := range g.Sheets {
			for _, q := range s.Pieces {
				by := q.HeightCut
				switch q.Name {
				case "spine wall":
					by = q.WidthCut
				case "head wall", "tail wall":
				default:
					continue
				}
				if cuts[q.Job] == nil {
					cuts[q.Job] = map[int]bool{}
				}
				cuts[q.Job][by] = true
			}
		}
	}
	require.Len(t, cuts, len(p.Jobs))
	for n, by := range cuts {
		assert.Len(t, by, 1, "walls of %s", p.Jobs[n].Title())
	}
}

// So they do when a case is alone on its sheet, where there is room to spare.
func TestWallsOfOneCase(t *testing.T) {
	for _, j := range append(class(30), caseJob(t, "Chart folder", 234.95, 180.975, 19.05)) {
		j.Unit = geometry.IN
		for _, steps := range []int{0, 300} {
			p, err := bench.Lay(context.Background(), []bench.Job{j}, bench.Options{Effort: pack.Effort{Iterations: steps}})
			require.NoError(t, err)
			oneStrip(t, p)
			sound(t, p)
		}
	}
}

// Any job on any stock: what comes back can be cut from the sheets by its list
// of cuts, or is refused in words.
func TestAnyStock(t *testing.T) {
	pool := class(30)
	rapid.Check(t, func(r *rapid.T) {
		var jobs []bench.Job
		for range rapid.IntRange(1, 4).Draw(r, "jobs") {
			jobs = append(jobs, rapid.SampledFrom(pool).Draw(r, "job"))
		}
		kerf := rapid.SampledFrom([]geometry.Length{0, 0, 1.5, 3.2}).Draw(r, "kerf")
		for _, m := range []geometry.Material{geometry.Board, geometry.Lining, geometry.Cloth, geometry.Paper} {
			for range rapid.IntRange(0, 2).Draw(r, "kinds") {
				s := stock.Stock{
					Material: m, Kerf: kerf,
					Width:  geometry.Length(rapid.IntRange(280, 1400).Draw(r, "sheet width")),
					Height: geometry.Length(rapid.IntRange(280, 1400).Draw(r, "sheet height")),
					Grain:  rapid.SampledFrom([]geometry.Grain{geometry.GrainHeight, geometry.GrainWidth, stock.NoGrain}).Draw(r, "grain"),
					Trim:   geometry.Length(rapid.SampledFrom([]float64{0, 5, 12.5}).Draw(r, "trim")),
					Count:  rapid.SampledFrom([]int{0, 0, 1, 3}).Draw(r, "count"),
					Roll:   rapid.Float64Range(0, 1).Draw(r, "roll") < 0.3, Per: stock.Metre,
				}
				if s.Roll && rapid.Bool().Draw(r, "endless") {
					s.Height = 0
				}
				if s.Roll {
					s.Count = 0
				}
				jobs[0].Stock = append(jobs[0].Stock, s)
			}
		}
		p, err := bench.Lay(context.Background(), jobs, bench.Options{Effort: pack.Effort{Iterations: rapid.SampledFrom([]int{0, 50}).Draw(r, "steps")}, Loose: rapid.Bool().Draw(r, "loose")})
		if err != nil {
			var bad job.Problems
			require.ErrorAs(r, err, &bad)
			for _, b := range bad {
				require.NotEmpty(r, b.Wrong())
				require.NotEmpty(r, b.Fix)
			}
			return
		}
		sound(r, p)
	})
}
