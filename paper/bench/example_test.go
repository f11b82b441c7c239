package bench_test

import (
	"context"
	"fmt"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/slipcase"
	"forel/paper/bench"
)

// One case of a book of 221 x 148.5 x 32 mm, on the usual sizes.
func ExampleLay() {
	j := slipcase.DefaultJob(geometry.MM)
	j.Title = "Harbour log" // invented
	j.Books = []job.Book{{Height: job.Readings{221}, Width: job.Readings{148.5}, Thickness: job.Readings{32}}}
	sound, refused, _ := j.Check()
	if len(refused) > 0 {
		fmt.Println(refused)
		return
	}
	c, err := sound.Make()
	if err != nil {
		fmt.Println(err)
		return
	}
	p, err := bench.Lay(context.Background(), []bench.Job{{Plan: c, Unit: geometry.MM}}, bench.Options{})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, g := range p.Groups {
		fmt.Println(g.Label(), "-", g.Stock[0].Size())
	}
	// Output:
	// board - A1, 594 × 841 mm
	// lining - B1, 707 × 1000 mm
	// cloth - roll 1370 mm wide
	// paper - B1, 707 × 1000 mm
}
