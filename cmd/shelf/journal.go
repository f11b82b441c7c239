package shelf

import (
	"cmp"
	"errors"
	"fmt"
	"io"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"
)

// journal tells what a landing does. It is on the disk before the first file moves, so
// that the next run can finish it.
type journal struct {
	swap bool    // the folders change places; else files follow one by one
	old  []entry // files that give way, as they were written
	new  []entry // files that come
}

const (
	swapLine = "swap"
	stepLine = "one by one"
)

// write puts the journal into the working folder, at once, when the files that come are on
// the disk.
func (j journal) write(s *Shelf) error {
	s.syncDirs(func(name string) string { return s.inWork(newName, name) }, j.new)
	draft := s.inWork(journalName+".part", "")
	_, err := writeWith(draft, func(w io.Writer) {
		if j.swap {
			fmt.Fprintln(w, swapLine)
		} else {
			fmt.Fprintln(w, stepLine)
		}
		set{name: oldName, files: j.old}.write(w)
		set{name: newName, files: j.new}.write(w)
	})
	if err != nil {
		return err
	}
	if err := rename(draft, s.inWork(journalName, "")); err != nil {
		return err
	}
	syncDir(s.work)
	return nil
}

func readJournal(file string) (j journal, err error) {
	data, err := os.ReadFile(file)
	if err != nil {
		return j, err
	}
	first, rest, _ := strings.Cut(string(data), "\n")
	j.swap = first == swapLine
	sets, err := parseSets(rest)
	for _, s := range sets {
		if s.name == oldName {
			j.old = s.files
		} else {
			j.new = s.files
		}
	}
	return j, err
}

// one tells whether all that is done is that one file takes the place of what has its name:
// that is one change of the disk, and there is a file at any moment.
func (j journal) one() bool {
	return len(j.new) == 1 && len(j.old) == 1 && j.new[0].name == j.old[0].name && path.Dir(j.new[0].name) == "."
}

// recover finishes or undoes what a stopped run left, wherever it was. One working folder
// may stay, for what is whole in it.
func (s *Shelf) recover() error {
	for _, s.work = range []string{s.beside(), s.at(workName)} {
		info, err := os.Lstat(s.work)
		if err != nil {
			continue
		}
		ours := info.IsDir() && exists(s.inWork(stagedName, ""))
		if ours {
			if err := s.settle(); err != nil {
				return err
			}
			if err := s.forget(); err != nil {
				return err
			}
		}
		switch {
		case ours && s.kept == nil && slices.Contains(s.places(), s.work):
			s.kept = []string{s.work}
			continue
		case ours:
			err = removeAll(s.work)
		default:
			err = os.Remove(s.work) // one that is empty
		}
		if err != nil {
			return Obstacle{s.work + " is in the way", "move it away"}
		}
	}
	s.work = ""
	return nil
}

// unsettled tells of a landing that is to be finished or undone.
func (s *Shelf) unsettled() bool {
	return exists(s.inWork(journalName, "")) || exists(s.inWork(undoName, ""))
}

// forget takes away the files that gave way in a landing that is settled, so that none is
// taken for one of the next.
func (s *Shelf) forget() error {
	if s.unsettled() {
		return nil
	}
	return s.cant(ListName, removeAll(s.inWork(oldName, "")))
}

// settle finishes or undoes a landing.
func (s *Shelf) settle() error {
	file, undo := s.inWork(journalName, ""), s.inWork(undoName, "")
	if j, err := readJournal(undo); err == nil {
		return s.cant(ListName, s.undo(j))
	}
	j, err := readJournal(file)
	switch {
	case errors.Is(err, os.ErrNotExist): // a landing that is done, or did not begin
		return nil
	case err != nil:
		return fmt.Errorf("%s: %w", file, Cause(err))
	case j.swap:
		return s.cant(ListName, s.discard(j))
	}
	return s.follow(j)
}

// follow lands files one by one. What fails is undone.
func (s *Shelf) follow(j journal) error {
	name, err := s.move(j)
	if err != nil {
		if wrong := rename(s.inWork(journalName, ""), s.inWork(undoName, "")); wrong != nil {
			return s.cant(name, err)
		}
		s.undo(j) // where that fails too, the next run does it
		return s.cant(name, err)
	}
	if s.removeEmpty(j.old) == nil { // else the next run does it
		remove(s.inWork(journalName, ""))
		syncDir(s.work)
	}
	return nil
}

var errInTheWay = errors.New("what forel did not write is in the way")

// move moves all old files away and all new ones in, as far as that is not done yet. It
// returns the file that it failed at.
func (s *Shelf) move(j journal) (string, error) {
	for _, f := range j.old {
		from, to := s.at(f.name), s.inWork(oldName, f.name)
		if exists(to) {
			continue
		}
		if sum, err := digestOf(from); errors.Is(err, os.ErrNotExist) {
			continue
		} else if err != nil || sum != f.digest {
			return f.name, errInTheWay
		}
		if err := moveTo(from, to); err != nil {
			return f.name, err
		}
	}
	for _, f := range j.new {
		from, to := s.inWork(newName, f.name), s.at(f.name)
		if !exists(from) {
			continue
		}
		if exists(to) {
			return f.name, errInTheWay
		}
		if err := moveTo(from, to); err != nil {
			return f.name, err
		}
	}
	s.syncDirs(s.at, j.new)
	return "", nil
}

// undo moves all files back.
func (s *Shelf) undo(j journal) error {
	for _, f := range j.new {
		from, to := s.at(f.name), s.inWork(newName, f.name)
		if sum, err := digestOf(from); err != nil || sum != f.digest || exists(to) {
			continue // did not land, or is somebody else's now
		}
		if err := moveTo(from, to); err != nil {
			return err
		}
	}
	for _, f := range j.old {
		from, to := s.inWork(oldName, f.name), s.at(f.name)
		if !exists(from) || exists(to) {
			continue
		}
		if err := moveTo(from, to); err != nil {
			return err
		}
	}
	s.syncDirs(s.at, j.old)
	return cmp.Or(s.removeEmpty(j.new), remove(s.inWork(undoName, "")))
}

// removeEmpty takes away folders of files where nothing is left in them.
func (s *Shelf) removeEmpty(files []entry) error {
	for _, dir := range foldersOf(files) {
		if in, err := os.ReadDir(s.at(dir)); err == nil && len(in) == 0 {
			if err := remove(s.at(dir)); err != nil {
				return err
			}
		}
	}
	return nil
}

// syncDirs makes sure that the names of files are on the disk.
func (s *Shelf) syncDirs(at func(name string) string, files []entry) {
	for _, dir := range append(foldersOf(files), ".") {
		syncDir(at(dir))
	}
}

// foldersOf returns the folders of files below the shelf, the deepest first.
func foldersOf(files []entry) []string {
	seen := map[string]bool{}
	for _, f := range files {
		for dir := path.Dir(f.name); dir != "." && !seen[dir]; dir = path.Dir(dir) {
			seen[dir] = true
		}
	}
	out := make([]string, 0, len(seen))
	for dir := range seen {
		out = append(out, dir)
	}
	slices.SortFunc(out, func(a, b string) int { return strings.Compare(b, a) }) // a folder stands before what is in it
	return out
}

// moveTo renames a file and makes the folder that it comes to.
func moveTo(from, to string) error {
	if _, err := makeDirs(filepath.Dir(to)); err != nil {
		return err
	}
	return rename(from, to)
}

func exists(path string) bool {
	_, err := os.Lstat(path)
	return err == nil
}
