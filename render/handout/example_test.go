package handout_test

import (
	"bytes"
	"fmt"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/plan/plantest"
	"forel/geometry/slipcase"
	"forel/paper"
	"forel/render/document"
	"forel/render/handout"
)

// The handout of an invented book, and the empty worksheet for the same kind of
// case.
func ExampleDocument() {
	j := slipcase.DefaultJob(geometry.MM)
	j.Books = []job.Book{{Height: job.Readings{180}, Width: job.Readings{120}, Thickness: job.Readings{25}}}
	c, err := plantest.Make[slipcase.Case](j)
	if err != nil {
		fmt.Println(err)
		return
	}
	o := handout.Options{Options: document.Options{Setup: paper.DefaultSetup(), Round: geometry.ToTenthMM}}
	whole, err := handout.Document(c.Plan(), o).PDF()
	fmt.Println(bytes.HasPrefix(whole, []byte("%PDF-")), err)
	blank, err := handout.Worksheet(c.Plan(), o).PDF()
	fmt.Println(bytes.HasPrefix(blank, []byte("%PDF-")), err)
	// Output:
	// true <nil>
	// true <nil>
}
