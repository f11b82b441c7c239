package pack

import (
	"context"
	"time"
)

// Solve lays the items out. A context that ends stops the search, not the answer: the best
// layout so far is the result.
func Solve(ctx context.Context, p Problem, e Effort) *Layout {
	m := newModel(&p)
	w := &watch{ctx: ctx, e: e, begin: time.Now(), told: -1}
	l := m.layout(m.in.Solve(e.Seed, w.spent))
	w.tell(1)
	return l
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
