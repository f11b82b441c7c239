package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"

	"forel/cmd/pipeline"
)

const aboutRecord = `
usage: forel record JOB.toml [flags]

Takes down what was measured of a case while it was made: layers of board and cloth,
the carcass outside, the finished mouth, the room left beside the book. It is added to
JOB.record.toml beside the job, each time with what was planned, so that a job changed
later spoils nothing. It prints what was measured beside what it should be, and whether
that is what was to be expected.

--show lists all that can be measured of this case, with what is taken down so far; with
--out it makes a sheet of that to write on at the bench. Readings at several places have ; or , between them. What the job file
tells under [as_built] is taken down too, where nothing else is given. A slip is put
right in the record with a text editor: of several of one name the last counts.

forel lessons learns from many records; forel rescue tells the way back where the book
does not fit.

example:
  forel record case.toml --show
  forel record case.toml --outside-height 227.8,227.5 --date 2026-05-02
  forel record case.toml --play-height 1.4 --play-thickness 0.9
`

func flagsRecord(f *flags) action {
	var r pipeline.Record
	f.writes(&r, &r.Job, "case/", "with --show: `folder` to write record.pdf into, a sheet to write on at the bench", &r.Draw)
	makes := f.makes(&r)
	return func(out io.Writer, say voice) error {
		if r.Show {
			f.old = &r.Old
			return makes(out, say)
		}
		bad, err := f.gather(say)
		if err != nil {
			return err
		}
		if bad != nil {
			return append(bad, f.wrong(r)...)
		}
		if f.NArg() != 1 || f.Arg(0) == "" || r.Draw { // it is refused
			_, err := r.Make(context.Background())
			return err
		}
		name := f.recordName()
		var made pipeline.Result
		err = renew(name, "the record is as it was", func(is []byte) ([]byte, error) {
			if is != nil {
				r.Old = &pipeline.File{Name: name, Data: is}
			}
			made, err = r.Make(context.Background())
			say.warn(made.Warnings)
			if err != nil {
				return nil, err
			}
			return made.Files[0].Data, nil
		}, func() error { _, err := out.Write(made.Report); return err })
		if err == nil {
			_, err = fmt.Fprint(out, wrote(filepath.Dir(name), made.Wrote...))
		}
		return err
	}
}

// recordName is the name of the record beside the job that is named.
func (f *flags) recordName() string {
	return filepath.Join(filepath.Dir(f.Arg(0)), pipeline.RecordName(filepath.Base(f.Arg(0))))
}

// record reads the record beside the one job that is named, if there is one.
func (f *flags) record() (*pipeline.File, error) {
	if f.NArg() != 1 || f.Arg(0) == "" {
		return nil, nil
	}
	name := f.recordName()
	if _, err := os.Stat(name); errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	data, err := readInput(name, "", "name a record")
	if err != nil {
		return nil, err
	}
	return &pipeline.File{Name: name, Data: data}, nil
}
