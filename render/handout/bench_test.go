package handout_test

import (
	"testing"

	"forel/render/handout"
)

func BenchmarkPDF(b *testing.B) {
	s, o := subjectOf(b, jobs()["ordinary"]), on(b, "A4")
	b.ReportAllocs()
	for b.Loop() {
		if _, err := handout.Document(s, o).PDF(); err != nil {
			b.Fatal(err)
		}
	}
}
