package bench_test

import (
	"context"
	"fmt"
	"math/rand/v2"
	"sync"
	"testing"

	"github.com/stretchr/testify/require"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/plan"
	"forel/geometry/plan/plantest"
	"forel/geometry/slipcase"
	"forel/paper"
	"forel/paper/bench"
	"forel/paper/money"
	"forel/paper/pack"
	"forel/paper/stock"
	"forel/render"
	draw "forel/render/bench"
)

// cases are those of twelve invented books.
var cases = sync.OnceValue(func() (out []plan.Plan) {
	r := rand.New(rand.NewPCG(3, 5))
	tenth := func(lo, hi float64) geometry.Length { return geometry.Length(lo + r.Float64()*(hi-lo)).Round(0.1) }
	for i := range 12 {
		j := slipcase.DefaultJob(geometry.MM)
		j.Title = fmt.Sprintf("Book %d of a long and winding title", i+1)
		if i%2 == 0 {
			j.Title = fmt.Sprintf("Book %d", i+1)
		}
		h := tenth(110, 330)
		j.Books = []job.Book{{Height: job.Readings{h}, Width: job.Readings{h * 0.7}, Thickness: job.Readings{tenth(4, 60)}}}
		c, err := plantest.Make[slipcase.Case](j)
		require.NoError(plantest.Must{}, err)
		out = append(out, c.Plan())
	}
	return out
})

// planned lays out the first n cases.
func planned(t testing.TB, n int, unit geometry.Unit) bench.Plan {
	t.Helper()
	var jobs []bench.Job
	for _, c := range cases()[:n] {
		jobs = append(jobs, bench.Job{Plan: c, Unit: unit})
	}
	price := money.Of(21).Div(money.Of(4))
	jobs[0].Stock = []stock.Stock{{Material: geometry.Paper, Width: 700, Height: 500, Grain: geometry.GrainWidth, Trim: 5, Kerf: 1, Price: &price}}
	p, err := bench.Lay(context.Background(), jobs, bench.Options{Effort: pack.Effort{Iterations: 200}})
	require.NoError(t, err)
	return p
}

func options(sheet string, r geometry.Rounding) draw.Options {
	setup := paper.DefaultSetup()
	for _, s := range paper.Sheets {
		if s.Name == sheet {
			setup.Sheet = s
		}
	}
	return draw.Options{Setup: setup, Theme: render.DefaultTheme(), Round: r}
}
