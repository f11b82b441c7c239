package main

import (
	"context"
	"crypto/sha256"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"sync"

	"forel/cmd/jobfile"
	"forel/cmd/roster"
	"forel/geometry"
	"forel/geometry/onepiece"
	"forel/geometry/slipcase"
	"forel/paper"
	"forel/render/cutlist"
	"forel/render/handout"
	"forel/render/index"
)

// stampName is a file that tells what a student's folder was made of.
const stampName = ".forel"

// make works on the rows, several at a time, until all are done or the context
// ends. What it gives is in the order of the rows.
func (c *class) make(ctx context.Context, rows []roster.Row, say voice) []student {
	done := make([]student, len(rows))
	bar := say.progress("making")
	defer bar.done()
	next := make(chan int)
	var wait sync.WaitGroup
	for range min(c.workers, len(rows)) {
		wait.Go(func() {
			for i := range next {
				done[i].work(ctx, c)
			}
		})
	}
	for i, r := range rows {
		done[i].Row = r
	}
	for i := range rows {
		if ctx.Err() != nil {
			break
		}
		if c.begun != nil {
			c.begun(i)
		}
		next <- i
		bar.at(float64(i) / float64(len(rows)))
	}
	close(next)
	wait.Wait()
	return done
}

// work makes one student's folder.
func (s *student) work(ctx context.Context, c *class) {
	if s.Refused != nil {
		s.state = rowRefused
		return
	}
	var err error
	if s.loaded, err = workOut(s.File, c.round); err != nil {
		s.refuse(err)
		return
	}
	s.date = c.date
	defer s.slim()
	folder := filepath.Join(c.folder, s.Folder)
	stamp := fmt.Sprintf("%s\n%x\n%s\n%d\n", version(), s.Given, c.round, c.date.Unix())
	if upToDate(folder, stamp) {
		s.state = rowKept
		return
	}
	files, err := s.files(c)
	if err == nil && ctx.Err() != nil {
		return // left for another time
	}
	if err == nil {
		err = writeFolder(folder, append(files, output{stampName, []byte(stamp + digests(files))}))
	}
	if s.state = rowMade; err != nil {
		s.state, s.err = rowFailed, err
	}
}

// slim leaves of a case worked out what is asked for later: sizes and outlines of
// its pieces. A case with its proof is large.
func (s *student) slim() {
	s.boards, s.card = slipcase.Case{}, onepiece.Case{}
	s.plan.Faces = nil
	pieces := make([]geometry.Piece, len(s.plan.Pieces))
	for i, p := range s.plan.Pieces {
		pieces[i] = geometry.Piece{Name: p.Name, Material: p.Material, Count: p.Count, Outline: p.Outline, Grain: p.Grain, Extra: p.Extra}
	}
	s.plan.Pieces = pieces
}

// digests tells what is in files, a line each.
func digests(files []output) string {
	var b strings.Builder
	for _, f := range files {
		fmt.Fprintf(&b, "%x %s\n", sha256.Sum256(f.data), f.name)
	}
	return b.String()
}

// upToDate tells whether a folder was made of the same, and every file of it is
// as it was written.
func upToDate(folder, stamp string) bool {
	data, err := os.ReadFile(filepath.Join(folder, stampName))
	list, same := strings.CutPrefix(string(data), stamp)
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

// refuse tells why a row can't be made, with its line.
func (s *student) refuse(err error) {
	s.state = rowRefused
	for _, l := range strings.Split(err.Error(), "\n") {
		s.Refused = append(s.Refused, jobfile.Issue{Source: s.Source, Line: s.Line, Wrong: l})
	}
}

// files makes all that a student gets.
func (s *student) files(c *class) ([]output, error) {
	o := s.printed()
	files, _, err := templateFiles(s.plan, paper.Options{}, o)
	if err != nil {
		return nil, err
	}
	list, err := cutlist.JSON(s.plan, true)
	if err != nil {
		return nil, err
	}
	steps, err := handout.Booklet(subjectOf(s.loaded), handout.Options{Options: o})
	if err != nil {
		return nil, err
	}
	return append(files,
		output{handoutName, steps},
		output{"cutlist.txt", cutlist.Text(s.plan, s.round)},
		output{"cutlist.json", list},
		output{index.PictureName, index.Picture(s.plan)},
	), nil
}

// writeFolder writes a folder whole or not at all: under a temporary name
// beside its place, then renamed. A folder of that name that forel made before
// gives way; any other is left alone, and is an error.
func writeFolder(folder string, files []output) (err error) {
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
		if err := os.WriteFile(filepath.Join(fresh, f.name), f.data, 0o644); err != nil {
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
