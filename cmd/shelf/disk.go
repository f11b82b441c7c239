package shelf

import (
	"bufio"
	"cmp"
	"crypto/sha256"
	"errors"
	"hash"
	"io"
	"io/fs"
	"os"
	"path/filepath"
)

// All changes to the disk go through these functions.

// before is called before each change; tests let it fail, or end the program.
var before = func(path string) error { return nil }

// flush makes sure that a file is on the disk.
var flush = (*os.File).Sync

// change does something to a path, where nothing keeps it from that.
func change(path string, do func() error) error {
	if err := before(path); err != nil {
		return err
	}
	return do()
}

func rename(from, to string) error { return change(to, func() error { return os.Rename(from, to) }) }

func link(from, to string) error { return change(to, func() error { return os.Link(from, to) }) }

func remove(path string) error { return change(path, func() error { return os.Remove(path) }) }

func removeAll(path string) error { return change(path, func() error { return os.RemoveAll(path) }) }

func makeDir(path string) error { return change(path, func() error { return os.Mkdir(path, 0o777) }) }

// makeDirs makes a folder with its parents, and returns those it made, the deepest first.
func makeDirs(path string) (made []string, err error) {
	switch info, err := os.Stat(path); {
	case err == nil && info.IsDir():
		return nil, nil
	case err == nil:
		return nil, errors.New("not a folder")
	case !errors.Is(err, fs.ErrNotExist):
		return nil, err
	}
	if info, err := os.Lstat(path); err == nil && info.Mode()&fs.ModeSymlink != 0 {
		return nil, errors.New("a symbolic link that leads nowhere")
	}
	if parent := filepath.Dir(path); parent != path {
		if made, err = makeDirs(parent); err != nil {
			return made, err
		}
	}
	if err := makeDir(path); errors.Is(err, fs.ErrExist) {
		return made, nil // another run made it meanwhile
	} else if err != nil {
		return made, err
	}
	return append([]string{path}, made...), nil
}

// output is a new file that is being written; it has reached the disk when it is ended.
type output struct {
	file *os.File
	sum  hash.Hash
}

// create begins a new file in a folder of our own, which is made where it is not there.
// A file that is there may be a second name of another, and is never written into.
func create(path string) (*output, error) {
	if _, err := makeDirs(filepath.Dir(path)); err != nil {
		return nil, err
	}
	if err := missingIsFine(remove(path)); err != nil {
		return nil, err
	}
	f, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666) // the umask says the rest
	return &output{f, sha256.New()}, err
}

func (o *output) Write(p []byte) (int, error) {
	o.sum.Write(p)
	return o.file.Write(p)
}

// end closes the file and returns its digest.
func (o *output) end() (digest, error) {
	err := change(o.file.Name(), func() error { return flush(o.file) })
	return digest(o.sum.Sum(nil)), cmp.Or(err, o.file.Close())
}

// writeFile writes a file in a folder of our own.
func writeFile(path string, data []byte) (digest, error) {
	return writeWith(path, func(w io.Writer) { w.Write(data) })
}

// writeWith is writeFile for what is not held as a whole.
func writeWith(path string, write func(io.Writer)) (digest, error) {
	o, err := create(path)
	if err != nil {
		return digest{}, err
	}
	w := bufio.NewWriter(o) // which keeps the first error
	write(w)
	err = w.Flush()
	sum, ended := o.end()
	return sum, cmp.Or(err, ended)
}

// syncDir makes sure that the names in a folder are on the disk, where the system
// lets a folder be synced.
func syncDir(path string) {
	if f, err := os.Open(path); err == nil {
		flush(f)
		f.Close()
	}
}
