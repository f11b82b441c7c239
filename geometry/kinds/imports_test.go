package kinds_test

import (
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// ofKinds are the packages of kinds of case.
var ofKinds = []string{"forel/geometry/slipcase", "forel/geometry/onepiece", "forel/geometry/chemise"}

// mayKnow are the folders that may import a kind: the table, and what tests draw
// their cases with.
var mayKnow = []string{"geometry/kinds", "render/pagetest"}

// A kind is told of by its plan alone: nothing but the table imports one, tests
// left out.
func TestNothingImportsAKind(t *testing.T) {
	found := map[string]bool{}
	root := os.DirFS("../..")
	require.NoError(t, fs.WalkDir(root, ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(name, ".go") || strings.HasSuffix(name, "_test.go") {
			return err
		}
		source, err := fs.ReadFile(root, name)
		require.NoError(t, err)
		file, err := parser.ParseFile(token.NewFileSet(), name, source, parser.ImportsOnly)
		require.NoError(t, err)
		for _, i := range file.Imports {
			imported, err := strconv.Unquote(i.Path.Value)
			require.NoError(t, err)
			for _, k := range ofKinds {
				if imported == k && "forel/"+path.Dir(name) != k {
					found[path.Dir(name)] = true
				}
			}
		}
		return nil
	}))
	for _, folder := range mayKnow {
		delete(found, folder)
	}
	assert.Empty(t, found, "packages that import a kind of case")
}
