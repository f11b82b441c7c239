package main

import (
	"os"
	"os/exec"
	"slices"
	"strconv"

	"github.com/rogpeppe/go-internal/testscript"

	"forel/cmd/shelf"
)

// status runs a command and checks its exit status: "status 2 forel nonsense".
// What it printed is then there for stdout and stderr.
func status(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 2 {
		ts.Fatalf("usage: status N command [args...]")
	}
	want, err := strconv.Atoi(args[0])
	ts.Check(err)
	got := 0
	if err := ts.Exec(args[1], args[2:]...); err != nil {
		exit, ok := err.(*exec.ExitError)
		if !ok {
			ts.Fatalf("%v", err)
		}
		got = exit.ExitCode()
	}
	if got != want {
		ts.Fatalf("exit status %d, not %d", got, want)
	}
}

// files counts the entries of a folder, but for the list of what forel wrote.
func files(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 2 {
		ts.Fatalf("usage: files DIR N")
	}
	want, err := strconv.Atoi(args[1])
	ts.Check(err)
	entries, err := os.ReadDir(ts.MkAbs(args[0]))
	ts.Check(err)
	entries = slices.DeleteFunc(entries, func(e os.DirEntry) bool { return e.Name() == shelf.ListName })
	if len(entries) != want {
		ts.Fatalf("%s holds %d entries, not %d: %v", args[0], len(entries), want, entries)
	}
}
