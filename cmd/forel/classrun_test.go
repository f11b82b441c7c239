package main

import (
	"context"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/cmd/roster"
)

func twenty(t *testing.T) []roster.Row {
	t.Helper()
	data, err := os.ReadFile("../../testdata/class/roster.csv")
	require.NoError(t, err)
	rows, err := roster.Read("roster.csv", data, nil)
	require.NoError(t, err)
	return rows
}

// files gives every file below a folder with what is in it.
func filesBelow(t *testing.T, folder string) map[string]string {
	t.Helper()
	out := map[string]string{}
	require.NoError(t, filepath.WalkDir(folder, func(path string, d os.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		data, err := os.ReadFile(path)
		rel, _ := filepath.Rel(folder, path)
		out[rel] = string(data)
		return err
	}))
	return out
}

// However many work at a time, the files are the same.
func TestClassIsTheSameOnOneCoreAndOnMany(t *testing.T) {
	rows := twenty(t)[:4]
	one, many := class{folder: t.TempDir(), workers: 1}, class{folder: t.TempDir(), workers: 4}
	for _, c := range []*class{&one, &many} {
		done := c.make(t.Context(), rows, voice{io.Discard})
		require.Equal(t, len(rows), count(done, rowMade))
		require.NoError(t, c.finish(done, voice{io.Discard}))
	}
	assert.Equal(t, filesBelow(t, one.folder), filesBelow(t, many.folder))
}

// Stopped in the middle, every folder there is whole; run again, it goes on and
// ends with what an undisturbed run gives.
func TestClassStoppedGoesOn(t *testing.T) {
	rows := twenty(t)[:8]
	calm, stopped := class{folder: t.TempDir(), workers: 2}, class{folder: t.TempDir(), workers: 2}
	calm.make(t.Context(), rows, voice{io.Discard})
	want := filesBelow(t, calm.folder)

	ctx, stop := context.WithCancel(t.Context())
	stopped.begun = func(i int) {
		if i == 3 {
			stop()
		}
	}
	done := stopped.make(ctx, rows, voice{io.Discard})
	made := count(done, rowMade)
	assert.Less(t, made, len(rows))
	assert.Positive(t, count(done, rowLeft))
	for name, data := range filesBelow(t, stopped.folder) {
		assert.Equal(t, want[name], data, "%s is whole", name)
	}
	folders, err := os.ReadDir(stopped.folder)
	require.NoError(t, err)
	assert.Len(t, folders, made, "nothing half-written is left")

	stopped.begun = nil
	done = stopped.make(t.Context(), rows, voice{io.Discard})
	assert.Equal(t, made, count(done, rowKept), "what was done is not done again")
	assert.Equal(t, want, filesBelow(t, stopped.folder))
}

// A row that changed is made anew, its old files gone; a folder that is not
// forel's is left alone.
func TestClassFoldersGiveWay(t *testing.T) {
	c := class{folder: t.TempDir(), workers: 2}
	read := func(lining string) []roster.Row {
		rows, err := roster.Read("r.csv", []byte("name,height,width,thickness,lining.thickness\nA,220,150,30,"+lining+"\nB,200,140,20,\n"), nil)
		require.NoError(t, err)
		return rows
	}
	own := filepath.Join(c.folder, "02-b")
	require.NoError(t, os.Mkdir(own, 0o755))
	require.NoError(t, os.WriteFile(filepath.Join(own, "photo"), []byte("mine"), 0o644))

	done := c.make(t.Context(), read("0.15"), voice{io.Discard})
	assert.Equal(t, []rowState{rowMade, rowFailed}, []rowState{done[0].state, done[1].state})
	assert.FileExists(t, filepath.Join(c.folder, "01-a", "side-lining.svg"))

	done = c.make(t.Context(), read("0"), voice{io.Discard})
	assert.Equal(t, rowMade, done[0].state)
	assert.NoFileExists(t, filepath.Join(c.folder, "01-a", "side-lining.svg"))
	assert.Equal(t, "mine", filesBelow(t, own)["photo"])
}

// Every link of the index leads to a file that is there.
func TestIndexLeadsToFiles(t *testing.T) {
	rows := twenty(t)[:3]
	rows[1].Name = `<b>"Ärmel" & Co</b>`
	c := class{folder: t.TempDir(), workers: 2}
	done := c.make(t.Context(), rows, voice{io.Discard})
	require.NoError(t, c.finish(done, voice{io.Discard}))
	files := filesBelow(t, c.folder)
	index := files[indexName]
	assert.NotContains(t, index, "<b>", "a name can't break the page")
	links := 0
	for _, attr := range []string{`href="`, `src="`} {
		for _, part := range strings.Split(index, attr)[1:] {
			to, _, _ := strings.Cut(part, `"`)
			assert.Contains(t, files, filepath.FromSlash(to))
			links++
		}
	}
	assert.GreaterOrEqual(t, links, 3*len(rows))
	for _, s := range done {
		assert.Contains(t, index, fmt.Sprint(s.loaded.round.Pretty(s.plan.Contents.Thickness)))
	}
}
