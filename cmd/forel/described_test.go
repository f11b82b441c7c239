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

// A shell that runs the script offers what begins as the word typed does; where a flag takes
// a name of the shop file, the names that suit it, blanks and all.
func TestCompletionInShells(t *testing.T) {
	at := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(at, "shop.toml"), []byte(`
[[material]]
name = "grey board 2 mm"
kind = "board"
[[material]]
name = "grey board 3 mm"
kind = "board"
[[material]]
name = "grey paper: laid"
kind = "paper"
[[printer]]
name = "grey printer"
`), 0o644))
	require.NoError(t, os.WriteFile(filepath.Join(at, "forel"), fmt.Appendf(nil, "#!/bin/sh\n%s=1 exec %s \"$@\"\n", asProgram, os.Args[0]), 0o755))
	boards := []string{"grey board 2 mm", "grey board 3 mm"}
	for _, test := range []struct {
		words   []string // typed, the last to be completed
		offered []string
	}{
		{[]string{"te"}, []string{"templates"}},
		{[]string{"help", "te"}, []string{"templates"}},
		{[]string{"templates", "--wid"}, []string{"--width"}},
		{[]string{"completion", "z"}, []string{"zsh"}},
		{[]string{"new", "--board", "gr"}, boards},
		{[]string{"new", "--board", `"grey board 3`}, boards[1:]},
		{[]string{"new", "--lining", "g"}, []string{"grey paper: laid"}},
		{[]string{"templates", "--printer", "gr"}, []string{"grey printer"}},
		{[]string{"templates", "--paper", "fo"}, []string{"forel"}}, // a file
		{[]string{"templates", "sh"}, []string{"shop.toml"}},        // likewise
	} {
		line := "forel " + strings.Join(test.words, " ")
		words := make([]string, len(test.words))
		for i, w := range test.words {
			words[i] = "'" + w + "'"
		}
		typed := "(forel " + strings.Join(words, " ") + ")"
		for shell, ask := range map[string]string{
			"bash": fmt.Sprintf(`COMP_WORDS=%s; COMP_CWORD=%d; _forel; printf '%%s\n' "${COMPREPLY[@]}"`, typed, len(words)),
			"fish": `complete -C '` + line + `'`,
			// zsh has no way to ask it without a terminal: what it would be told is printed
			"zsh": fmt.Sprintf(`_describe() { print -rl -- ${(P)2} }; _files() { print -l ${words[CURRENT]}*(N) }; words=%s; CURRENT=%d; _forel`, typed, len(words)+1),
		} {
			t.Run(shell+" "+line, func(t *testing.T) {
				program, err := exec.LookPath(shell)
				if err != nil {
					t.Skip("no " + shell + " here")
				}
				var script bytes.Buffer
				require.Equal(t, statusOK, run([]string{"completion", shell}, &script, &script))
				cmd := exec.Command(program, "-c", strings.TrimSuffix(script.String(), "_forel \"$@\"\n")+"\n"+ask)
				cmd.Dir = at
				cmd.Env = append(os.Environ(), "PATH="+at+string(os.PathListSeparator)+os.Getenv("PATH"))
				said, err := cmd.CombinedOutput()
				require.NoError(t, err, "%s", said)
				var got []string
				for _, l := range strings.Split(strings.TrimSpace(string(said)), "\n") {
					word, _, _ := strings.Cut(l, "\t")
					if shell == "zsh" { // a colon stands before what it means, and one of its own is written \:
						word = strings.ReplaceAll(word, `\:`, "\x00")
						word, _, _ = strings.Cut(word, ":")
						word = strings.ReplaceAll(word, "\x00", ":")
					}
					got = append(got, strings.ReplaceAll(strings.Trim(word, "'\""), `\ `, " "))
				}
				assert.Equal(t, test.offered, got)
			})
		}
	}
}
