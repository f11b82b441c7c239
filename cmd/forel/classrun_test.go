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

	"forel/cmd/pipeline"
)

// rollOf reads a roster.
func rollOf(t *testing.T, text string, workers int) *pipeline.Roll {
	t.Helper()
	roll, err := pipeline.Class{Source: pipeline.Source{Files: []pipeline.File{{Name: "roster.csv", Data: []byte(text)}}}, Workers: workers}.Read()
	require.NoError(t, err)
	return roll
}

// of gives the first rows of the roster of twenty.
func of(t *testing.T, students int) string {
	t.Helper()
	data, err := os.ReadFile("../../testdata/class/roster.csv")
	require.NoError(t, err)
	return strings.Join(strings.SplitAfter(string(data), "\n")[:students+1], "")
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
	var got []map[string]string
	for _, workers := range []int{1, 4} {
		folder := t.TempDir()
		roll := rollOf(t, of(t, 4), workers)
		require.NoError(t, makeClass(roll, shelf(folder), io.Discard, voice{io.Discard}))
		require.Equal(t, 4, roll.Count(pipeline.Made))
		got = append(got, filesBelow(t, folder))
	}
	assert.Equal(t, got[0], got[1])
}

// Stopped in the middle, every folder there is whole; run again, it goes on and
// ends with what an undisturbed run gives.
func TestClassStoppedGoesOn(t *testing.T) {
	calm, stopped := t.TempDir(), t.TempDir()
	rollOf(t, of(t, 8), 2).Make(t.Context(), shelf(calm), nil)
	want := filesBelow(t, calm)

	ctx, stop := context.WithCancel(t.Context())
	roll := rollOf(t, of(t, 8), 2)
	roll.Make(ctx, shelf(stopped), func(done float64) {
		if done >= 3.0/8 {
			stop()
		}
	})
	made := roll.Count(pipeline.Made)
	assert.Less(t, made, 8)
	assert.Positive(t, roll.Count(pipeline.Left))
	for name, data := range filesBelow(t, stopped) {
		assert.Equal(t, want[name], data, "%s is whole", name)
	}
	folders, err := os.ReadDir(stopped)
	require.NoError(t, err)
	assert.Len(t, folders, made, "nothing half-written is left")

	roll = rollOf(t, of(t, 8), 2)
	roll.Make(t.Context(), shelf(stopped), nil)
	assert.Equal(t, made, roll.Count(pipeline.Kept), "what was done is not done again")
	assert.Equal(t, want, filesBelow(t, stopped))
}

// A row that changed is made anew, its old files gone; a folder that is not
// forel's is left alone.
func TestClassFoldersGiveWay(t *testing.T) {
	folder := t.TempDir()
	read := func(lining string) *pipeline.Roll {
		return rollOf(t, "name,height,width,thickness,lining.thickness\nA,220,150,30,"+lining+"\nB,200,140,20,\n", 2)
	}
	own := filepath.Join(folder, "02-b")
	require.NoError(t, os.Mkdir(own, 0o755))
	require.NoError(t, os.WriteFile(filepath.Join(own, "photo"), []byte("mine"), 0o644))

	roll := read("0.15")
	roll.Make(t.Context(), shelf(folder), nil)
	assert.Equal(t, []pipeline.State{pipeline.Made, pipeline.Failed}, []pipeline.State{roll.Students[0].State, roll.Students[1].State})
	assert.FileExists(t, filepath.Join(folder, "01-a", "side-lining.svg"))

	roll = read("0")
	roll.Make(t.Context(), shelf(folder), nil)
	assert.Equal(t, pipeline.Made, roll.Students[0].State)
	assert.NoFileExists(t, filepath.Join(folder, "01-a", "side-lining.svg"))
	assert.Equal(t, "mine", filesBelow(t, own)["photo"])
}

// Every link of the index leads to a file that is there.
func TestIndexLeadsToFiles(t *testing.T) {
	folder := t.TempDir()
	roll := rollOf(t, of(t, 3), 2)
	roll.Students[1].Name = `<b>"Ärmel" & Co</b>`
	require.NoError(t, makeClass(roll, shelf(folder), io.Discard, voice{io.Discard}))
	files := filesBelow(t, folder)
	index := files[pipeline.IndexName]
	assert.NotContains(t, index, "<b>", "a name can't break the page")
	links := 0
	for _, attr := range []string{`href="`, `src="`} {
		for _, part := range strings.Split(index, attr)[1:] {
			to, _, _ := strings.Cut(part, `"`)
			assert.Contains(t, files, filepath.FromSlash(to))
			links++
		}
	}
	assert.GreaterOrEqual(t, links, 3*3)
	for _, s := range roll.Students {
		thickness := s.File.Job.Shared().Books[0].Thickness.Largest().MM()
		assert.Regexp(t, fmt.Sprintf(`book: [^<]* %.1f mm thick<`, thickness), index)
	}
}
