package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"strings"

	"forel/cmd/jobfile"
	"forel/cmd/shelf"
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
func readInput(name, missing, other string) (data []byte, err error) {
	switch info, err := os.Stat(name); {
	case errors.Is(err, fs.ErrNotExist):
		return nil, hinted(fmt.Errorf("%s: no such file", name), missing)
	case err == nil && !info.Mode().IsRegular():
		return nil, hinted(fmt.Errorf("%s: not a file", name), other)
	}
	f, err := os.Open(name)
	if err == nil {
		defer f.Close()
		data, err = io.ReadAll(io.LimitReader(f, jobfile.MostBytes+1))
	}
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, shelf.Cause(err))
	}
	return data, nil
}
