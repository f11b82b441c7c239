package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"

	"forel/cmd/jobfile"
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

func runNew(args []string, out io.Writer, _ voice) error {
	f := flagSet("new", aboutNew, out)
	units := f.String("units", "mm", "the `unit` you measure in: mm or in")
	paper := f.String("paper", "a4", paperUsage)
	if err := parseFlags(f, args); err != nil {
		return err
	}
	if f.NArg() != 1 {
		return refusal{"new takes one file name", "such as forel new case.toml"}
	}
	name := f.Arg(0)
	if name == "" {
		return refusal{"new takes a file name that is not empty", "such as forel new case.toml"}
	}
	starter, err := starterFor(*units, *paper)
	if err != nil {
		return err
	}
	if _, err := os.Lstat(name); !errors.Is(err, fs.ErrNotExist) {
		if err == nil {
			err = fmt.Errorf("%s is there already", name)
		}
		return failure{err, "choose another name, or move the file away"}
	}
	if err := writeFiles([]output{{name, starter}}); err != nil {
		return failure{err, "name a folder that is there and can be written to"}
	}
	shown := wording.Printable(name)
	if _, err := fmt.Fprintf(out, "%stype in what you measured, then run forel templates %s\n", wrote(filepath.Dir(name), filepath.Base(name)), shown); err != nil {
		return failure{err, ""}
	}
	return nil
}

// starterFor gives the starter job for a unit and a sheet as they were typed.
func starterFor(units, sheet string) ([]byte, error) {
	setup, unit, err := jobfile.Print("", nil, []jobfile.Flag{
		{Name: "--units", Key: "units", Value: units},
		{Name: "--paper", Key: "print.paper", Value: sheet},
	})
	if err != nil {
		return nil, err
	}
	if err := setup.Check(); err != nil {
		return nil, fmt.Errorf("--paper: %w", err)
	}
	return jobfile.StarterFor(unit, setup.Sheet), nil
}
