package main

import (
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"forel/cmd/jobfile"
	"forel/cmd/pipeline"
	"forel/cmd/shelf"
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

// told says what was written into a folder, what was taken away, and what to know of it.
func told(folder string, r pipeline.Result, c shelf.Change) string {
	var b strings.Builder
	if len(r.Wrote) > 0 {
		b.WriteString(wrote(folder, r.Wrote...))
	}
	if r.With != "" {
		b.WriteString(wording.Printable(r.With) + "\n")
	}
	b.WriteString(took(folder, c))
	if p := r.Print; p.File != "" {
		fmt.Fprintf(&b, "print %s at actual size (100 %%) on %s%s\n", wording.Printable(filepath.Join(folder, p.File)), p.Paper, p.Then)
	}
	for _, n := range r.Notes {
		b.WriteString(wording.Printable(n) + "\n")
	}
	return b.String()
}

// took says which files of an earlier run were taken away.
func took(folder string, c shelf.Change) string {
	if len(c.Took) == 0 {
		return ""
	}
	return fmt.Sprintf("took away %s of an earlier run from %s\n", wording.Printable(wording.Some(c.Took, mostNamed)), wording.Printable(folder))
}

// left tells of files of an earlier run that are not as they were written.
func (v voice) left(folder string, c shelf.Change) {
	if len(c.Left) > 0 {
		fmt.Fprintf(v.w, "warning: left alone in %s, since forel wrote it for an earlier run and it was changed since: %s; it is not part of this run\n",
			wording.Printable(folder), wording.Printable(wording.Some(c.Left, mostNamed)))
	}
}

// mostNamed is how many files are named in a sentence.
const mostNamed = 6

// careful sets cautions in the lines of a help text.
func careful(cautions ...string) string { return wording.Wrap(wording.Careful(cautions...), 80) }
