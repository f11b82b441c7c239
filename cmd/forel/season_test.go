package main

import (
	"os"
	"path/filepath"
	"regexp"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

// season is the worked example of what a shop remembers, all of it invented.
const season = "../../testdata/season"

// habits are the lines of a report of lessons to paste into a shop file.
var habits = regexp.MustCompile(`(?m)^\[[a-z]+\]\n(?:[a-z_]+ = .*\n)+`)

// TestWorkedSeason makes ten cases from an empty shop, learns from them, and makes what an
// eleventh comes to.
func TestWorkedSeason(t *testing.T) {
	worked, err := filepath.Abs(season)
	if err != nil {
		t.Fatal(err)
	}
	testscript.Run(t, testscript.Params{
		Dir: "testdata/season",
		Cmds: map[string]func(*testscript.TestScript, bool, []string){
			// kept FILE: the file is that of the worked example.
			"kept": func(ts *testscript.TestScript, _ bool, args []string) {
				got, file := ts.ReadFile(args[0]), filepath.Join(worked, args[0])
				if *update {
					ts.Check(os.WriteFile(file, []byte(got), 0o644))
					return
				}
				want, err := os.ReadFile(file)
				ts.Check(err)
				if got != string(want) {
					ts.Fatalf("%s has changed; make golden writes it again:\n%s", args[0], got)
				}
			},
			// paste FILE SHOP: the lines of a report that are to be pasted come to the end of
			// the shop file.
			"paste": func(ts *testscript.TestScript, _ bool, args []string) {
				text := ts.ReadFile(args[1])
				for _, lines := range habits.FindAllString(ts.ReadFile(args[0]), -1) {
					text += "\n" + lines
				}
				ts.Check(os.WriteFile(ts.MkAbs(args[1]), []byte(text), 0o644))
			},
		},
	})
}
