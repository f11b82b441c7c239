package pdf_test

import (
	"fmt"

	"forel/geometry"
	"forel/paper"
	"forel/render"
	"forel/render/pdf"
)

func ExampleDocument() {
	setup := paper.DefaultSetup()
	setup.Measured.Across = 199.2 // what the printer makes of 200 mm
	width, height := setup.Size(false)
	page := &pdf.Page{Width: width, Height: height, Setup: &setup}
	page.Bookmark("The circle")
	page.Stroke(geometry.Circle(geometry.Pt(105, 148), 50), render.Stroke{Width: 0.35, Color: render.Black})
	doc := pdf.Document{Title: "A circle", Pages: []*pdf.Page{page}}
	file, err := doc.Bytes()
	fmt.Println(string(file[:8]), err)
	// Output: %PDF-1.7 <nil>
}
