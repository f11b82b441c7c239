package pack

import (
	"context"
	"sort"
	"time"
)

// Solve lays the items out. The error is an *InputError that names every fault,
// or a *ShortError, beside which there is a layout of what went in. A context
// that ends stops the search, not the answer: the best layout so far is
// the result.
func Solve(ctx context.Context, p Problem, e Effort) (*Layout, error) {
	m, err := newModel(&p)
	if err != nil {
		return nil, err
	}
	w := &watch{ctx: ctx, e: e, begin: time.Now(), told: -1}
	s := m.in.Solve(e.Seed, w.spent)
	l := m.layout(s)
	w.tell(1)
	if len(s.Left) == 0 {
		return l, nil
	}
	short := &ShortError{Of: len(p.Items)}
	for _, item := range s.Left {
		short.Left = append(short.Left, m.members[item]...)
	}
	sort.Ints(short.Left)
	short.describe(&p)
	return l, short
}

// watch tells the search when to stop, and the caller how far it is.
type watch struct {
	ctx   context.Context
	e     Effort
	begin time.Time
	told  float64
}

// spent returns the share of the effort spent, 1 to stop.
func (w *watch) spent(steps int) float64 {
	if w.e.Iterations <= 0 && w.e.Time <= 0 || w.ctx.Err() != nil {
		return 1
	}
	f := 0.0
	if w.e.Iterations > 0 {
		f = float64(steps) / float64(w.e.Iterations)
	}
	if w.e.Time > 0 {
		f = max(f, float64(time.Since(w.begin))/float64(w.e.Time))
	}
	f = min(f, 1)
	if f >= w.told+0.01 {
		w.tell(f)
	}
	return f
}

func (w *watch) tell(fraction float64) {
	w.told = fraction
	if w.e.Progress != nil {
		w.e.Progress(fraction)
	}
}
