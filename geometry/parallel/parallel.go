// Package parallel does things on all processors.
package parallel

import (
	"runtime"

	"golang.org/x/sync/errgroup"
)

// Each does something for every number below n. What is done for one must not touch
// what is done for another.
func Each(n int, do func(i int)) {
	var g errgroup.Group
	g.SetLimit(runtime.GOMAXPROCS(0))
	for i := range n {
		g.Go(func() error { do(i); return nil })
	}
	g.Wait() // none returns an error
}
