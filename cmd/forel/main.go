// Command forel works out the pieces of a slipcase from the measurements of a
// book and writes full-scale cutting templates.
package main

import (
	"fmt"
	"io"
	"os"
	"runtime/debug"

	"forel/geometry/wording"
)

// Exit statuses.
const (
	statusOK      = 0
	statusFailed  = 1 // a file could not be read or written
	statusRefused = 2 // bad input
)

func main() {
	debug.SetGCPercent(400) // a run is short and small: less collecting
	os.Exit(run(os.Args[1:], os.Stdout, os.Stderr))
}

// command is one word after forel.
type command struct {
	name    string
	summary string
	run     func(args []string, out io.Writer, say voice) error
}

func commands() []command {
	return []command{
		{"new", "write a commented starter job file", runNew},
		{"templates", "write the patterns: a drawing a piece and a PDF to print", runTemplates},
		{"gauge", "write a sheet to gauge your printer by", runGauge},
		{"cutlist", "print the list of pieces with their sizes", runCutlist},
		{"handout", "write the worksheet and illustrated steps for a learner", runHandout},
		{"stock", "lay the pieces of one job or of many on sheets and rolls: what to buy, how to cut", runStock},
		{"cutter", "lay the pieces out on the bed of a laser or a drag knife", runCutter},
		{"prove", "fold the case up, report what is found and draw it", runProve},
		{"fit", "tell how the book will fit, and what to check at the bench", runFit},
		{"class", "make every student's files from a roster, and an index of them", runClass},
		{"completion", "print a script that completes forel's words in a shell", runCompletion},
		{"man", "print the manual page", runMan},
		{"version", "print which forel this is", runVersion},
	}
}

// run does what the words say and gives the exit status.
func run(args []string, out, errOut io.Writer) int {
	say := voice{errOut}
	if len(args) == 0 {
		usage(errOut)
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
	case "--version":
		args = []string{"version"}
	}
	var names []string
	for _, c := range commands() {
		if c.name == args[0] {
			return say.status(c.run(args[1:], out, say))
		}
		names = append(names, c.name)
	}
	return say.status(refusal{fmt.Sprintf("unknown command %.40q", args[0]), "give one of " + wording.Or(names) + "; forel --help tells more"})
}

// usage prints what the program does and its commands.
func usage(w io.Writer) {
	fmt.Fprint(w, `forel draws full-scale cutting templates for a bookbinder's slipcase

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
