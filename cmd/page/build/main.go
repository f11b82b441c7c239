// Command build makes the page: one HTML file with the program, its scripts and its look
// inside. The same sources make the same bytes.
package main

import (
	"flag"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"

	"forel/cmd/page/assets"
)

// offline is the file beside the page that keeps it for use without a network, where it is
// served by a web server.
const offline = "forel-offline.js"

func main() {
	out := flag.String("o", "forel.html", "`file` to write")
	flag.Parse()
	if err := build(*out); err != nil {
		fmt.Fprintln(os.Stderr, "build:", err)
		os.Exit(1)
	}
}

// build makes the page and writes it to a file.
func build(out string) error {
	program, support, err := compile()
	if err != nil {
		return err
	}
	page, sizes, err := assemble(program, support)
	if err != nil {
		return err
	}
	script, err := assets.Files.ReadFile(offline)
	if err != nil {
		return err
	}
	if err := os.WriteFile(filepath.Join(filepath.Dir(out), offline), script, 0o644); err != nil {
		return err
	}
	fmt.Printf("%s: %d bytes (program %d, compressed %d, as text %d)\n", out, len(page), len(program), sizes.compressed, sizes.text)
	return os.WriteFile(out, page, 0o644)
}

// inlined are the packages whose functions are put in where they are called, which makes a
// program fast and large: those that most of the time is spent in. Without the others the
// page is half a megabyte smaller, and no slower.
var inlined = strings.Fields("runtime internal/runtime/... internal/bytealg slices sort math math/bits bytes compress/flate")

// small returns what the compiler is told so that the page is small.
func small() []string {
	flags := []string{"-gcflags=all=-l"}
	for _, p := range inlined {
		flags = append(flags, "-gcflags="+p+"=")
	}
	return flags
}

// compile returns the program for a browser and the support script of the Go that made it.
func compile() (program []byte, support string, err error) {
	folder, err := os.MkdirTemp("", "forel-page")
	if err != nil {
		return nil, "", err
	}
	defer os.RemoveAll(folder)
	file := filepath.Join(folder, "worker.wasm")
	args := append([]string{"build", "-trimpath", "-buildvcs=false", "-ldflags=-s -w -buildid="}, small()...)
	cmd := exec.Command("go", append(args, "-o", file, "forel/cmd/page/worker")...)
	cmd.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm", "CGO_ENABLED=0")
	cmd.Stderr = os.Stderr
	if err := cmd.Run(); err != nil {
		return nil, "", fmt.Errorf("compiling the program: %w", err)
	}
	if program, err = os.ReadFile(file); err != nil {
		return nil, "", err
	}
	root, err := exec.Command("go", "env", "GOROOT").Output()
	if err != nil {
		return nil, "", fmt.Errorf("finding Go: %w", err)
	}
	script, err := os.ReadFile(filepath.Join(strings.TrimSpace(string(root)), "lib", "wasm", "wasm_exec.js"))
	return program, string(script), err
}
