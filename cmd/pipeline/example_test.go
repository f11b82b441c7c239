package pipeline_test

import (
	"context"
	"fmt"

	"forel/cmd/pipeline"
)

// A job file of an invented book goes in, the files to print and to cut come out.
func ExampleTemplates() {
	job := []byte("[[book]]\nheight = 221\nwidth = 148.5\nthickness = 32\n")
	t := pipeline.Templates{Only: []string{"board"}}
	t.Files = []pipeline.File{{Name: "case.toml", Data: job}}
	r, err := t.Make(context.Background())
	if err != nil {
		fmt.Println(err) // a line a problem, with its file, line and key
		return
	}
	for _, f := range r.Files {
		fmt.Println(f.Name)
	}
	// Output:
	// side.svg
	// spine-wall.svg
	// head-wall.svg
	// tail-wall.svg
	// templates.pdf
}
