package fit_test

import (
	"fmt"

	"forel/geometry"
	"forel/geometry/fit"
	"forel/geometry/job"
	"forel/geometry/onepiece"
	"forel/geometry/plan"
	"forel/geometry/slipcase"
)

// An invented book.
func book() job.Book {
	return job.Book{Height: job.Readings{221}, Width: job.Readings{148.5}, Thickness: job.Readings{32}}
}

func ExampleOf() {
	j := slipcase.DefaultJob(geometry.MM)
	j.Books = []job.Book{book()}
	sound, refused, _ := j.Check()
	if len(refused) > 0 {
		fmt.Println(refused)
		return
	}
	p, err := sound.Make()
	if err != nil {
		fmt.Println(err)
		return
	}
	r := fit.Of(p)
	g, _ := r.Find(plan.Height, slipcase.AtMouth)
	for _, l := range g.Chain {
		fmt.Printf("%+.0f x %.2f mm  %s\n", l.Counts, l.Length, l.Name)
	}
	fmt.Printf("%.2f mm is left\n", g.Drawn)
	fmt.Println(r.Errors[r.Worst.Error].Name, "eats the most of it")
	// Output:
	// +1 x 227.30 mm  side, head to tail
	// -2 x 2.00 mm  board
	// -2 x 0.15 mm  lining
	// -2 x 0.35 mm  cloth
	// -1 x 221.00 mm  the book, head to tail
	// 1.30 mm is left
	// the board's thickness eats the most of it
}

func ExampleOf_card() {
	j := onepiece.DefaultJob(geometry.MM)
	j.Books = []job.Book{book()}
	sound, refused, _ := j.Check()
	if len(refused) > 0 {
		fmt.Println(refused)
		return
	}
	p, err := sound.Make()
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, check := range fit.Of(p).Checks() {
		fmt.Printf("%s: %s\n", check.Name, check.When)
	}
	// Output:
	// gauge strip: before the card is cut
	// card thickness: before anything is cut
	// folded strip: before the blank is cut
	// folded blank: when the blank is scored, cut and folded, before it is glued
	// finished case: when the glue is dry
}

func ExampleReport_checks() {
	j := slipcase.DefaultJob(geometry.MM)
	j.Books = []job.Book{book()}
	sound, refused, _ := j.Check()
	if len(refused) > 0 {
		fmt.Println(refused)
		return
	}
	p, err := sound.Make()
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, check := range fit.Of(p).Checks() {
		if check.Name == "stacked dry fit" {
			fmt.Println(check.See[1].In(geometry.ToTenthMM.Format))
			fmt.Println("else:", check.Fails.In(geometry.ToTenthMM.Format))
		}
	}
	// Output:
	// with the book on a side, its spine flush with the mouth edge, the side shows 3.2 mm past the fore-edge, at least 2.2 mm
	// else: cut again, larger by what is missing: all three walls where it is missing in thickness, sides and spine wall past the tail, sides with head and tail wall past the fore-edge
}
