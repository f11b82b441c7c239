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
		_, err := io.WriteString(out, completions[f.Arg(0)])
		return err
	}
}

// completions are the scripts by their shell. Each asks the program for words to offer, and
// where it has none offers files.
var completions = map[string]string{
	"bash": `# bash completion for forel
_forel() {
	local line
	COMPREPLY=()
	while IFS= read -r line; do
		COMPREPLY+=("${line%%$'\t'*}")
	done < <(forel ` + offerWord + ` "${COMP_WORDS[@]:1:COMP_CWORD}" 2>/dev/null)
	if [ ${#COMPREPLY[@]} -eq 0 ] && [ "$COMP_CWORD" -gt 1 ]; then
		local IFS=$'\n'
		COMPREPLY=($(compgen -f -- "${COMP_WORDS[COMP_CWORD]}"))
	fi
}
complete -o filenames -F _forel forel
`,
	"zsh": `#compdef forel
_forel() {
	local -a offered
	offered=(${(f)"$(forel ` + offerWord + ` "${(@)words[2,CURRENT]}" 2>/dev/null)"})
	if (( $#offered )); then
		offered=("${(@)offered//:/\\:}")
		offered=("${(@)offered//$'\t'/:}")
		_describe forel offered
	elif (( CURRENT > 2 )); then
		_files
	fi
}
_forel "$@"
`,
	"fish": `# fish completion for forel
function __forel_offers
	set -l last (commandline -ct)
	set -l words (commandline -opc) "$last"
	set -l offered (forel ` + offerWord + ` $words[2..-1] 2>/dev/null)
	if set -q offered[1]
		printf '%s\n' $offered
	else if set -q words[3]
		__fish_complete_path "$last"
	end
end
complete -c forel -f -a '(__forel_offers)'
`,
}

// offerWord is the word by which a shell asks what to offer for the last of the words that
// follow it.
const offerWord = "--offer"

// offer prints what the last of some words may be, a line each, with a tab before what it
// means; nothing where it may be a file.
func offer(out io.Writer, words []string) {
	if len(words) == 0 {
		return
	}
	before, typed := words[:len(words)-1], words[len(words)-1]
	typed = strings.ReplaceAll(strings.TrimLeft(typed, `"'`), `\`, "") // as it is typed in a shell
	for _, line := range offered(before, strings.HasPrefix(typed, "-")) {
		if strings.HasPrefix(line, typed) {
			fmt.Fprintln(out, line)
		}
	}
}

// offered returns the words that may come after some, each with what it means after a tab;
// flag tells whether it is to be a flag.
func offered(before []string, flag bool) (lines []string) {
	all := describe()
	if len(before) == 0 || before[0] == "help" {
		for _, d := range all {
			lines = append(lines, d.name+"\t"+d.summary)
		}
		return append(lines, "help\tprint what the program does")
	}
	i := slices.IndexFunc(all, func(d described) bool { return d.name == before[0] })
	switch {
	case i < 0:
	case flag:
		all[i].flags.VisitAll(func(f *pflag.Flag) {
			_, usage := pflag.UnquoteUsage(f)
			lines = append(lines, "--"+f.Name+"\t"+wording.OneLine(usage))
		})
		lines = append(lines, "--help\tprint what the command does")
	case before[0] == "completion":
		lines = shells
	default:
		if name, ok := strings.CutPrefix(before[len(before)-1], "--"); ok {
			return namesFor(all[i].flags.Lookup(name))
		}
	}
	return lines
}

// namesFor returns what the shop file of the folder has for a flag that takes a name of it;
// there need be no such flag.
func namesFor(f *pflag.Flag) (names []string) {
	data, err := readInput(jobfile.ShopName, "", "")
	if err != nil || f == nil {
		return nil
	}
	shop, _ := jobfile.ReadShop(jobfile.ShopName, data)
	for _, key := range f.Annotations[keyOf] {
		names, _ = shop.Named(key)
	}
	return names
}
