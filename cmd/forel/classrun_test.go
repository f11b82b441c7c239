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
	"forel/cmd/shelf"
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
		out[filepath.ToSlash(rel)] = string(data)
		return err
	}))
	return out
}

// However many work at a time, the files are the same. Stopped in the middle, it leaves the
// folder as it was; run again, it goes on and ends with what an undisturbed run makes.
func TestClassStoppedGoesOn(t *testing.T) {
	calm, stopped := t.TempDir(), filepath.Join(t.TempDir(), "stopped")
	make := func(students, workers int, folder string) *pipeline.Roll {
		roll := rollOf(t, of(t, students), workers)
		require.NoError(t, makeClass(roll, folder, io.Discard, voice{io.Discard}))
		return roll
	}
	require.Equal(t, 4, make(4, 4, calm).Count(pipeline.Made))
	make(1, 1, stopped)
	was := filesBelow(t, stopped)

	ctx, stop := context.WithCancel(t.Context())
	s, err := shelf.Open(ctx, stopped, classSet)
	require.NoError(t, err)
	roll := rollOf(t, of(t, 4), 1)
	require.NoError(t, roll.Make(ctx, s, func(done float64) {
		if done >= 3.0/4 {
			stop()
		}
	}))
	s.Close(true)
	made := roll.Count(pipeline.Made)
	assert.Positive(t, made)
	assert.Positive(t, roll.Count(pipeline.Left))
	assert.Equal(t, was, landed(t, stopped))

	roll = make(4, 1, stopped)
	assert.Equal(t, made+1, roll.Count(pipeline.Kept), "what was done is not done again")
	assert.Equal(t, filesBelow(t, calm), filesBelow(t, stopped))
	beside, err := os.ReadDir(filepath.Dir(stopped))
	require.NoError(t, err)
	assert.Len(t, beside, 1, "nothing else is left")
}

// A row that changed is made anew and its old files are gone, as are those of a student
// who left; what the teacher put there stays.
func TestClassFoldersGiveWay(t *testing.T) {
	folder := t.TempDir()
	make := func(rows string) {
		roll := rollOf(t, "name,height,width,thickness,lining.thickness\n"+rows, 2)
		require.NoError(t, makeClass(roll, folder, io.Discard, voice{io.Discard}))
	}
	own := map[string]string{"01-a/notes.txt": "mine", "02-b/photo": "mine", "03-c/side.svg~": "mine", "letter.txt": "mine"}
	for name, data := range own {
		require.NoError(t, os.MkdirAll(filepath.Join(folder, filepath.Dir(name)), 0o755))
		require.NoError(t, os.WriteFile(filepath.Join(folder, name), []byte(data), 0o644))
	}
	make("A,220,150,30,0.15\nB,200,140,20,\nC,210,140,20,\nD,210,140,20,\n")
	assert.FileExists(t, filepath.Join(folder, "01-a", "side-lining.svg"))
	make("A,220,150,30,0\nB,200,140,20,\n")
	assert.NoFileExists(t, filepath.Join(folder, "01-a", "side-lining.svg"))
	assert.NoDirExists(t, filepath.Join(folder, "04-d"))
	is := filesBelow(t, folder)
	for name, data := range own {
		assert.Equal(t, data, is[name], name)
	}
	assert.NotContains(t, is, "03-c/side.svg")
}

// Every link of the index leads to a file that is there.
func TestIndexLeadsToFiles(t *testing.T) {
	folder := t.TempDir()
	roll := rollOf(t, of(t, 2), 2)
	roll.Students[1].Name = `<b>"Ärmel" & Co</b>`
	require.NoError(t, makeClass(roll, folder, io.Discard, voice{io.Discard}))
	files := filesBelow(t, folder)
	index := files[pipeline.IndexName]
	assert.NotContains(t, index, "<b>", "a name can't break the page")
	links := 0
	for _, attr := range []string{`href="`, `src="`} {
		for _, part := range strings.Split(index, attr)[1:] {
			to, _, _ := strings.Cut(part, `"`)
			assert.Contains(t, files, to)
			links++
		}
	}
	assert.GreaterOrEqual(t, links, 3*2)
	for _, s := range roll.Students {
		thickness := s.File.Job.Shared().Books[0].Thickness.Largest().MM()
		assert.Regexp(t, fmt.Sprintf(`book: [^<]* %.1f mm thick<`, thickness), index)
	}
}
