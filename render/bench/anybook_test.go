package bench_test

import (
	"context"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/plan/plantest"
	"forel/geometry/slipcase"
	"forel/paper"
	"forel/paper/bench"
	"forel/paper/pack"
	"forel/render"
	draw "forel/render/bench"
	"forel/render/pagetest"
	"forel/render/record"
)

// The pages of any cases, with any titles and on any sheet, have words apart, off
// lines and within the margins.
func TestPagesOfAnyBooks(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		unit := rapid.SampledFrom([]geometry.Unit{geometry.MM, geometry.IN}).Draw(t, "unit of the pages")
		o := draw.Options{Setup: pagetest.AnySetup(t), Theme: render.DefaultTheme(), Round: pagetest.Rounding(unit)}
		var jobs []bench.Job
		for range rapid.IntRange(1, 2).Draw(t, "jobs") {
			p, _ := pagetest.AnyPlan(t)
			jobs = append(jobs, bench.Job{Plan: p, Unit: unit})
		}
		plan, err := bench.Lay(context.Background(), jobs, bench.Options{Effort: pack.Effort{Iterations: 5}})
		if err != nil {
			t.Skip("larger than any usual sheet")
		}
		pages := draw.Document(plan, o).Pages()
		for i, p := range pages {
			require.NotEmpty(t, p.Texts)
			require.Empty(t, pagetest.Faults(&p.Surface, o.Setup.Reach(p.Width > p.Height)), "page %d of %d", i+1, len(pages))
		}
	})
}

// Twelve small volumes with a divider between each two: on a small page there is no room for
// all numbers of so many short cuts, and what tells so stands clear of the others.
func TestNumbersWithoutRoom(t *testing.T) {
	j := slipcase.DefaultJob(geometry.MM)
	j.Compartments = "each"
	for range job.MostBooks {
		j.Books = append(j.Books, job.Book{Height: job.Readings{40}, Width: job.Readings{30}, Thickness: job.Readings{2}})
	}
	c, err := plantest.Make[slipcase.Case](j)
	require.NoError(t, err)
	plan, err := bench.Lay(context.Background(), []bench.Job{{Plan: c.Plan(), Unit: geometry.MM}}, bench.Options{Effort: pack.Effort{Iterations: 5}})
	require.NoError(t, err)
	o := options("A4", geometry.ToTenthMM)
	o.Setup.Sheet, err = paper.ParseSheet("166 x 166 mm", geometry.MM)
	require.NoError(t, err)
	o.Setup.Margins = paper.Margins{Left: 1, Right: 1, Top: 1, Bottom: 1}
	told := false
	for _, p := range draw.Document(plan, o).Pages() {
		told = told || slices.ContainsFunc(p.Texts, func(w record.Written) bool { return strings.HasPrefix(w.String, "No room for") })
		assert.Empty(t, pagetest.Faults(&p.Surface, o.Setup.Reach(false)))
	}
	assert.True(t, told, "all numbers have room")
}
