package main

import (
	"errors"
	"fmt"
	"io"
	"strings"

	"forel/cmd/jobfile"
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

// refusal is bad input: what is wrong, and what would be right.
type refusal struct{ wrong, right string }

func (r refusal) Error() string { return r.wrong + "; " + r.right }

// failure is a file that could not be read or written.
type failure struct {
	err  error
	hint string
}

func (f failure) Error() string {
	if f.hint == "" {
		return f.err.Error()
	}
	return f.err.Error() + "; " + f.hint
}

// errHelp ends a command whose help was asked for and has been printed.
var errHelp = errors.New("help")

// status prints an error, a line a problem, and gives the exit status.
func (v voice) status(err error) int {
	var f failure
	switch {
	case err == nil, errors.Is(err, errHelp):
		return statusOK
	case errors.As(err, &f):
		fmt.Fprintf(v.w, "error: %s\n", wording.Printable(f.Error()))
		return statusFailed
	}
	for _, line := range strings.Split(err.Error(), "\n") {
		fmt.Fprintf(v.w, "error: %s\n", wording.Printable(line))
	}
	return statusRefused
}

// careful sets cautions in the lines of a help text.
func careful(cautions ...string) string { return wording.Wrap(wording.Careful(cautions...), 80) }
