package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"

	"forel/cmd/pipeline"
	"forel/geometry/wording"
)

const aboutNew = `
usage: forel new FILE [flags]

Writes a commented job file to start from, with every setting at its default
and the measurements of an invented book: put your own in their place. A file
that is there already is left as it is.

example:
  forel new case.toml
  forel new case.toml --units in --paper letter
`

func flagsNew(f *flags) action {
	units := f.String("units", "mm", "the `unit` you measure in: mm or in")
	paper := f.String("paper", "a4", paperUsage)
	return func(out io.Writer, _ voice) error {
		name := f.Arg(0)
		switch {
		case f.NArg() != 1:
			return refuse("new takes one file name", "such as forel new case.toml")
		case name == "":
			return refuse("new takes a file name that is not empty", "such as forel new case.toml")
		}
		starter, err := pipeline.New(*units, *paper)
		if err != nil {
			return err
		}
		if _, err := os.Lstat(name); !errors.Is(err, fs.ErrNotExist) {
			if err == nil {
				err = fmt.Errorf("%s is there already", name)
			}
			return hinted(err, "choose another name, or move the file away")
		}
		if err := writeFiles([]pipeline.File{{Name: name, Data: starter}}); err != nil {
			return hinted(err, "name a folder that is there and can be written to")
		}
		_, err = fmt.Fprintf(out, "%stype in what you measured, then run forel templates %s\n", wrote(filepath.Dir(name), filepath.Base(name)), wording.Printable(name))
		return err
	}
}
