package main

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/signal"
	"path/filepath"
	"syscall"

	"forel/cmd/pipeline"
	"forel/cmd/shelf"
	"forel/geometry/wording"
)

// stoppable returns a context that ends when the program is asked to stop, instead of the
// program: what it is doing on the disk is finished or taken back first.
func stoppable() (context.Context, context.CancelFunc) {
	return signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM, syscall.SIGHUP, syscall.SIGPIPE)
}

// writeInto writes what a command made into a folder, all or none, and makes it where it
// is not there. What is to be told before is written by ready; where that fails there are
// no files.
func writeInto(folder string, r pipeline.Result, ready func() error) (shelf.Change, error) {
	ctx, stop := stoppable()
	defer stop()
	s, err := shelf.Open(ctx, folder, r.Set)
	if err != nil {
		return shelf.Change{}, err
	}
	defer s.Close(false)
	if err := cmp.Or(s.Put("", "", r.Files), ctx.Err()); err != nil {
		return shelf.Change{}, err
	}
	return s.Land(r.Part, ready)
}

// renew puts what change makes of a file in its place, nothing where it makes nothing; the folder
// is locked, so that what was read is still there when the new one lands. Of a file that is not
// there it reads nil. A failure is hinted that the file stays as it was.
func renew(name, stays string, change func(is []byte) ([]byte, error), ready func() error) error {
	ctx, stop := stoppable()
	defer stop()
	s, err := shelf.Open(ctx, filepath.Dir(name), "")
	if err != nil {
		return hinted(err, stays)
	}
	defer s.Close(false)
	file := filepath.Base(name)
	is, err := s.Take(file)
	if err != nil {
		return hinted(err, stays)
	}
	now, wrong := change(is)
	if wrong != nil || now == nil {
		return wrong
	}
	if err = s.Put("", "", []pipeline.File{{Name: file, Data: now}}); err == nil {
		_, err = s.Land(true, ready)
	}
	if err != nil {
		return hinted(err, stays)
	}
	return nil
}

// elsewhere is the failure of a folder that can't be written into.
func elsewhere(err error) error {
	var way shelf.Obstacle
	switch {
	case errors.Is(err, context.Canceled):
		return errors.New("stopped; nothing was written")
	case errors.Is(err, errOutput):
		return err
	case errors.As(err, &way):
		return fmt.Errorf("%w, or give another folder with --out", err)
	}
	return hinted(err, "give another folder with --out")
}

// wrote says which files were written, and where; every command says it so.
func wrote(folder string, names ...string) string {
	what := wording.And(names)
	if filepath.Clean(folder) == "." {
		return fmt.Sprintf("wrote %s\n", wording.Printable(what))
	}
	return fmt.Sprintf("wrote %s to %s\n", wording.Printable(what), wording.Printable(folder))
}

var errOutput = errors.New("can't write to standard output")

// output is standard output. It keeps the first thing that went wrong, which makes the run
// a failure.
type output struct {
	to    io.Writer
	wrong error
}

func (o *output) Write(p []byte) (int, error) {
	n, err := o.to.Write(p)
	if err != nil && o.wrong == nil {
		o.wrong = fmt.Errorf("%w: %v", errOutput, shelf.Cause(err))
	}
	return n, o.wrong
}
