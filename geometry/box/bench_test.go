package box

import "testing"

func BenchmarkProve(b *testing.B) {
	j := usualJob()
	ps, k := j.pieces(), j
	for b.Loop() {
		prove(ps, k)
	}
}
