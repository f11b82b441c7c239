package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"strings"

	"forel/cmd/jobfile"
)

// readJob reads a job file.
func readJob(name string) ([]byte, error) {
	missing := "put a length with a space in quotes"
	if strings.HasSuffix(name, ".toml") {
		missing = "forel new " + name + " writes a starter job"
	}
	return readInput(name, missing, "name a job file")
}

// readInput reads a regular file, no more of it than could be a job; it is told
// what to do where there is none, or where it is something else.
func readInput(name, missing, other string) ([]byte, error) {
	f, err := os.Open(name)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, hinted(fmt.Errorf("%s: no such file", name), missing)
	}
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, cause(err))
	}
	defer f.Close()
	info, err := f.Stat()
	if err == nil && !info.Mode().IsRegular() {
		err = errors.New("not a file")
	}
	if err != nil {
		return nil, hinted(fmt.Errorf("%s: %w", name, cause(err)), other)
	}
	data, err := io.ReadAll(io.LimitReader(f, jobfile.MostBytes+1))
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, cause(err))
	}
	return data, nil
}
