package bench

import (
	"context"
	"errors"
	"time"

	"forel/paper/pack"
)

// Lay plans the bench work for all jobs together. A plan that can't be made
// gives Problems, all of them. The search ends when ctx does, with what was
// best until then.
func Lay(ctx context.Context, jobs []Job, o Options) (Plan, error) {
	groups := gather(jobs)
	bad := supply(groups, jobs)
	for _, g := range groups {
		bad = append(bad, g.tooLarge(jobs)...)
	}
	if len(bad) > 0 {
		return Plan{}, bad
	}
	keep := o.Keep
	if keep == 0 {
		keep = DefaultKeep
	}
	out := Plan{Jobs: jobs}
	total := 0
	for _, g := range groups {
		total += len(g.items)
	}
	number, done := 1, 0
	for _, g := range groups {
		starts, kerf, err := g.layOut(ctx, jobs, share(o.Effort, len(g.items), done, total), o.Loose)
		done += len(g.items)
		var ps Problems
		if errors.As(err, &ps) {
			bad = append(bad, ps...)
			continue
		}
		if err != nil {
			return Plan{}, err
		}
		cutAll(g, starts, number, keep, kerf)
		number += len(starts)
		g.purchase(kerf)
		if !o.Loose {
			g.couldSave(ctx, jobs)
		}
		g.remark(jobs)
		out.Groups = append(out.Groups, g.Group)
	}
	if len(bad) > 0 {
		return Plan{}, bad
	}
	return out, nil
}

// share gives a group its part of the effort, by its number of pieces; progress
// is told as that of all groups.
func share(e pack.Effort, items, done, total int) pack.Effort {
	part, before := float64(items)/float64(total), float64(done)/float64(total)
	if e.Time > 0 {
		e.Time = max(1, time.Duration(float64(e.Time)*part))
	}
	if tell := e.Progress; tell != nil {
		e.Progress = func(p pack.Progress) {
			p.Fraction = before + part*p.Fraction
			tell(p)
		}
	}
	return e
}
