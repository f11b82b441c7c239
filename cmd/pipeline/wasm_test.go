package pipeline_test

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// goes runs the go command and gives what it printed.
func goes(t *testing.T, env []string, args ...string) string {
	t.Helper()
	cmd := exec.Command("go", args...)
	cmd.Env = append(os.Environ(), env...)
	cmd.Stderr = os.Stderr
	out, err := cmd.Output()
	require.NoError(t, err, "go %v", args)
	return strings.TrimSpace(string(out))
}

// browser is what a page in a browser is compiled for (WebAssembly).
var browser = []string{"GOOS=js", "GOARCH=wasm"}

// Compiled for a browser, every command makes the same files as on this machine,
// byte for byte. It is run by Node, and skipped where there is none, or where time is short.
func TestBrowserMakesTheSameFiles(t *testing.T) {
	if testing.Short() {
		t.Skip("a program is made and run, for seven seconds")
	}
	node, err := exec.LookPath("node")
	if err != nil {
		t.Skip("no node here to run what is compiled for a browser")
	}
	const all = "./internal/everything"
	wasm, native := filepath.Join(t.TempDir(), "all.wasm"), filepath.Join(t.TempDir(), "all")
	goes(t, browser, "build", "-o", wasm, all)
	goes(t, nil, "build", "-o", native, all)
	info, err := os.Stat(wasm)
	require.NoError(t, err)
	t.Logf("%.1f MB", float64(info.Size())/1e6)

	run := func(name string, args ...string) string {
		cmd := exec.Command(name, args...)
		cmd.Stderr = os.Stderr
		out, err := cmd.Output()
		require.NoError(t, err)
		return string(out)
	}
	there, here := run(node, filepath.Join(goes(t, nil, "env", "GOROOT"), "lib", "wasm", "wasm_exec_node.js"), wasm), run(native)
	assert.Contains(t, here, "pipeline.Templates templates.pdf ")
	assert.Equal(t, strings.Split(here, "\n"), strings.Split(there, "\n"))
}
