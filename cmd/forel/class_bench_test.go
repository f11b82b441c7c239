package main

import (
	"context"
	"os"
	"testing"

	"forel/cmd/roster"
)

// BenchmarkStudent makes all the files of one student after the other.
func BenchmarkStudent(b *testing.B) {
	data, err := os.ReadFile("../../testdata/class/roster.csv")
	if err != nil {
		b.Fatal(err)
	}
	rows, err := roster.Read("roster.csv", data, nil)
	if err != nil {
		b.Fatal(err)
	}
	c := class{folder: b.TempDir(), workers: 1}
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		s := student{Row: rows[i%len(rows)]}
		s.Given[0] = byte(i / len(rows)) // not kept
		if s.work(context.Background(), &c); s.state != rowMade {
			b.Fatal(s.err)
		}
	}
}
