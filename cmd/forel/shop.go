package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"

	"forel/cmd/jobfile"
	"forel/cmd/pipeline"
	"forel/cmd/shelf"
)

// noShop is what --shop says to do without a shop file.
const noShop = "none"

// readShop reads the shop file: that which --shop names, or else the one beside the job;
// without a job, in the folder one is in. There need be none.
func (f *flags) readShop() (shop pipeline.File, bad jobfile.Issues, err error) {
	name := *f.shop
	switch {
	case name == noShop:
		return shop, nil, nil
	case f.Changed("shop") && name == "":
		return shop, refuse("--shop names no file", "such as --shop "+jobfile.ShopName+", or --shop "+noShop), nil
	case name == "":
		if name, bad = shopBeside(f.beside()); name == "" {
			return shop, bad, nil
		}
	}
	data, err := readInput(name, "forel shop "+name+" writes one to begin with", "name a shop file")
	return pipeline.File{Name: name, Data: data}, nil, err
}

// shopBeside returns the shop file beside some jobs; "" where there is none. Jobs that each
// have another are refused: a size must not hang on which is named first.
func shopBeside(jobs []string) (name string, bad jobfile.Issues) {
	if len(jobs) == 0 {
		jobs = []string{""}
	}
	for i, job := range jobs {
		at := filepath.Join(filepath.Dir(job), jobfile.ShopName)
		if _, err := os.Lstat(at); errors.Is(err, fs.ErrNotExist) {
			at = ""
		}
		if i > 0 && at != name && !sameFile(at, name) {
			return "", refuse(fmt.Sprintf("%s and %s do not have the same shop file beside them", jobs[0], job), "name one with --shop, or give --shop "+noShop)
		}
		if i == 0 {
			name = at
		}
	}
	return name, nil
}

// sameFile tells whether two names are of one file.
func sameFile(a, b string) bool {
	is, err := os.Stat(a)
	other, wrong := os.Stat(b)
	return err == nil && wrong == nil && os.SameFile(is, other)
}

// writeShop writes the shop file as it is to be; a trial only tells what is in the way. It is
// refused where the file is not as it was read, so that of two programs that change it
// neither undoes what the other did.
func writeShop(read, now pipeline.File, trial bool) error {
	stays := read.Name + " is as it was"
	at, err := filepath.EvalSymlinks(read.Name)
	if err != nil {
		return hinted(fmt.Errorf("can't write %s: %w", read.Name, shelf.Cause(err)), stays)
	}
	return renew(at, stays, func(is []byte) ([]byte, error) {
		switch {
		case !bytes.Equal(is, read.Data):
			return nil, hinted(fmt.Errorf("%s was changed by another program meanwhile, and nothing was taken", read.Name), "run it again")
		case trial:
			return nil, nil
		}
		return now.Data, nil
	}, nil)
}

func flagsShop(f *flags) action {
	list := f.Bool("list", false, "print the names of what a shop file has")
	names := f.String("names", "", "print the names that a `key` of a job file can have, a line each, such as board.material: for the completion of a shell")
	return func(out io.Writer, say voice) error {
		name := jobfile.ShopName
		switch {
		case f.NArg() > 1:
			return refuse("shop takes one file name", "such as forel shop "+jobfile.ShopName)
		case f.NArg() == 1 && f.Arg(0) == "":
			return refuse("shop takes a file name that is not empty", "such as forel shop "+jobfile.ShopName)
		case f.NArg() == 1:
			name = f.Arg(0)
		}
		if *list || f.Changed("names") {
			data, err := readInput(name, "forel shop "+name+" writes one to begin with", "name a shop file")
			if err != nil {
				return err
			}
			shop, err := jobfile.ReadShop(name, data)
			if err != nil {
				return err
			}
			if *list {
				_, err = out.Write(shop.List())
				return err
			}
			named, err := shop.Named(*names)
			for _, n := range named {
				fmt.Fprintln(out, n)
			}
			return err
		}
		if err := writeNew(name, jobfile.ShopStarter(), out); err != nil {
			return err
		}
		_, err := fmt.Fprintf(out, "%stype in what you have; a job beside it then says board = \"grey board 2 mm\"\n", wrote(filepath.Split(name)))
		return err
	}
}
