package main

import (
	"fmt"
	"strings"

	"github.com/spf13/pflag"
)

const aboutMan = `
usage: forel man

Prints the manual page, made from the same words as --help. To read it:
forel man > forel.1, then man ./forel.1.

example:
  forel man > forel.1
`

func flagsMan(f *flags) action {
	return f.says(func() string { return manual(describe()) })
}

// manual returns the manual page in the man(7) macros.
func manual(all []described) string {
	var b strings.Builder
	b.WriteString(".TH FOREL 1\n.SH NAME\nforel \\- full\\-scale cutting templates for a bookbinder's slipcase, chemise or drop-spine box\n")
	b.WriteString(".SH SYNOPSIS\n.nf\n")
	for _, d := range all {
		fmt.Fprintln(&b, roff(d.sections()["usage"]))
	}
	b.WriteString(".fi\n.SH DESCRIPTION\n")
	b.WriteString(roff("forel turns a book's measurements and the thickness of board, paper and cloth into every piece of a slipcase, a chemise, a drop-spine box, or of a chemise and its case, proves by folding them up that the case closes and the book goes in, and writes the pieces out at true size.") + "\n")
	b.WriteString(".SH COMMANDS\n")
	for _, d := range all {
		s := d.sections()
		fmt.Fprintf(&b, ".SS %s\n", roff("forel "+d.name))
		for i, p := range strings.Split(s[""], "\n\n") {
			if i > 0 {
				b.WriteString(".PP\n")
			}
			b.WriteString(roff(p) + "\n")
		}
		d.flags.VisitAll(func(f *pflag.Flag) {
			value, usage := pflag.UnquoteUsage(f)
			fmt.Fprintf(&b, ".TP\n.B %s", roff("--"+f.Name))
			if value != "" {
				fmt.Fprintf(&b, " \\fI%s\\fR", roff(value))
			}
			fmt.Fprintf(&b, "\n%s\n", roff(usage))
		})
		if e := s["example"]; e != "" {
			fmt.Fprintf(&b, ".PP\nExample:\n.PP\n.nf\n%s\n.fi\n", roff(e))
		}
	}
	b.WriteString(`.SH EXIT STATUS
.TP
0
all went well
.TP
1
a file could not be read or written
.TP
2
the input is at fault; each fault is one line, and nothing is written
`)
	return b.String()
}

// roff writes text so that the formatter changes nothing in it.
func roff(text string) string {
	text = strings.ReplaceAll(text, `\`, `\e`)
	text = strings.ReplaceAll(text, "-", `\-`)
	lines := strings.Split(text, "\n")
	for i, l := range lines {
		if strings.HasPrefix(l, ".") || strings.HasPrefix(l, "'") {
			lines[i] = `\&` + l
		}
	}
	return strings.Join(lines, "\n")
}
