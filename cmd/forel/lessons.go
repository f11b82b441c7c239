package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"forel/cmd/pipeline"
	"forel/cmd/shelf"
)

const aboutLessons = `
usage: forel lessons RECORD.record.toml|FOLDER ... [flags]

Reads records that forel record wrote, one of each case, and tells what they teach: how
far board and cloth are off what the jobs said, how far cutting and placing are off, how
your cases come out, each with the interval that holds the truth in 19 of 20 such samples.
It prints the lines of [uncertainty] that are yours. Of a folder it takes all records in
it and in the folders below.

Nothing is concluded from fewer than 5 cases. A length so far off that it is more likely
a slip is told and left out.

With --job it tells what that means for a job: the smallest clearances with which the
book sticks no more than once in 50, and how its fit changes.

example:
  forel lessons cases/
  forel lessons cases/ --job next.toml
`

func flagsLessons(f *flags) action {
	var l pipeline.Lessons
	f.settings(l.Settings())
	f.base("job", "job `file` to tell what it means for", &l.For)
	f.shop = f.String("shop", "", shopUsage)
	f.source, f.several, f.records = &l.Source, true, allRecords
	f.read = func(name string) ([]byte, error) {
		const named = "name records, or a folder with some"
		return readInput(name, named, named)
	}
	return f.makes(&l)
}

// allRecords returns the records that names stand for, each once.
func allRecords(args []string) (all []string, err error) {
	var unread []error
	for _, arg := range args {
		names, err := recordsIn(arg)
		unread = append(unread, err)
		for _, n := range names {
			if n = filepath.Clean(n); !slices.Contains(all, n) {
				all = append(all, n)
			}
		}
	}
	return all, errors.Join(unread...)
}

// recordsIn returns the records that a name stands for: itself, or all in a folder and
// below it, in order of their names.
func recordsIn(name string) (names []string, err error) {
	if info, err := os.Stat(name); err != nil || !info.IsDir() {
		return []string{name}, nil
	}
	err = filepath.WalkDir(name, func(at string, d fs.DirEntry, err error) error {
		if err == nil && d.Type().IsRegular() && strings.HasSuffix(at, pipeline.RecordSuffix) {
			names = append(names, at)
		}
		return err
	})
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, shelf.Cause(err))
	}
	return names, nil
}
