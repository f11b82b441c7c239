package pack

import "time"

// Effort is how long to look for a better layout. The zero Effort takes the
// first good layout. A search ends early when the layout is proved
// optimal or its context ends; what was best until then is the result.
type Effort struct {
	// Iterations limits the steps of the search. The same problem, seed
	// and Iterations, with no Time, give the same layout on every machine.
	Iterations int
	// Time limits the search by the clock, looked at between steps only. With
	// both, the first limit reached ends it.
	Time time.Duration
	Seed uint64
	// Progress, where set, is called now and then from the goroutine that solves,
	// with the fraction of the effort spent, 0 to 1.
	Progress func(fraction float64)
}
