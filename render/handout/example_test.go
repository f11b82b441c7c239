package handout_test

import (
	"bytes"
	"fmt"

	"forel/geometry"
	"forel/geometry/slipcase"
	"forel/paper"
	"forel/render/document"
	"forel/render/handout"
)

// The handout of an invented book, and the empty worksheet for the same kind of
// case.
func ExampleBooklet() {
	j := slipcase.DefaultJob()
	j.Books = []slipcase.Book{{Height: slipcase.Readings{180}, Width: slipcase.Readings{120}, Thickness: slipcase.Readings{25}}}
	c, err := slipcase.Make(j)
	if err != nil {
		fmt.Println(err)
		return
	}
	o := handout.Options{Options: document.Options{Setup: paper.DefaultSetup(), Round: geometry.ToTenthMM}}
	whole, err := handout.Booklet(handout.Of(c), o)
	fmt.Println(bytes.HasPrefix(whole, []byte("%PDF-")), err)
	blank, err := handout.Worksheet(handout.Of(c), o)
	fmt.Println(bytes.HasPrefix(blank, []byte("%PDF-")), err)
	// Output:
	// true <nil>
	// true <nil>
}
