package main

import (
	"io"
	"strings"

	"github.com/spf13/pflag"
)

// described is a command as its own help tells of it: what the manual page and
// the shell completions are made from.
type described struct {
	command
	about string // usage, what it does, an example
	flags *pflag.FlagSet
}

// listener stands where help is printed to and takes it in instead.
type listener struct {
	io.Writer
	heard described
}

// describe has every command tell of itself.
func describe() []described {
	var out []described
	for _, c := range commands() {
		l := &listener{Writer: io.Discard}
		_ = c.run([]string{"--help"}, l, voice{io.Discard}) // help is all it is asked for
		l.heard.command = c
		out = append(out, l.heard)
	}
	return out
}

// help prints a command's help, or tells it to a listener.
func help(out io.Writer, about string, f *pflag.FlagSet) {
	about = strings.TrimPrefix(about, "\n")
	if l, ok := out.(*listener); ok {
		l.heard.about, l.heard.flags = about, f
		return
	}
	io.WriteString(out, about)
	if f.HasFlags() {
		io.WriteString(out, "\nflags:\n"+f.FlagUsages())
	}
}

// sections gives a help text's parts by their headings: "usage", "example", and
// "" for what stands between.
func (d described) sections() map[string]string {
	out := map[string]string{}
	for _, p := range strings.Split(strings.TrimSpace(d.about), "\n\n") {
		switch {
		case strings.HasPrefix(p, "usage:"):
			out["usage"] = strings.TrimSpace(strings.TrimPrefix(p, "usage:"))
		case strings.HasPrefix(p, "example:"):
			out["example"] = strings.TrimPrefix(p, "example:\n")
		default:
			out[""] = strings.TrimSpace(out[""] + "\n\n" + p)
		}
	}
	return out
}
