package bench_test

import (
	"context"
	"fmt"
	"os"
	"testing"
	"time"

	"forel/paper/bench"
	"forel/paper/pack"
)

func TestCurveScratch(t *testing.T) {
	if os.Getenv("CURVE") == "" {
		t.Skip()
	}
	for _, n := range []int{1, 20, 100} {
		jobs := class(t, n)
		for _, it := range []int{0, 3000, 30000} {
			at := time.Now()
			p, err := bench.Lay(context.Background(), jobs, bench.Options{Effort: pack.Effort{Iterations: it}})
			took := time.Since(at)
			if err != nil {
				fmt.Println(n, it, took, err)
				continue
			}
			fmt.Println(n, it, took)
			fmt.Print(summary(p))
		}
	}
}
