// Command forel works out the pieces of a slipcase, a chemise or a drop-spine box from the measurements of a
// book and writes full-scale cutting templates.
package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"runtime/debug"

	"github.com/spf13/pflag"

	"forel/geometry/wording"
)

// Exit statuses.
const (
	statusOK      = 0
	statusFailed  = 1 // a file could not be read or written
	statusRefused = 2 // bad input
)

func main() {
	if err := memory(); err != nil {
		os.Exit(voice{os.Stderr}.status(err))
	}
	debug.SetGCPercent(400) // a run is short and small: less collecting
	os.Exit(run(os.Args[1:], os.Stdout, os.Stderr))
}

// run does what the words say and returns the exit status.
func run(args []string, to, errOut io.Writer) int {
	say, out := voice{errOut}, &output{to: to}
	status := do(args, out, say)
	if status == statusOK && out.wrong != nil {
		return say.status(out.wrong)
	}
	return status
}

func do(args []string, out io.Writer, say voice) int {
	if len(args) == 0 {
		usage(say.w)
		return statusRefused
	}
	switch args[0] {
	case "help":
		if len(args) > 1 {
			args = []string{args[1], "--help"}
			break
		}
		fallthrough
	case "--help", "-h":
		usage(out)
		return statusOK
	case offerWord:
		offer(out, args[1:])
		return statusOK
	case "--version":
		args = []string{"version"}
	}
	var names []string
	for _, c := range commands() {
		if c.name == args[0] {
			f := newFlags(c.name)
			act := c.flags(f)
			err := f.parse(args[1:])
			if errors.Is(err, pflag.ErrHelp) {
				help(out, c, f)
				return statusOK
			}
			if err == nil {
				err = act(out, say)
			}
			return say.status(err)
		}
		names = append(names, c.name)
	}
	return say.status(refuse(fmt.Sprintf("unknown command %.40q", args[0]), "give one of "+wording.Or(names)+"; forel --help tells more"))
}

// usage prints what the program does and its commands.
func usage(w io.Writer) {
	fmt.Fprint(w, `forel draws full-scale cutting templates for a bookbinder's slipcase, chemise or drop-spine box

usage:
  forel <command> [arguments]

commands:
`)
	for _, c := range commands() {
		fmt.Fprintf(w, "  %-10s %s\n", c.name, c.summary)
	}
	fmt.Fprint(w, `
example:
  forel new case.toml                     then type in what you measured
  forel templates case.toml --out case/   then print case/templates.pdf at 100 %

forel <command> --help tells more about a command
`)
}
