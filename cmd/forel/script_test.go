package main

import (
	"os"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

func TestMain(m *testing.M) {
	if os.Getenv(asProgram) != "" {
		main()
	}
	testscript.Main(m, map[string]func(){
		"forel": func() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) },
	})
}

// TestScripts runs the program as a maker does, one script a subject.
func TestScripts(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir: "testdata",
		Setup: func(env *testscript.Env) error {
			env.Setenv("GOGC", os.Getenv("GOGC")) // of make test
			return nil
		},
		Cmds: map[string]func(*testscript.TestScript, bool, []string){
			// status N: the program ended with exit status N.
			"status": status,
			// files DIR N: the folder holds N entries, hidden ones counted, the list of what forel
			// wrote not.
			"files": files,
		},
	})
}
