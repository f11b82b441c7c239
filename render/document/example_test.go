package document_test

import (
	"bytes"
	"fmt"

	"forel/paper"
	"forel/render"
	"forel/render/document"
)

// A page with a heading, a paragraph and steps to follow.
func ExampleDocument_Flow() {
	d := &document.Document{Options: document.Options{Setup: paper.DefaultSetup()}, Title: "Lining a board", Foot: "Not at true size."}
	blocks := []document.Block{
		d.Heading("Before you start"),
		d.Paragraph("Cut the lining larger than the board on every side.", render.BodySize, false),
	}
	blocks = append(blocks, d.Steps("Order of work", []string{"Brush paste on the lining.", "Lay the board into its middle."})...)
	fmt.Println(len(blocks), "blocks, on each page:", d.Flow(nil, blocks...))
	file, err := d.PDF()
	fmt.Println(bytes.HasPrefix(file, []byte("%PDF-")), err)
	// Output:
	// 5 blocks, on each page: [5]
	// true <nil>
}
