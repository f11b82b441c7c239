package main

import (
	"crypto/sha256"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"forel/cmd/bind"
	"forel/cmd/pipeline"
	"forel/geometry/wording"
)

// shelf is the folder of a class: it keeps every student's files in a folder of
// their own.
type shelf string

// stampName is a file that tells what a student's folder was made of.
const stampName = ".forel"

// stamp is what that file begins with; what is in each file follows, a line each.
func stamp(made string) string { return version() + "\n" + made }

// Has tells whether a folder was made of the same, and every file of it is as it
// was written.
func (s shelf) Has(name, made string) bool {
	folder := filepath.Join(string(s), name)
	data, err := os.ReadFile(filepath.Join(folder, stampName))
	list, same := strings.CutPrefix(string(data), stamp(made))
	if err != nil || !same {
		return false
	}
	for l := range strings.Lines(list) {
		digest, name, _ := strings.Cut(strings.TrimSuffix(l, "\n"), " ")
		is, err := os.ReadFile(filepath.Join(folder, name))
		if err != nil || fmt.Sprintf("%x", sha256.Sum256(is)) != digest {
			return false
		}
	}
	return true
}

// Put writes a student's folder.
func (s shelf) Put(name, made string, files []pipeline.File) error {
	var digests strings.Builder
	for _, f := range files {
		fmt.Fprintf(&digests, "%x %s\n", sha256.Sum256(f.Data), f.Name)
	}
	return writeFolder(filepath.Join(string(s), name), append(files, pipeline.File{Name: stampName, Data: []byte(stamp(made) + digests.String())}))
}

// warnEarlier tells of folders that an earlier run left and this one did not make:
// of students who are no longer in the roster, or whose row is now refused.
func (s shelf) warnEarlier(roll *pipeline.Roll, say voice) {
	now := map[string]bool{}
	for _, a := range roll.Students {
		now[a.Folder] = a.State != pipeline.Refused
	}
	entries, _ := os.ReadDir(string(s)) // what can't be read has been told of
	for _, e := range entries {
		folder := filepath.Join(string(s), e.Name())
		if _, err := os.Stat(filepath.Join(folder, stampName)); err == nil && !now[e.Name()] {
			fmt.Fprintf(say.w, "warning: %s is from an earlier roster and not part of this one; take it away\n", wording.Printable(folder))
		}
	}
}

// writeFolder writes a folder whole or not at all: under a temporary name
// beside its place, then renamed. A folder of that name that forel made before
// gives way; any other is left alone, and is an error.
func writeFolder(folder string, files []pipeline.File) (err error) {
	_, was := os.Lstat(folder)
	if was == nil {
		if _, err := os.Stat(filepath.Join(folder, stampName)); err != nil {
			return errors.New("is there already, and not from forel; move it away")
		}
	} else if !errors.Is(was, fs.ErrNotExist) {
		return cause(was)
	}
	temp, err := os.MkdirTemp(filepath.Dir(folder), ".forel-*")
	if err != nil {
		return cause(err)
	}
	defer os.RemoveAll(temp) // what is left of it
	fresh, old := filepath.Join(temp, "new"), filepath.Join(temp, "old")
	if err := os.Mkdir(fresh, 0o755); err != nil {
		return cause(err)
	}
	for _, f := range files {
		if err := os.WriteFile(filepath.Join(fresh, f.Name), f.Data, 0o644); err != nil {
			return cause(err)
		}
	}
	if was == nil {
		if err := os.Rename(folder, old); err != nil {
			return cause(err)
		}
	}
	if err := os.Rename(fresh, folder); err != nil {
		if was == nil {
			err = errors.Join(err, os.Rename(old, folder))
		}
		return cause(err)
	}
	return nil
}

// bind puts the pages of all students into one file, in order of names.
func (s shelf) bind(roll *pipeline.Roll) (err error) {
	name := filepath.Join(string(s), pipeline.PrintName)
	t, err := os.CreateTemp(string(s), ".forel-*")
	if err != nil {
		return elsewhere(fmt.Errorf("can't write %s: %w", name, cause(err)))
	}
	defer func() {
		if closed := t.Close(); err == nil {
			err = closed
		}
		if err == nil {
			err = os.Rename(t.Name(), name)
		}
		if err != nil {
			os.Remove(t.Name())
			err = elsewhere(fmt.Errorf("can't write %s: %w", name, cause(err)))
		}
	}()
	b := bind.New(t)
	for _, student := range roll.Done() {
		for i, file := range pipeline.Printed {
			data, err := os.ReadFile(filepath.Join(string(s), student.Folder, file))
			if err != nil {
				return err
			}
			title := ""
			if i == 0 {
				title = student.Name
			}
			if err := b.Add(title, data); err != nil {
				return err
			}
		}
	}
	if err := b.Close(); err != nil {
		return err
	}
	return t.Chmod(0o644)
}
