package timetable

import (
	"context"
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"
)

// BenchmarkMake makes the timetable of cases with nine spells each.
func BenchmarkMake(b *testing.B) {
	h, err := ParseHours(UsualHours)
	require.NoError(b, err)
	for _, n := range []int{1, 3, 20, 100, 1000, 10_000} {
		var cases []Case
		for i := range n {
			var c Case
			for k, work := range []int{20, 40, 5, 45, 30, 15, 33, 53, 5} {
				c.Blocks = append(c.Blocks, Block{Parts: []Part{{k + 1, fmt.Sprint(k), work + i*k%7}}, Dry: []int{0, 0, 0, 720, 10, 120, 0, 720, 0}[k]})
			}
			cases = append(cases, c)
		}
		b.Run(fmt.Sprintf("%d cases", n), func(b *testing.B) {
			for b.Loop() {
				got, err := Make(context.Background(), cases, h, start)
				require.NoError(b, err)
				b.ReportMetric(got.Last().Sub(got.Earliest).Minutes(), "min-over-bound")
			}
		})
	}
}
