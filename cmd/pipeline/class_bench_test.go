package pipeline_test

import (
	"fmt"
	"math/rand/v2"
	"os"
	"runtime"
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

// BenchmarkLargeClass makes classes of different sizes, of invented books, and tells what a
// student takes: time and memory grow with the class, and no faster.
func BenchmarkLargeClass(b *testing.B) {
	for _, students := range []int{125, 250, 500} {
		b.Run(fmt.Sprint(students), func(b *testing.B) {
			roster := "name,height,width,thickness\n"
			random := rand.New(rand.NewPCG(1, 2))
			for i := range students {
				height := 150 + 170*random.Float64()
				roster += fmt.Sprintf("Student %d,%.1f,%.1f,%.1f\n", i+1, height, height*(0.6+0.2*random.Float64()), 12+48*random.Float64())
			}
			c := pipeline.Class{Source: pipeline.Source{Files: []pipeline.File{{Name: "roster.csv", Data: []byte(roster)}}}, Workers: runtime.NumCPU()}
			for b.Loop() {
				roll, err := c.Read()
				if err != nil {
					b.Fatal(err)
				}
				if err := roll.Make(b.Context(), nowhere{}, nil); err != nil {
					b.Fatal(err)
				}
				if _, unplanned, err := roll.Finish(b.Context(), nowhere{}, nil); unplanned != nil || err != nil {
					b.Fatal(unplanned, err)
				}
				var is runtime.MemStats
				runtime.GC()
				runtime.ReadMemStats(&is)
				b.ReportMetric(float64(is.HeapAlloc)/1e6, "MB-kept")
				runtime.KeepAlive(roll)
			}
			b.ReportMetric(b.Elapsed().Seconds()*1000/float64(b.N*students), "ms/student")
		})
	}
}
