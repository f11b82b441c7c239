package jobfile_test

import (
	"fmt"

	"forel/cmd/jobfile"
)

func ExampleParse() {
	file, _, err := jobfile.Parse("case.toml", []byte(`
[[book]]
height = [221, 221.5]
width = "14,85 cm"
thickness = "1 1/4 in"
`))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(file.Job.Shared().Book().Height.Largest(), file.Job.Shared().Book().Thickness.Largest())
	// Output: 221.5 31.75
}

func ExampleParse_refused() {
	_, _, err := jobfile.Parse("case.toml", []byte(`
[[book]]
heigth = 221
width = 148.5
thickness = "9 1/0 in"
`))
	fmt.Println(err)
	// Output:
	// case.toml:2: book.height: missing; measure the book from head to tail
	// case.toml:3: book.heigth: unknown key; did you mean book.height
	// case.toml:5: book.thickness: "9 1/0 in" divides by zero; write a fraction such as 1/4 in
}
