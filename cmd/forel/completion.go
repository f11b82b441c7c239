package main

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"forel/geometry/wording"
)

const aboutCompletion = `
usage: forel completion bash|zsh|fish

Prints a script that completes forel's commands and flags in a shell. For bash:
source it, or put it in the folder of completions. For zsh: save it as _forel in
a folder of fpath. For fish: save it as forel.fish among its completions.

example:
  forel completion bash > forel.bash && source forel.bash
`

var shells = []string{"bash", "zsh", "fish"}

func flagsCompletion(f *flags) action {
	return func(out io.Writer, _ voice) error {
		if f.NArg() != 1 || !slices.Contains(shells, f.Arg(0)) {
			return refuse("completion takes the name of one shell", "give one of "+wording.Or(shells))
		}
		write := map[string]func([]described) string{"bash": bashCompletion, "zsh": zshCompletion, "fish": fishCompletion}[f.Arg(0)]
		_, err := io.WriteString(out, write(describe()))
		return err
	}
}

// flagNames returns a command's flags as they are typed.
func (d described) flagNames() (names []string) {
	d.flags.VisitAll(func(f *pflag.Flag) { names = append(names, "--"+f.Name) })
	return append(names, "--help")
}

// words returns what else a command takes that can be completed: its shells.
func (d described) words() []string {
	if d.name == "completion" {
		return shells
	}
	return nil
}

func bashCompletion(all []described) string {
	var b strings.Builder
	var names []string
	for _, d := range all {
		names = append(names, d.name)
	}
	fmt.Fprintf(&b, `# bash completion for forel
_forel() {
	local word=${COMP_WORDS[COMP_CWORD]} offered=
	COMPREPLY=()
	if [ "$COMP_CWORD" -eq 1 ]; then
		offered="%s help"
	else
		case ${COMP_WORDS[1]} in
`, strings.Join(names, " "))
	for _, d := range all {
		fmt.Fprintf(&b, "\t\t%s)\n\t\t\tcase $word in\n\t\t\t-*) offered=\"%s\" ;;\n", d.name, strings.Join(d.flagNames(), " "))
		if w := d.words(); w != nil {
			fmt.Fprintf(&b, "\t\t\t*) offered=\"%s\" ;;\n", strings.Join(w, " "))
		}
		b.WriteString("\t\t\tesac ;;\n")
	}
	fmt.Fprintf(&b, `		help) offered="%s" ;;
		esac
	fi
	if [ -n "$offered" ]; then
		COMPREPLY=($(compgen -W "$offered" -- "$word"))
	else
		COMPREPLY=($(compgen -f -- "$word"))
	fi
}
complete -o filenames -F _forel forel
`, strings.Join(names, " "))
	return b.String()
}

func zshCompletion(all []described) string {
	// text within a quoted part of a specification
	esc := strings.NewReplacer("'", `'\''`, "[", `\[`, "]", `\]`, ":", `\:`).Replace
	var b strings.Builder
	b.WriteString("#compdef forel\n_forel() {\n\tlocal -a commands\n\tcommands=(\n")
	for _, d := range all {
		fmt.Fprintf(&b, "\t\t'%s:%s'\n", d.name, esc(d.summary))
	}
	b.WriteString("\t)\n\tif (( CURRENT == 2 )); then\n\t\t_describe command commands\n\t\treturn\n\tfi\n\tcase $words[2] in\n")
	for _, d := range all {
		fmt.Fprintf(&b, "\t%s)\n\t\t_arguments", d.name)
		d.flags.VisitAll(func(f *pflag.Flag) {
			value, usage := pflag.UnquoteUsage(f)
			if value != "" {
				value = ":" + esc(value) + ":_files"
			}
			fmt.Fprintf(&b, " \\\n\t\t\t'*--%s[%s]%s'", f.Name, esc(usage), value)
		})
		rest := "file:_files"
		if w := d.words(); w != nil {
			rest = "word:(" + strings.Join(w, " ") + ")"
		}
		fmt.Fprintf(&b, " \\\n\t\t\t'*:%s' ;;\n", rest)
	}
	b.WriteString("\tesac\n}\n_forel \"$@\"\n")
	return b.String()
}

func fishCompletion(all []described) string {
	quote := func(s string) string {
		return "'" + strings.NewReplacer(`\`, `\\`, "'", `\'`).Replace(s) + "'"
	}
	var b strings.Builder
	b.WriteString("# fish completion for forel\n")
	for _, d := range all {
		fmt.Fprintf(&b, "complete -c forel -n __fish_use_subcommand -f -a %s -d %s\n", d.name, quote(d.summary))
	}
	for _, d := range all {
		on := quote("__fish_seen_subcommand_from " + d.name)
		d.flags.VisitAll(func(f *pflag.Flag) {
			value, usage := pflag.UnquoteUsage(f)
			takes := ""
			if value != "" {
				takes = " -r"
			}
			fmt.Fprintf(&b, "complete -c forel -n %s -l %s%s -d %s\n", on, f.Name, takes, quote(usage))
		})
		if w := d.words(); w != nil {
			fmt.Fprintf(&b, "complete -c forel -n %s -f -a %s\n", on, quote(strings.Join(w, " ")))
		}
	}
	return b.String()
}
