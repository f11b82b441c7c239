package pipeline_test

import (
	"os"
	"testing"

	"forel/cmd/pipeline"
)

// nowhere takes files and drops them.
type nowhere struct{}

func (nowhere) Has(string, string) bool                   { return false }
func (nowhere) Put(string, string, []pipeline.File) error { return nil }

// BenchmarkClass makes all the files of a class of twenty, one student after the
// other.
func BenchmarkClass(b *testing.B) {
	data, err := os.ReadFile("../../testdata/class/roster.csv")
	if err != nil {
		b.Fatal(err)
	}
	c := pipeline.Class{Source: pipeline.Source{Files: []pipeline.File{{Name: "roster.csv", Data: data}}}}
	b.ReportAllocs()
	for b.Loop() {
		roll, err := c.Read()
		if err != nil {
			b.Fatal(err)
		}
		if err := roll.Make(b.Context(), nowhere{}, nil); err != nil || roll.Count(pipeline.Made) != 20 {
			b.Fatal(roll.Count(pipeline.Made))
		}
	}
}
