// Command notice prints the licences of everything that is linked into forel, on any
// system it is made for: the file NOTICE. It is run by make notice.
package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
)

const head = `The licences of what is linked into forel. This file is made by "make notice".

The printed outputs of forel are set in, and embed, the Go fonts by Bigelow & Holmes,
distributed with golang.org/x/image under the BSD-style licence of the Go project (see
golang.org/x/image/font/gofont), and the DejaVu fonts, whose licence stands below with
github.com/go-fonts/dejavu.
`

// target is a program on a system.
type target struct{ system, arch, program string }

var targets = []target{
	{"linux", "amd64", "forel/cmd/forel"}, {"darwin", "arm64", "forel/cmd/forel"}, {"windows", "amd64", "forel/cmd/forel"},
	{"js", "wasm", "forel/cmd/page/worker"},
}

// file is a file of a module.
type file struct{ name, path string }

// licence is the name of a file that has a licence in it.
var licence = regexp.MustCompile(`(?i)^(un)?(licen[cs]e|copying|notice|patents)`)

func main() {
	text, err := notice(targets)
	if err != nil {
		fmt.Fprintln(os.Stderr, "error:", err)
		os.Exit(1)
	}
	os.Stdout.Write(text)
}

// notice returns the licences of all that is linked into programs.
func notice(programs []target) ([]byte, error) {
	files := map[string][]file{} // by module and version
	for _, t := range programs {
		if err := t.licences(files); err != nil {
			return nil, err
		}
	}
	root, err := exec.Command("go", "env", "GOROOT").Output()
	if err != nil {
		return nil, err
	}
	files["Go, its standard library"] = []file{{"LICENSE", filepath.Join(strings.TrimSpace(string(root)), "LICENSE")}}

	out := bytes.NewBufferString(head)
	for _, module := range slices.Sorted(maps.Keys(files)) {
		if len(files[module]) == 0 {
			return nil, fmt.Errorf("%s has no licence", module)
		}
		for _, file := range files[module] {
			text, err := os.ReadFile(file.path)
			if err != nil {
				return nil, err
			}
			name := module + ": " + file.name
			fmt.Fprintf(out, "\n\n%s\n%s\n\n%s\n", name, strings.Repeat("=", len(name)), strings.TrimSpace(strings.ReplaceAll(string(text), "\r\n", "\n")))
		}
	}
	return out.Bytes(), nil
}

// licences adds the files of every module that is linked into a program: those of its root,
// and of the folders of packages that have licences of their own.
func (t target) licences(files map[string][]file) error {
	cmd := exec.Command("go", "list", "-deps", "-json=Dir,Module", t.program)
	cmd.Env = append(os.Environ(), "GOOS="+t.system, "GOARCH="+t.arch, "CGO_ENABLED=0")
	cmd.Stderr = os.Stderr
	list, err := cmd.Output()
	if err != nil {
		return fmt.Errorf("go list: %w", err)
	}
	for read := json.NewDecoder(bytes.NewReader(list)); ; {
		var p struct {
			Dir    string
			Module *struct {
				Path, Version, Dir string
				Main               bool
			}
		}
		if err := read.Decode(&p); err == io.EOF {
			return nil
		} else if err != nil {
			return err
		}
		if p.Module == nil || p.Module.Main {
			continue
		}
		module := p.Module.Path + " " + p.Module.Version
		if _, seen := files[module]; !seen {
			files[module] = nil
		}
		for dir := p.Dir; strings.HasPrefix(dir, p.Module.Dir); dir = filepath.Dir(dir) {
			entries, err := os.ReadDir(dir)
			if err != nil {
				return err
			}
			for _, e := range entries {
				path := filepath.Join(dir, e.Name())
				name, _ := filepath.Rel(p.Module.Dir, path)
				is := file{filepath.ToSlash(name), path}
				if e.Type().IsRegular() && licence.MatchString(e.Name()) && filepath.Ext(name) != ".go" && !slices.Contains(files[module], is) {
					files[module] = append(files[module], is)
				}
			}
		}
		slices.SortFunc(files[module], func(a, b file) int { return strings.Compare(a.name, b.name) })
	}
}
