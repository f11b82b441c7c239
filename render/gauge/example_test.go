package gauge_test

import (
	"fmt"

	"forel/paper"
	"forel/render/document"
	"forel/render/gauge"
)

func ExampleDocument() {
	sheet, _ := paper.ParseSheet("a4", 0)
	o := gauge.Options{Options: document.Options{Setup: paper.Setup{Sheet: sheet, Margins: paper.EvenMargins(gauge.Margin)}}}
	if err := o.Check(); err != nil {
		fmt.Println(err)
		return
	}
	file, err := gauge.Document(o).PDF()
	fmt.Println(string(file[:8]), err)
	// Output: %PDF-1.7 <nil>
}
