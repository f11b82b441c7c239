package pipeline_test

import (
	"encoding/json"
	"go/ast"
	"go/parser"
	"go/token"
	"io"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// heavy is what nothing that goes into a page in a browser may import: servers,
// templates, which keep all methods of all types in the program, other programs,
// terminals.
var heavy = []string{
	"net", "net/http", "html/template", "text/template", "os/exec", "os/signal",
	"github.com/spf13/pflag", "github.com/schollz/progressbar/v3", "golang.org/x/term", "github.com/pdfcpu/pdfcpu/pkg/api",
}

// outside is what our own packages below may not use: what they are given is all
// they know.
var outside = []string{"os", "io/ioutil", "path/filepath", "net", "syscall", "log"}

// clocked may look at the clock: a search that is given a time ends by it.
const clocked = "forel/paper/pack"

// No file, no clock, no terminal: neither the package nor what it stands on, nor what
// runs in a browser.
func TestPipelineKnowsNothingOutside(t *testing.T) {
	list := json.NewDecoder(strings.NewReader(goes(t, browser, "list", "-deps", "-json=ImportPath,Imports,Dir,GoFiles", ".", "forel/cmd/page/worker")))
	own := 0
	for {
		var p struct {
			ImportPath, Dir  string
			Imports, GoFiles []string
		}
		err := list.Decode(&p)
		if err == io.EOF {
			break
		}
		require.NoError(t, err)
		assert.NotContains(t, heavy, p.ImportPath)
		if !strings.HasPrefix(p.ImportPath, "forel/") {
			continue
		}
		own++
		for _, i := range p.Imports {
			assert.NotContains(t, outside, i, "imported by %s", p.ImportPath)
		}
		for _, f := range p.GoFiles {
			if p.ImportPath != clocked {
				assert.Empty(t, looksAtClock(t, filepath.Join(p.Dir, f)), "%s of %s looks at the clock", f, p.ImportPath)
			}
		}
	}
	assert.Greater(t, own, 20, "the packages were listed")
}

// looksAtClock gives what a Go file calls of the package time that reads the clock.
func looksAtClock(t *testing.T, file string) (calls []string) {
	t.Helper()
	tree, err := parser.ParseFile(token.NewFileSet(), file, nil, 0)
	require.NoError(t, err)
	imported := false
	for _, i := range tree.Imports {
		path, _ := strconv.Unquote(i.Path.Value)
		imported = imported || path == "time"
	}
	ast.Inspect(tree, func(n ast.Node) bool {
		if s, ok := n.(*ast.SelectorExpr); ok && imported {
			if x, ok := s.X.(*ast.Ident); ok && x.Name == "time" {
				switch s.Sel.Name {
				case "Now", "Since", "Until", "After", "AfterFunc", "Tick", "NewTimer", "NewTicker", "Sleep":
					calls = append(calls, s.Sel.Name)
				}
			}
		}
		return true
	})
	return calls
}
