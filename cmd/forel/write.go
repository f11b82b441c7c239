package main

import (
	"cmp"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"

	"golang.org/x/sync/errgroup"

	"forel/cmd/pipeline"
	"forel/geometry/wording"
)

// writeFiles writes files whole or not at all: each under a temporary name
// beside its place, and only when all are written, renamed. On failure nothing
// new is left behind.
func writeFiles(files []pipeline.File) (err error) {
	temps := make([]string, len(files))
	defer func() {
		if err != nil {
			for _, t := range temps {
				if t != "" {
					os.Remove(t)
				}
			}
		}
	}()
	var together errgroup.Group
	together.SetLimit(runtime.GOMAXPROCS(0))
	wrong := make([]error, len(files))
	for i, f := range files {
		together.Go(func() error { temps[i], wrong[i] = writeBeside(f); return nil })
	}
	together.Wait() // what is wrong is told of the first file that has it
	if err := cmp.Or(wrong...); err != nil {
		return err
	}
	for i, f := range files {
		if err := os.Rename(temps[i], f.Name); err != nil {
			return fmt.Errorf("can't write %s: %w", f.Name, cause(err))
		}
	}
	return nil
}

// writeInto writes files into a folder, all or none, and makes it where it is not
// there. Their names are without it.
func writeInto(folder string, files []pipeline.File) error {
	undo, err := makeFolder(folder)
	if err != nil {
		return elsewhere(err)
	}
	placed := make([]pipeline.File, len(files))
	for i, f := range files {
		placed[i] = pipeline.File{Name: filepath.Join(folder, f.Name), Data: f.Data}
	}
	if err := writeFiles(placed); err != nil {
		undo()
		return elsewhere(err)
	}
	return nil
}

// elsewhere is the failure of a folder that can't be written to.
func elsewhere(err error) error { return hinted(err, "give another folder with --out") }

// wrote says which files were written, and where; every command says it so.
func wrote(folder string, names ...string) string {
	what := wording.And(names)
	if filepath.Clean(folder) == "." {
		return fmt.Sprintf("wrote %s\n", wording.Printable(what))
	}
	return fmt.Sprintf("wrote %s to %s\n", wording.Printable(what), wording.Printable(folder))
}

// writeBeside writes a file under a temporary name beside its place and returns that
// name, where it made one.
func writeBeside(f pipeline.File) (temp string, err error) {
	if info, err := os.Stat(f.Name); err == nil && info.IsDir() {
		return "", fmt.Errorf("%s is a folder", f.Name)
	}
	t, err := os.CreateTemp(filepath.Dir(f.Name), ".forel-*")
	if err != nil {
		return "", fmt.Errorf("can't write %s: %w", f.Name, cause(err))
	}
	_, err = t.Write(f.Data)
	if err == nil {
		err = t.Chmod(0o644)
	}
	if closed := t.Close(); err == nil {
		err = closed
	}
	if err != nil {
		return t.Name(), fmt.Errorf("can't write %s: %w", f.Name, cause(err))
	}
	return t.Name(), nil
}

// cause returns what the system said, without the name of a file, which may be
// one the maker never typed.
func cause(err error) error {
	var path *fs.PathError
	var link *os.LinkError
	switch {
	case errors.As(err, &path):
		return path.Err
	case errors.As(err, &link):
		return link.Err
	}
	return err
}

// makeFolder makes a folder with its parents and returns what takes away again
// those that it made.
func makeFolder(name string) (undo func(), err error) {
	var made []string
	for dir := filepath.Clean(name); ; dir = filepath.Dir(dir) {
		if _, err := os.Stat(dir); err == nil || dir == filepath.Dir(dir) {
			break
		}
		made = append(made, dir)
	}
	undo = func() {
		for _, dir := range made { // the deepest first; one that holds files stays
			os.Remove(dir)
		}
	}
	if err := os.MkdirAll(name, 0o755); err != nil {
		undo()
		return nil, fmt.Errorf("can't make the folder %s: %w", name, cause(err))
	}
	return undo, nil
}
