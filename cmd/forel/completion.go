package main

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"forel/cmd/jobfile"
	"forel/geometry/wording"
)

var aboutCompletion = `
usage: forel completion bash|zsh|fish

Prints a script that completes forel's commands and flags in a shell. For bash:
source it, or put it in the folder of completions. For zsh: save it as _forel in
a folder of fpath. For fish: save it as forel.fish among its completions.

Where a flag takes a name of the shop file, such as --board or --printer, the names in
` + jobfile.ShopName + ` of the folder you are in are offered.

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

// named returns the key of a job file that a flag stands for and that names what the shop file
// has; "" where it does not.
func named(f *pflag.Flag) string {
	for _, key := range f.Annotations[keyOf] {
		if _, err := (*jobfile.Shop)(nil).Named(key); err == nil {
			return key
		}
	}
	return ""
}

// askNames is what is run to complete a name for a key.
const askNames = "forel shop --names %s 2>/dev/null"

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
	b.WriteString(`# bash completion for forel
_forel() {
	local word=${COMP_WORDS[COMP_CWORD]} offered= key= name IFS=$' \t\n'
	COMPREPLY=()
	case ${COMP_WORDS[1]}:${COMP_WORDS[COMP_CWORD-1]} in
`)
	for _, d := range all {
		d.flags.VisitAll(func(f *pflag.Flag) {
			if key := named(f); key != "" {
				fmt.Fprintf(&b, "\t%s:--%s) key=%s ;;\n", d.name, f.Name, key)
			}
		})
	}
	fmt.Fprintf(&b, `	esac
	if [ -n "$key" ]; then
		word=${word#[\"\']}
		word=${word//\\/}
		while IFS= read -r name; do
			[[ $name == "$word"* ]] && COMPREPLY+=("$name")
		done < <(`+askNames+`)
		return
	fi
	if [ "$COMP_CWORD" -eq 1 ]; then
		offered="%s help"
	else
		case ${COMP_WORDS[1]} in
`, "$key", strings.Join(names, " "))
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
	fmt.Fprintf(&b, "#compdef forel\n_forel_names() {\n\tlocal -a names\n\tnames=(${(f)\"$("+askNames+")\"})\n\tcompadd -a names\n}\n", "$1")
	b.WriteString("_forel() {\n\tlocal -a commands\n\tcommands=(\n")
	for _, d := range all {
		fmt.Fprintf(&b, "\t\t'%s:%s'\n", d.name, esc(d.summary))
	}
	b.WriteString("\t)\n\tif (( CURRENT == 2 )); then\n\t\t_describe command commands\n\t\treturn\n\tfi\n\tcase $words[2] in\n")
	for _, d := range all {
		fmt.Fprintf(&b, "\t%s)\n\t\t_arguments", d.name)
		d.flags.VisitAll(func(f *pflag.Flag) {
			value, usage := pflag.UnquoteUsage(f)
			if key := named(f); key != "" {
				value = ":" + esc(value) + ": _forel_names " + key
			} else if value != "" {
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
			if key := named(f); key != "" {
				takes = " -x -a " + quote(fmt.Sprintf("("+askNames+")", key))
			} else if value != "" {
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
