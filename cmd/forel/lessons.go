package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
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
	name := f.String("job", "", "job `file` to tell what it means for")
	f.shop = f.String("shop", "", shopUsage)
	f.beside = func() []string { return []string{*name} }
	return func(out io.Writer, say voice) error {
		var unread []error
		seen := map[string]bool{}
		for _, arg := range f.Args() {
			names, err := recordsIn(arg)
			if err != nil {
				unread = append(unread, err)
			}
			for _, n := range names {
				if n = filepath.Clean(n); seen[n] {
					continue
				}
				seen[n] = true
				data, err := readInput(n, "name records, or a folder with some", "name records, or a folder with some")
				if err != nil {
					unread = append(unread, err)
				}
				l.Files = append(l.Files, pipeline.File{Name: n, Data: data})
			}
		}
		if f.Changed("job") {
			data, err := readJob(*name)
			if err != nil {
				unread = append(unread, err)
			}
			l.For = &pipeline.File{Name: *name, Data: data}
			shop, wrong, err := f.readShop()
			if wrong != nil {
				return wrong
			}
			unread, l.Shop = append(unread, err), shop
		}
		if err := errors.Join(unread...); err != nil {
			return err
		}
		return f.report(l, out, say)
	}
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
