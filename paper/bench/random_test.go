package bench_test

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"sync"

	"github.com/stretchr/testify/require"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/plan/plantest"
	"forel/geometry/slipcase"
	"forel/paper/bench"
)

// caseJob makes the case of an invented book.
func caseJob(t require.TestingT, title string, height, width, thick geometry.Length, change ...func(*slipcase.Job)) bench.Job {
	j := slipcase.DefaultJob(geometry.MM)
	j.Title = title
	j.Books = []job.Book{{Height: job.Readings{height}, Width: job.Readings{width}, Thickness: job.Readings{thick}}}
	for _, c := range change {
		c(&j)
	}
	c, err := plantest.Make[slipcase.Case](j)
	require.NoError(t, err)
	return bench.Job{Plan: c.Plan(), Unit: j.Unit}
}

// class returns the cases of n invented books of every size, the same ones each time.
func class(n int) []bench.Job {
	if n > len(forty()) {
		return made(n)
	}
	return slices.Clone(forty()[:n])
}

// forty are those of the largest class of the tests.
var forty = sync.OnceValue(func() []bench.Job { return made(40) })

func made(n int) []bench.Job {
	r := rand.New(rand.NewPCG(7, 11))
	tenth := func(lo, hi float64) geometry.Length { return geometry.Length(lo + r.Float64()*(hi-lo)).Round(0.1) }
	out := make([]bench.Job, n)
	for i := range out {
		h := tenth(120, 330)
		out[i] = caseJob(plantest.Must{}, fmt.Sprintf("Book %d", i+1), h, (h * geometry.Length(0.62+r.Float64()*0.2)).Round(0.1), tenth(9, 62), func(j *slipcase.Job) {
			switch r.IntN(5) {
			case 0:
				j.Covering = slipcase.AllPaper
			case 1:
				j.Covering = slipcase.SidesOnly
			case 2:
				j.Board.Thickness = 3
			}
		})
	}
	return out
}
