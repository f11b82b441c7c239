//go:build unix

package shelf

import (
	"context"
	"io/fs"
	"os"
	"path/filepath"
	"syscall"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/cmd/pipeline"
)

// Files and folders have the rights that the umask leaves, and a folder keeps its own.
func TestUmask(t *testing.T) {
	was := syscall.Umask(0o027)
	defer syscall.Umask(was)
	folder, _ := ready(t, 0)
	rights := func(name string) string {
		info, err := os.Stat(filepath.Join(folder, name))
		require.NoError(t, err)
		return info.Mode().String()
	}
	require.NoError(t, put(folder, "a"))
	assert.Equal(t, []string{"drwxr-x---", "-rw-r-----", "drwxr-x---", "-rw-r-----"}, []string{rights(""), rights("side.svg"), rights("both"), rights(ListName)})
	require.NoError(t, os.Chmod(folder, 0o2775|fs.ModeSetgid))
	require.NoError(t, put(folder, "b"))
	assert.Equal(t, "dgrwxrwxr-x", rights(""))
}

// A file that is changed may be read by whom it could be before; one that may not be written
// to is left alone.
func TestFileChangedKeepsItsRights(t *testing.T) {
	folder := t.TempDir()
	file := filepath.Join(folder, "shop.toml")
	change := func() error {
		s, err := Open(context.Background(), folder, "")
		require.NoError(t, err)
		defer s.Close(false)
		if _, err := s.Take("shop.toml"); err != nil {
			return err
		}
		require.NoError(t, s.Put("", "", []pipeline.File{{Name: "shop.toml", Data: []byte("new")}}))
		_, err = s.Land(true, nil)
		return err
	}
	for _, mode := range []fs.FileMode{0o600, 0o640, 0o666} {
		require.NoError(t, os.WriteFile(file, []byte("mine"), mode))
		require.NoError(t, os.Chmod(file, mode))
		require.NoError(t, change())
		is, err := os.Stat(file)
		require.NoError(t, err)
		assert.Equal(t, mode, is.Mode())
	}
	require.NoError(t, os.WriteFile(file, []byte("mine"), 0o644))
	require.NoError(t, os.Chmod(file, 0o444))
	assert.ErrorContains(t, change(), "it is read only")
	data, err := os.ReadFile(file)
	require.NoError(t, err)
	assert.Equal(t, "mine", string(data))
}
