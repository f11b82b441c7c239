package kinds_test

import (
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// ofKinds are the packages of kinds of case.
var ofKinds = []string{"forel/geometry/slipcase", "forel/geometry/onepiece", "forel/geometry/chemise", "forel/geometry/box"}

// mayKnow are the folders that may import a kind: the table, and what tests draw
// their cases with.
var mayKnow = []string{"geometry/kinds", "render/pagetest"}

// layers are the folders of the code, each of which imports those after it only.
var layers = []string{"cmd", "render", "paper", "geometry"}

// Imports run downward: no package imports one of a layer above its own, tests left
// out.
func TestImportsRunDownward(t *testing.T) {
	everyImport(t, func(folder, imported string) {
		own := slices.Index(layers, layerOf(folder))
		other := slices.Index(layers, layerOf(strings.TrimPrefix(imported, "forel/")))
		assert.False(t, strings.HasPrefix(imported, "forel/") && other < own, "%s imports %s", folder, imported)
	})
}

// layerOf returns the first part of a folder's name.
func layerOf(folder string) string {
	first, _, _ := strings.Cut(folder, "/")
	return first
}

// A kind is told of by its plan alone: nothing but the table imports one, tests
// left out.
func TestNothingImportsAKind(t *testing.T) {
	found := map[string]bool{}
	everyImport(t, func(folder, imported string) {
		if slices.Contains(ofKinds, imported) && "forel/"+folder != imported {
			found[folder] = true
		}
	})
	for _, folder := range mayKnow {
		delete(found, folder)
	}
	assert.Empty(t, found, "packages that import a kind of case")
}

// everyImport calls f with each import of a Go file that is no test, and the folder of
// the file.
func everyImport(t *testing.T, f func(folder, imported string)) {
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
			f(path.Dir(name), imported)
		}
		return nil
	}))
}
