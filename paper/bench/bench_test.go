package bench_test

import (
	"context"
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"forel/paper/bench"
	"forel/paper/pack"
)

// BenchmarkLay lays out 1 to 1,000 cases of about 16 pieces each: a first plan,
// and the search that forel stock makes where nothing is asked for.
func BenchmarkLay(b *testing.B) {
	all := class(1000)
	for _, steps := range []int{0, 5000} {
		for _, n := range []int{1, 10, 100, 1000} {
			b.Run(fmt.Sprintf("steps=%d/jobs=%d", steps, n), func(b *testing.B) {
				for b.Loop() {
					p, err := bench.Lay(context.Background(), all[:n], bench.Options{Effort: pack.Effort{Iterations: steps}})
					require.NoError(b, err)
					sheets, settings := 0, 0
					for _, g := range p.Groups {
						sheets, settings = sheets+len(g.Sheets), settings+g.Settings
					}
					b.ReportMetric(float64(sheets), "sheets")
					b.ReportMetric(float64(settings), "settings")
				}
			})
		}
	}
}
