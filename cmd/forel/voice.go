package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"forel/cmd/jobfile"
	"forel/cmd/pipeline"
	"forel/geometry/job"
	"forel/geometry/wording"
)

// How forel speaks at the terminal: lower case, no full stop, one line a
// problem. "error:" says what is wrong and what would be right or what to do
// next, "warning:" what to check. Results go to standard output, all
// of this to standard error.

// voice is standard error.
type voice struct{ w io.Writer }

// warn prints what is possible but should be checked.
func (v voice) warn(issues jobfile.Issues) {
	for _, i := range issues {
		fmt.Fprintf(v.w, "warning: %s\n", i)
	}
}

// refuse is bad input: what is wrong, and what would be right.
func refuse(wrong, right string) jobfile.Issues {
	return jobfile.Issues{{Problem: job.Problem{Reason: wrong, Fix: right}}}
}

// hinted adds to what could not be done what to do next.
func hinted(err error, hint string) error { return fmt.Errorf("%w; %s", err, hint) }

// status prints an error, a line a problem, and returns the exit status.
func (v voice) status(err error) int {
	if err == nil {
		return statusOK
	}
	var bad jobfile.Issues
	if errors.As(err, &bad) {
		for _, i := range bad {
			fmt.Fprintf(v.w, "error: %s\n", i)
		}
		return statusRefused
	}
	failed := []error{err}
	if joined, ok := err.(interface{ Unwrap() []error }); ok {
		failed = joined.Unwrap()
	}
	for _, f := range failed {
		fmt.Fprintf(v.w, "error: %s\n", wording.Printable(f.Error()))
	}
	return statusFailed
}

// told says what was written into a folder, and what to know of it.
func told(folder string, r pipeline.Result) string {
	var b strings.Builder
	if len(r.Wrote) > 0 {
		b.WriteString(wrote(folder, r.Wrote...))
	}
	if p := r.Print; p.File != "" {
		fmt.Fprintf(&b, "print %s at actual size (100 %%) on %s%s\n", wording.Printable(filepath.Join(folder, p.File)), p.Paper, p.Then)
	}
	for _, n := range r.Notes {
		b.WriteString(wording.Printable(n) + "\n")
	}
	return b.String()
}

// warnEarlier tells of files in the folder that an earlier run left there and this
// one does not have.
func (v voice) warnEarlier(folder string, r pipeline.Result) {
	now := map[string]bool{}
	for _, f := range r.Files {
		now[f.Name] = true
	}
	for _, glob := range r.Earlier.Globs {
		names, _ := fs.Glob(os.DirFS(folder), glob) // a folder that can't be read has been told of
		for _, n := range names {
			if !now[n] {
				fmt.Fprintf(v.w, "warning: %s is from an earlier %s and not part of this one; take it away\n", wording.Printable(filepath.Join(folder, n)), r.Earlier.Run)
			}
		}
	}
}

// careful sets cautions in the lines of a help text.
func careful(cautions ...string) string { return wording.Wrap(wording.Careful(cautions...), 80) }
