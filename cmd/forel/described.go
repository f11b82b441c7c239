package main

import (
	"io"
	"strings"
)

// described is a command with its flags, as its help tells of it: what the manual
// page and the shell completions are made from.
type described struct {
	command
	flags *flags
}

// describe returns every command with its flags.
func describe() (out []described) {
	for _, c := range commands() {
		f := newFlags(c.name)
		c.flags(f)
		out = append(out, described{c, f})
	}
	return out
}

// help prints a command's help.
func help(out io.Writer, c command, f *flags) {
	io.WriteString(out, strings.TrimPrefix(c.about, "\n"))
	if f.HasFlags() {
		io.WriteString(out, "\nflags:\n"+f.FlagUsages())
	}
}

// sections returns a help text's parts by their headings: "usage", "example", and
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
