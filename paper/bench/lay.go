package bench

import (
	"context"
	"slices"
	"sync"
	"time"

	"forel/geometry/job"
	"forel/geometry/parallel"
	"forel/paper/pack"
)

// Lay plans the bench work for all jobs together. A plan that can't be made
// returns job.Problems, all of them. The search ends when ctx does, with what was
// best until then.
func Lay(ctx context.Context, jobs []Job, o Options) (Plan, error) {
	groups, bad := prepared(ctx, jobs, o)
	keep := o.Keep
	if keep == 0 {
		keep = DefaultKeep
	}
	// Materials have nothing to do with each other but for the numbers of sheets.
	starts, short := make([][]start, len(groups)), make([]job.Problems, len(groups))
	efforts := shared(o.Effort, groups)
	parallel.Each(len(groups), func(i int) {
		g := groups[i]
		if g.lacking {
			return // that is told
		}
		var left []int
		if starts[i], left = g.layOut(ctx, efforts[i]); len(left) > 0 {
			short[i] = job.Problems{g.runOut(ctx, left)}
		}
	})
	if bad = append(bad, slices.Concat(short...)...); len(bad) > 0 {
		return Plan{}, bad
	}
	number, first := 1, make([]int, len(groups))
	for i := range groups {
		first[i] = number
		number += len(starts[i])
	}
	parallel.Each(len(groups), func(i int) {
		g := groups[i]
		cutAll(g, starts[i], first[i], keep)
		g.purchase()
		if !o.Loose {
			g.couldSave(ctx)
		}
		g.remark()
	})
	out := Plan{Jobs: jobs}
	for _, g := range groups {
		out.Groups = append(out.Groups, g.Group)
	}
	return out, nil
}

// prepared returns the groups of pieces with their stock, and what is wrong with it.
func prepared(ctx context.Context, jobs []Job, o Options) (groups []*group, bad job.Problems) {
	groups = gather(jobs, !o.Exact)
	bad = supply(groups, jobs, o.Before)
	for _, g := range groups {
		if o.Buy {
			g.buy()
		}
		if o.Loose {
			g.items = loose(g.items)
		}
		g.lot = o.Lot
		g.without(o.Before)
		g.asLarge()
		large := g.tooLarge(ctx)
		g.lacking, bad = len(large) > 0, append(bad, large...)
	}
	return groups, bad
}

// shared parts the effort among groups by their numbers of pieces. Progress is told as that
// of all.
func shared(e pack.Effort, groups []*group) []pack.Effort {
	total := 0
	for _, g := range groups {
		total += len(g.items)
	}
	var mu sync.Mutex
	all, done := make([]pack.Effort, len(groups)), make([]float64, len(groups))
	for i, g := range groups {
		part := float64(len(g.items)) / float64(total)
		all[i] = e
		if e.Time > 0 {
			all[i].Time = max(1, time.Duration(float64(e.Time)*part))
		}
		if e.Progress == nil {
			continue
		}
		all[i].Progress = func(fraction float64) {
			mu.Lock()
			defer mu.Unlock()
			done[i] = part * fraction
			sum := 0.0
			for _, d := range done {
				sum += d
			}
			e.Progress(sum)
		}
	}
	return all
}
