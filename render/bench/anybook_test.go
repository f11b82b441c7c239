package bench_test

import (
	"context"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/paper/bench"
	"forel/paper/pack"
	"forel/render"
	draw "forel/render/bench"
	"forel/render/pagetest"
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
