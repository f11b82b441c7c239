package shelf

import (
	"errors"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"slices"
)

// errNoSwap is why folders don't change places where they could.
var errNoSwap = errors.New("the folder can't change places with another")

// mostForeign is how many files of the maker's get a second name before a landing.
const mostForeign = 1000

// fill makes the new folder whole before it changes places with the old one: every file
// that stays gets a second name in it (a hard link), the maker's as well. Folders have none:
// where the maker keeps one, this is not the way.
func (s *Shelf) fill(j journal) error {
	goes, ours, foreign := digests(slices.Concat(j.old, j.new)), map[string]bool{}, 0
	known := map[string]digest{}
	for _, set := range s.old {
		for _, dir := range foldersOf(set.files) {
			ours[dir] = true
		}
		maps.Copy(known, digests(set.files))
	}
	var folders []string
	err := filepath.WalkDir(s.dir, func(at string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		name := below(s.dir, at)
		_, stale := goes[name]
		_, wrote := known[name]
		switch to := s.inWork(newName, name); {
		case d.IsDir() && (name == "." || ours[name]):
			folders = append(folders, name)
			return nil
		case !d.Type().IsRegular():
			return errNoSwap
		case stale:
			return nil
		default:
			if !wrote {
				foreign++
			}
			if foreign > mostForeign {
				return errNoSwap
			}
			if _, err := makeDirs(filepath.Dir(to)); err != nil {
				return err
			}
			return link(at, to)
		}
	})
	if err != nil {
		return err
	}
	for _, name := range folders {
		is, err := os.Stat(s.at(name))
		if err != nil {
			return err
		}
		to := s.inWork(newName, name)
		if err := os.Chmod(to, is.Mode()); errors.Is(err, fs.ErrNotExist) {
			continue // nothing is left in it
		} else if err != nil {
			return err
		}
		if !alike(s.at(name), to) {
			return errNoSwap
		}
	}
	return nil
}

// below returns the name of a file in a folder.
func below(dir, at string) string {
	name, _ := filepath.Rel(dir, at)
	return filepath.ToSlash(name)
}

// swap lets the new folder and the old one change places, which in the working folder
// is then where the new one was.
func (s *Shelf) swap() error {
	err := change(s.dir, func() error { return exchange(s.inWork(newName, ""), s.dir) })
	if err == nil {
		syncDir(filepath.Dir(s.dir))
	}
	return err
}

// discard takes away what is left in the working folder, be it the old folder or a new
// one that never landed: files that gave way or did not come, and second names of what
// is in the folder. Anything else came into it meanwhile, and goes where it was.
func (s *Shelf) discard(j journal) error {
	was, comes := digests(j.old), digests(j.new)
	root := s.inWork(newName, "")
	err := filepath.WalkDir(root, func(at string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return missingIsFine(err)
		}
		name := below(root, at)
		if is, err := d.Info(); err == nil {
			if there, err := os.Lstat(s.at(name)); err == nil && os.SameFile(is, there) {
				return remove(at)
			}
		}
		new, ours := comes[name]
		if sum, err := digestOf(at); err == nil {
			if old, ok := was[name]; ok && sum == old || ours && sum == new {
				return remove(at)
			}
		}
		to := s.at(name)
		if _, known := was[name]; known || ours {
			to = filepath.Join(filepath.Dir(to), "changed-"+filepath.Base(to))
		}
		return moveTo(at, to)
	})
	if err != nil {
		return err
	}
	return remove(s.inWork(journalName, ""))
}
