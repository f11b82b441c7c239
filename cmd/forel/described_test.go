package main

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/spf13/pflag"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Whatever help says of a command, the manual page says too: its usage, its
// flags and what they are for.
func TestManualSaysWhatHelpSays(t *testing.T) {
	plain := func(s string) string { return strings.NewReplacer(`\-`, "-", `\e`, `\`, `\&`, "").Replace(s) }
	page := plain(manual(describe()))
	for _, c := range commands() {
		var help bytes.Buffer
		require.Equal(t, statusOK, run([]string{c.name, "--help"}, &help, &help))
		for _, d := range describe() {
			if d.name != c.name {
				continue
			}
			require.NotEmpty(t, d.sections()["usage"], "%s has a usage", c.name)
			require.NotEmpty(t, d.sections()["example"], "%s has an example", c.name)
			require.NotEmpty(t, d.sections()[""], "%s says what it does", c.name)
			for _, part := range d.sections() {
				for _, l := range strings.Split(part, "\n") {
					assert.Contains(t, help.String(), l)
					assert.Contains(t, page, l)
				}
			}
			d.flags.VisitAll(func(f *pflag.Flag) {
				_, usage := pflag.UnquoteUsage(f)
				assert.Contains(t, help.String(), "--"+f.Name)
				assert.Contains(t, page, "--"+f.Name)
				assert.Contains(t, page, usage)
			})
		}
	}
}

// The manual page is held against an independent reader, where there is one.
func TestManualIsSound(t *testing.T) {
	checker, err := exec.LookPath("mandoc")
	if err != nil {
		t.Skip("no mandoc here")
	}
	cmd := exec.Command(checker, "-T", "lint", "-W", "warning")
	cmd.Stdin = strings.NewReader(manual(describe()))
	said, err := cmd.CombinedOutput()
	var left []string
	for _, l := range strings.Split(strings.TrimSpace(string(said)), "\n") {
		if l != "" && !strings.Contains(l, "missing date") {
			left = append(left, l)
		}
	}
	assert.Empty(t, left, "%v", err)
}

// A shell that runs the script offers what begins as the word typed does.
func TestCompletionInShells(t *testing.T) {
	for _, test := range []struct {
		shell, ask string
		args       []string
		offered    []string
	}{
		{"bash", `COMP_WORDS=(forel te); COMP_CWORD=1; _forel; echo "${COMPREPLY[@]}"`, nil, []string{"templates"}},
		{"bash", `COMP_WORDS=(forel templates --wid); COMP_CWORD=2; _forel; echo "${COMPREPLY[@]}"`, nil, []string{"--width"}},
		{"bash", `COMP_WORDS=(forel completion z); COMP_CWORD=2; _forel; echo "${COMPREPLY[@]}"`, nil, []string{"zsh"}},
		{"fish", `complete -C "forel te"`, nil, []string{"templates"}},
		{"fish", `complete -C "forel templates --wid"`, nil, []string{"--width"}},
		{"fish", `complete -C "forel completion z"`, nil, []string{"zsh"}},
	} {
		t.Run(test.shell+" "+test.offered[0], func(t *testing.T) {
			shell, script := completion(t, test.shell)
			said, err := exec.Command(shell, "-c", script+"\n"+test.ask).CombinedOutput()
			require.NoError(t, err, "%s", said)
			var words []string
			for _, l := range strings.Split(strings.TrimSpace(string(said)), "\n") {
				word, _, _ := strings.Cut(l, "\t")
				words = append(words, strings.TrimSpace(word))
			}
			assert.Equal(t, test.offered, words)
		})
	}
}

// Where a flag takes a name of the shop file, the shell offers those that suit it, blanks and all.
func TestCompletionOfNames(t *testing.T) {
	at := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(at, "shop.toml"), []byte(`
[[material]]
name = "grey board 2 mm"
kind = "board"
[[material]]
name = "grey board 3 mm"
kind = "board"
[[material]]
name = "grey paper"
kind = "paper"
[[printer]]
name = "grey printer"
`), 0o644))
	require.NoError(t, os.WriteFile(filepath.Join(at, "forel"), fmt.Appendf(nil, "#!/bin/sh\n%s=1 exec %s \"$@\"\n", asProgram, os.Args[0]), 0o755))
	boards := []string{"grey board 2 mm", "grey board 3 mm"}
	for _, test := range []struct {
		shell, ask string
		offered    []string
	}{
		{"bash", `COMP_WORDS=(forel new --board gr); COMP_CWORD=3; _forel; printf '%s\n' "${COMPREPLY[@]}"`, boards},
		{"bash", `COMP_WORDS=(forel new --board '"grey board 3'); COMP_CWORD=3; _forel; printf '%s\n' "${COMPREPLY[@]}"`, boards[1:]},
		{"bash", `COMP_WORDS=(forel new --lining ''); COMP_CWORD=3; _forel; printf '%s\n' "${COMPREPLY[@]}"`, []string{"grey paper"}},
		{"bash", `COMP_WORDS=(forel templates --printer ''); COMP_CWORD=3; _forel; printf '%s\n' "${COMPREPLY[@]}"`, []string{"grey printer"}},
		{"fish", `complete -C "forel new --board gr"`, boards},
		{"zsh", `function compadd() { [[ $1 == -a ]] && print -l ${(P)2} }; _forel_names board.material`, boards},
	} {
		t.Run(test.shell+" "+test.offered[0], func(t *testing.T) {
			shell, script := completion(t, test.shell)
			cmd := exec.Command(shell, "-c", strings.TrimSuffix(script, "_forel \"$@\"\n")+"\n"+test.ask)
			cmd.Dir = at
			cmd.Env = append(os.Environ(), "PATH="+at+string(os.PathListSeparator)+os.Getenv("PATH"))
			said, err := cmd.CombinedOutput()
			require.NoError(t, err, "%s", said)
			var words []string
			for _, l := range strings.Split(strings.TrimSpace(string(said)), "\n") {
				word, _, _ := strings.Cut(l, "\t")
				words = append(words, strings.ReplaceAll(strings.Trim(word, "'"), "\\ ", " "))
			}
			assert.Equal(t, test.offered, words)
		})
	}
}

// zsh has no way to ask it without a terminal: it must at least read the script.
func TestCompletionForZshIsRead(t *testing.T) {
	shell, err := exec.LookPath("zsh")
	if err != nil {
		t.Skip("no zsh here")
	}
	cmd := exec.Command(shell, "-n")
	cmd.Stdin = strings.NewReader(zshCompletion(describe()))
	said, err := cmd.CombinedOutput()
	require.NoError(t, err, "%s", said)
	for _, d := range describe() {
		assert.Contains(t, zshCompletion(describe()), "'"+d.name+":")
	}
}

// completion returns where a shell is and its script; a shell that is not there is skipped.
func completion(t *testing.T, shell string) (path, script string) {
	t.Helper()
	path, err := exec.LookPath(shell)
	if err != nil {
		t.Skip("no " + shell + " here")
	}
	var out bytes.Buffer
	require.Equal(t, statusOK, run([]string{"completion", shell}, &out, &out))
	return path, out.String()
}
