// Package shelf puts sets of files into a folder of the maker's choice, so that it holds
// the old set or the new one, whatever stops the program, and so that nothing is taken
// away that forel did not write.
//
// A run locks the folder, writes its files into a working folder and lands them all
// together. Where the system lets two folders change places at once, that is how they
// land (swap.go). Elsewhere, and where the maker keeps folders of their own there, a
// journal is written first and the files follow one by one (journal.go); a run that was
// killed then is finished, or undone, by the next one. A list in the folder tells what
// forel wrote (list.go).
package shelf

import (
	"bytes"
	"context"
	"crypto/sha256"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"sync"
	"syscall"
	"time"

	"github.com/gofrs/flock"
	"golang.org/x/sync/errgroup"

	"forel/cmd/pipeline"
)

// Shelf is a folder that is being written into. Put, Create and Has can be called from
// several goroutines.
type Shelf struct {
	name  string // of the folder, as the maker gave it
	dir   string // the folder itself, without symbolic links
	owner string // of which sets the run is
	lock  *flock.Flock
	made  []string // folders that were made for this, the deepest first

	work  string            // where files are kept until they land
	kept  []string          // working folders that a stopped run left
	old   []set             // what the list of the folder tells
	taken map[string]digest // files that are to be changed, as they were taken
	modes map[string]fs.FileMode

	mu     sync.Mutex
	log    *os.File       // tells of sets in the working folder
	left   map[string]set // those that a stopped run left there
	fresh  map[string]set // of this run
	landed bool
}

// The files that are there only while a folder is written into.
const (
	lockName = ".forel-lock"
	workName = ".forel-work" // in the folder; beside it the folder's name stands between

	newName     = "new"        // in the working folder: the files that are to land,
	oldName     = "old"        // those that gave way,
	stagedName  = "staged.txt" // the sets that are whole,
	journalName = "journal"    // what is being done
	undoName    = "undo"       // or undone
)

// patience is how long a run waits for another that writes into the same folder.
const patience = 10 * time.Second

// Open readies a folder for the sets of an owner, and makes it where it is not there. What
// a killed run left is finished or taken away first. It waits for another run that writes
// there, for a few seconds or until the context ends. Close ends it.
func Open(ctx context.Context, name, owner string) (s *Shelf, err error) {
	s = &Shelf{name: name, owner: owner, fresh: map[string]set{}, left: map[string]set{}, taken: map[string]digest{}, modes: map[string]fs.FileMode{}}
	if err := s.take(ctx); err != nil {
		s.unmake()
		return nil, err
	}
	for _, step := range []func() error{s.recover, s.read, s.begin} {
		if err := step(); err != nil {
			s.Close(false)
			return nil, err
		}
	}
	return s, nil
}

// path returns a file of the folder as the maker would call it.
func (s *Shelf) path(name string) string { return filepath.Join(s.name, filepath.FromSlash(name)) }

// at returns where a file of the folder is.
func (s *Shelf) at(name string) string { return filepath.Join(s.dir, filepath.FromSlash(name)) }

// inWork returns where a file is below a part of the working folder.
func (s *Shelf) inWork(part, name string) string {
	return filepath.Join(s.work, part, filepath.FromSlash(name))
}

// Obstacle is what keeps files from being written, and what can be done about it.
type Obstacle struct{ Reason, Fix string }

func (o Obstacle) Error() string { return o.Reason + "; " + o.Fix }

// cant tells that a file could not be written; without an error it is nil.
func (s *Shelf) cant(name string, err error) error {
	if err == nil {
		return nil
	}
	return fmt.Errorf("can't write %s: %w", s.path(name), Cause(err))
}

// Cause returns what the system said, without the name of a file, which may be one
// the maker never typed.
func Cause(err error) error {
	var path *fs.PathError
	var link *os.LinkError
	var call *os.SyscallError
	switch {
	case errors.As(err, &path):
		return path.Err
	case errors.As(err, &link):
		return link.Err
	case errors.As(err, &call):
		return call.Err
	}
	return err
}

// take makes the folder and locks it. A lock dies with its run. Whoever has it takes its
// file away in the end, so a lock counts only while its file is still in the folder.
func (s *Shelf) take(ctx context.Context) error {
	within, stop := context.WithTimeout(ctx, patience)
	defer stop()
	for {
		made, err := makeDirs(filepath.Clean(s.name))
		if s.made = append(made, s.made...); err != nil {
			return fmt.Errorf("can't make the folder %s: %w", s.name, Cause(err))
		}
		locked, err := s.tryLock()
		if locked {
			return nil
		}
		if err != nil && !errors.Is(err, fs.ErrNotExist) { // else another run took the folder away again
			return fmt.Errorf("can't write into %s: %w", s.name, Cause(err))
		}
		select {
		case <-within.Done():
			if ctx.Err() != nil {
				return ctx.Err()
			}
			return Obstacle{"another run of forel is writing into " + s.name, "wait until it is done"}
		case <-time.After(10 * time.Millisecond):
		}
	}
}

// sharingViolation is ERROR_SHARING_VIOLATION, from Microsoft's list of system error codes.
const sharingViolation = syscall.Errno(32)

func (s *Shelf) tryLock() (bool, error) {
	dir, err := filepath.EvalSymlinks(s.name)
	if err != nil {
		return false, err
	}
	if s.dir, err = filepath.Abs(dir); err != nil {
		return false, err
	}
	file := s.at(lockName)
	if info, err := os.Lstat(file); err == nil && !info.Mode().IsRegular() {
		return false, errInTheWay
	}
	if err := before(file); err != nil {
		return false, err
	}
	s.lock = flock.New(file, flock.SetPermissions(0o666))
	ok, err := s.lock.TryLock()
	switch {
	case errors.Is(err, errors.ErrUnsupported):
		return true, nil // a disk without locks: runs are not parted
	case runtime.GOOS == "windows" && errors.Is(err, sharingViolation):
		return false, nil // another run opens the file just now, or removes it
	}
	if !ok {
		return false, err
	}
	is, err := s.lock.Stat()
	if err == nil {
		var there fs.FileInfo
		if there, err = os.Lstat(file); err == nil && os.SameFile(is, there) {
			return true, nil
		}
	}
	s.lock.Unlock()
	return false, missingIsFine(err)
}

// read reads the list of the folder.
func (s *Shelf) read() (err error) {
	if s.owner == "" {
		return nil
	}
	if s.old, err = readList(s.at(ListName)); err != nil {
		if errors.Is(err, errNotOurs) {
			return Obstacle{s.path(ListName) + " is not as forel writes it", "move it away"}
		}
		return fmt.Errorf("can't read %s: %w", s.path(ListName), Cause(err))
	}
	return nil
}

// beside returns where the working folder is best: beside the folder, so that two
// folders can change places.
func (s *Shelf) beside() string {
	parent, base := filepath.Split(s.dir)
	return filepath.Join(parent, "."+base+workName)
}

// places returns where the working folder may be, the best first. A folder that somebody
// stands in stays where it is.
func (s *Shelf) places() []string {
	here, _ := os.Getwd()
	here, _ = filepath.EvalSymlinks(here)
	in, err := filepath.Rel(s.dir, here)
	if !swaps || s.owner == "" || err == nil && filepath.IsLocal(in) {
		return []string{s.at(workName)}
	}
	return []string{s.beside(), s.at(workName)}
}

// begin makes the working folder, or takes that which a stopped run left. Beside the folder
// it is of use only where files can be moved from one to the other.
func (s *Shelf) begin() (err error) {
	for _, s.work = range append(s.kept, s.places()...) {
		if err = makeDir(s.work); errors.Is(err, fs.ErrExist) {
			err = s.goOn()
		}
		if err == nil {
			s.log, err = os.OpenFile(s.inWork(stagedName, ""), os.O_WRONLY|os.O_CREATE|os.O_APPEND, 0o666)
		}
		if err == nil && filepath.Dir(s.work) != s.dir {
			err = link(s.at(lockName), s.inWork(lockName, ""))
		}
		if err == nil {
			if _, err = makeDirs(s.inWork(newName, "")); err == nil {
				return nil
			}
		}
		s.drop()
	}
	s.work = ""
	return fmt.Errorf("can't write into %s: %w", s.name, Cause(err))
}

// goOn reads what sets a stopped run left in the working folder.
func (s *Shelf) goOn() error {
	data, err := os.ReadFile(s.inWork(stagedName, ""))
	if err != nil {
		return err
	}
	sets, _ := parseSets(string(data)) // the last may be torn
	for _, set := range sets {
		s.left[set.name] = set
	}
	return missingIsFine(remove(s.inWork(lockName, "")))
}

// drop takes the working folder away, but not one with something to finish in it.
func (s *Shelf) drop() error {
	if s.log != nil {
		s.log.Close()
		s.log = nil
	}
	if s.unsettled() {
		return nil
	}
	return removeAll(s.work)
}

// Put keeps the files of a set until they land: of the owner as a whole, or of a folder
// below, which is then part of its name. Made tells what they were made of.
func (s *Shelf) Put(below, made string, files []pipeline.File) error {
	new := set{path.Join(s.owner, below), made, make([]entry, len(files))}
	var together errgroup.Group
	together.SetLimit(runtime.GOMAXPROCS(0))
	for i, f := range files {
		new.files[i].name = path.Join(below, f.Name)
		together.Go(func() (err error) {
			at := s.inWork(newName, new.files[i].name)
			new.files[i].digest, err = writeFile(at, f.Data)
			if mode, taken := s.modes[new.files[i].name]; taken && err == nil {
				err = os.Chmod(at, mode)
			}
			return s.cant(new.files[i].name, err)
		})
	}
	if err := together.Wait(); err != nil {
		return err
	}
	return s.add(new)
}

// add takes note of files that were written into the working folder.
func (s *Shelf) add(new set) error {
	s.mu.Lock()
	defer s.mu.Unlock()
	for i := range new.files {
		new.files[i].staged = true
	}
	if was, ok := s.fresh[new.name]; ok {
		new.files = append(was.files, new.files...)
	}
	s.fresh[new.name] = new
	var text bytes.Buffer // written at once
	new.write(&text)
	_, err := s.log.Write(text.Bytes())
	return s.cant(ListName, err)
}

// Create begins a file of the owner that is too large to be held; end it with Close.
func (s *Shelf) Create(name string) (io.WriteCloser, error) {
	o, err := create(s.inWork(newName, name))
	if err != nil {
		return nil, s.cant(name, err)
	}
	return &growing{o, s, name}, nil
}

// growing is a file that Create began.
type growing struct {
	*output
	shelf *Shelf
	name  string
}

func (g *growing) Write(p []byte) (int, error) {
	n, err := g.output.Write(p)
	return n, g.shelf.cant(g.name, err)
}

func (g *growing) Close() error {
	sum, err := g.end()
	if err != nil {
		return g.shelf.cant(g.name, err)
	}
	return g.shelf.add(set{name: g.shelf.owner, files: []entry{{name: g.name, digest: sum}}})
}

// Has tells whether a set of the owner was made of the same before and every file of it
// is as it was written. It is then part of this run.
func (s *Shelf) Has(below, made string) bool {
	name := path.Join(s.owner, below)
	if was, ok := s.left[name]; ok && was.made == made && s.whole(was, filepath.Join(s.work, newName)) {
		return s.add(was) == nil
	}
	for _, was := range s.old {
		if was.name == name && was.made == made && s.whole(was, s.dir) {
			s.mu.Lock()
			defer s.mu.Unlock()
			s.fresh[name] = was
			return true
		}
	}
	return false
}

// whole tells whether every file of a set is below a folder as it was written.
func (s *Shelf) whole(set set, below string) bool {
	for _, f := range set.files {
		if sum, err := digestOf(filepath.Join(below, filepath.FromSlash(f.name))); err != nil || sum != f.digest {
			return false
		}
	}
	return true
}

// Read reads a file of this run, of the set of a folder below or of the owner as a whole.
func (s *Shelf) Read(below, name string) ([]byte, error) {
	name = path.Join(below, name)
	s.mu.Lock()
	files := s.fresh[path.Join(s.owner, below)].files
	s.mu.Unlock()
	file := s.at(name)
	if slices.ContainsFunc(files, func(f entry) bool { return f.name == name && f.staged }) {
		file = s.inWork(newName, name)
	}
	data, err := os.ReadFile(file)
	if err != nil {
		return nil, fmt.Errorf("can't read %s: %w", s.path(name), Cause(err))
	}
	return data, nil
}

// Take reads a file of the maker's that is to be changed: what is Put in its place may then
// land, as long as it is as it was taken, and may be read by whom it could be. The data is nil
// where there is no such file.
func (s *Shelf) Take(name string) ([]byte, error) {
	data, err := os.ReadFile(s.at(name))
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil, nil
	case err != nil:
		return nil, fmt.Errorf("can't read %s: %w", s.path(name), Cause(err))
	}
	if info, err := os.Stat(s.at(name)); err != nil {
		return nil, fmt.Errorf("can't read %s: %w", s.path(name), Cause(err))
	} else if s.modes[name] = info.Mode().Perm(); info.Mode().Perm()&0o222 == 0 {
		return nil, fmt.Errorf("can't write %s: it is read only: let it be written to first", s.path(name))
	}
	s.taken[name] = digest(sha256.Sum256(data))
	return data, nil
}

// Close unlocks the folder. What has not landed is taken away, with folders that were made
// for it, or kept for the next run to go on from there.
func (s *Shelf) Close(keep bool) error {
	var err error
	if s.work != "" && !keep {
		err = s.drop()
	} else if s.log != nil {
		s.log.Close()
	}
	file := s.at(lockName)
	wrong := remove(file) // first, so that nobody's lock is taken away
	s.lock.Unlock()
	if wrong != nil {
		remove(file) // some systems remove no file that is open
	}
	s.unmake()
	return err
}

// unmake takes away folders that were made for nothing.
func (s *Shelf) unmake() {
	if !s.landed {
		for _, dir := range s.made {
			os.Remove(dir) // one that holds files stays
		}
	}
}

// owns tells whether a set is of this run's kind.
func (s *Shelf) owns(name string) bool {
	return name == s.owner || strings.HasPrefix(name, s.owner+"/")
}
