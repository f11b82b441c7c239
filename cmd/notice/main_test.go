package main

import (
	"os"
	"os/exec"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Every module that is linked in stands in NOTICE with its version and a licence.
func TestNoticeHasAllThatIsLinked(t *testing.T) {
	notice, err := os.ReadFile("../../NOTICE")
	require.NoError(t, err)
	for _, of := range targets {
		cmd := exec.Command("go", "list", "-deps", "-f", "{{with .Module}}{{if not .Main}}{{.Path}} {{.Version}}{{end}}{{end}}", of.program)
		cmd.Env = append(os.Environ(), "GOOS="+of.system, "GOARCH="+of.arch, "CGO_ENABLED=0")
		list, err := cmd.Output()
		require.NoError(t, err)
		modules := strings.Fields(strings.ReplaceAll(string(list), " ", "@"))
		require.NotEmpty(t, modules)
		for _, m := range modules {
			require.Contains(t, string(notice), "\n"+strings.Replace(m, "@", " ", 1)+": ", "make notice writes it again")
		}
	}
	for _, words := range []string{"The Go Authors", "THIS SOFTWARE IS PROVIDED", "DejaVu"} {
		assert.Contains(t, string(notice), words)
	}
}
