package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"

	"forel/cmd/pipeline"
	"forel/cmd/shelf"
	"forel/geometry/wording"
)

const aboutNew = `
usage: forel new FILE [flags]

Writes a short job file with what each job is asked for: the book's measures, as
given or to be typed in, the materials and the paper. --full writes every setting
there is. --from begins with an old job: its materials, printer and habits stay,
its book is emptied. A file that is there already is left as it is.

Where a shop file stands beside it (see forel shop), the new job leaves out what
that says, and tells which materials of it there are to choose from.

example:
  forel new case.toml
  forel new case.toml --height 221 --width 148.5 --thickness 32
  forel new case.toml --units in --paper letter
  forel new next.toml --from case.toml
`

func flagsNew(f *flags) action {
	var n pipeline.New
	f.book()
	f.key("units", "units", "the `unit` you measure in: mm or in")
	f.key("kind", "kind", "what is made, a `kind` such as slipcase")
	f.key("paper", "print.paper", paperUsage)
	f.BoolVar(&n.Full, "full", false, "write every setting, each with what it means")
	f.BoolVar(&n.Example, "example", false, "write the measures of an invented book")
	f.key("printer", "print.printer", printerUsage)
	f.materials()
	f.shop = f.String("shop", "", shopUsage)
	f.base("from", "an old job `file` to keep the settings of; its book is emptied", &n.From)
	return func(out io.Writer, _ voice) error {
		name := f.Arg(0)
		switch {
		case f.NArg() != 1:
			return refuse("new takes one file name", "such as forel new case.toml")
		case name == "":
			return refuse("new takes a file name that is not empty", "such as forel new case.toml")
		}
		n.Flags, _ = f.keys()
		bad, err := f.readBase()
		if err = errors.Join(bad.Err(), err); err != nil {
			return err
		}
		n.Shop, bad, err = f.readShop()
		if err = errors.Join(bad.Err(), err); err != nil {
			return err
		}
		text, empty, err := n.Text()
		if err != nil {
			return err
		}
		if err := writeNew(name, text, out); err != nil {
			return err
		}
		then := "look it over"
		if empty {
			then = "type in what you measured"
		}
		_, err = fmt.Fprintf(out, "%s%s, then run forel templates %s\n", wrote(filepath.Split(name)), then, wording.Printable(name))
		return err
	}
}

// writeNew writes a file of the maker's own. One that is there already is left as it is.
func writeNew(name string, text []byte, out io.Writer) error {
	if _, err := os.Lstat(name); !errors.Is(err, fs.ErrNotExist) {
		if err == nil {
			if s, err := shelf.Open(context.Background(), filepath.Dir(name), ""); err == nil {
				s.Close(false) // takes away what a killed run left beside it
			}
			err = fmt.Errorf("%s is there already", name)
		} else {
			err = fmt.Errorf("can't write %s: %w", name, shelf.Cause(err))
		}
		return hinted(err, "choose another name, or move the file away")
	}
	folder, file := filepath.Dir(name), filepath.Base(name)
	const there = "name a folder that is there and can be written to"
	if _, err := os.Stat(folder); err != nil { // none is made for it
		return hinted(fmt.Errorf("can't write %s: %w", name, shelf.Cause(err)), there)
	}
	if _, err := writeInto(folder, pipeline.Result{Files: []pipeline.File{{Name: file, Data: text}}}, func() error { _, err := out.Write(nil); return err }); err != nil {
		return hinted(err, there)
	}
	return nil
}
