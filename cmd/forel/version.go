package main

import (
	"fmt"
	"runtime"
	"runtime/debug"
)

const aboutVersion = `
usage: forel version

Prints the version of this program, the revision it was built from where the
build knows it, and the Go it was built with.

example:
  forel version
`

func flagsVersion(f *flags) action {
	return f.says(func() string { return version() + "\n" })
}

// version says which program this is, in one line.
func version() string {
	is, built := "unreleased", ""
	if info, ok := debug.ReadBuildInfo(); ok {
		if v := info.Main.Version; v != "" && v != "(devel)" {
			is = v
		}
		for _, s := range info.Settings {
			switch {
			case s.Key == "vcs.revision":
				built = ", revision " + s.Value[:min(12, len(s.Value))] + built
			case s.Key == "vcs.modified" && s.Value == "true":
				built += " with changes"
			}
		}
	}
	return fmt.Sprintf("forel %s%s, %s %s/%s", is, built, runtime.Version(), runtime.GOOS, runtime.GOARCH)
}
