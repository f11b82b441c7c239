package main

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/cmd/jobfile"
	"forel/cmd/shelf"
)

var update = flag.Bool("update", false, "write the files of the worked jobs in testdata again")

// TestWorkedJobs makes the drawings and the cut list of every worked job and
// holds them against those in testdata. They are there to show that output has
// changed, not that it is right: other tests measure that.
func TestWorkedJobs(t *testing.T) {
	jobs, err := filepath.Glob("../../testdata/*/job.toml")
	require.NoError(t, err)
	require.NotEmpty(t, jobs)
	for _, job := range jobs {
		dir := filepath.Dir(job)
		t.Run(filepath.Base(dir), func(t *testing.T) {
			out := t.TempDir()
			var list, said bytes.Buffer
			require.Equal(t, statusOK, run([]string{"templates", job, "--out", out}, &said, &said), said.String())
			require.Equal(t, statusOK, run([]string{"cutlist", job, "--format", "json", "--outlines"}, &list, &said), said.String())
			require.NoError(t, os.WriteFile(filepath.Join(out, "cutlist.json"), list.Bytes(), 0o644))
			var fits bytes.Buffer
			require.Equal(t, statusOK, run([]string{"fit", job, "--format", "json"}, &fits, &said), said.String())
			require.NoError(t, os.WriteFile(filepath.Join(out, "fit.json"), fits.Bytes(), 0o644))
			require.NoError(t, os.Remove(filepath.Join(out, "templates.pdf"))) // too large to keep
			require.NoError(t, os.Remove(filepath.Join(out, shelf.ListName)))
			if *update {
				replace(t, out, dir)
				return
			}
			assert.Equal(t, names(t, dir), append(names(t, out), "job.toml"))
			for _, name := range names(t, out) {
				want, err := os.ReadFile(filepath.Join(dir, name))
				require.NoError(t, err)
				got, err := os.ReadFile(filepath.Join(out, name))
				require.NoError(t, err)
				assert.True(t, bytes.Equal(want, got), "%s has changed; make golden writes it again", name)
			}
		})
	}
}

// TestPricedJob makes the order list of the worked job that has prices.
func TestPricedJob(t *testing.T) {
	const dir = "../../testdata/prices"
	for name, args := range map[string][]string{
		"order.txt": {"order"}, "order.csv": {"order", "--format", "csv"},
		"costing.txt": {"quote"}, "costing.csv": {"quote", "--format", "csv"},
	} {
		holdReport(t, filepath.Join(dir, name), append(args, filepath.Join(dir, "cable-soundings.toml"))...)
	}
}

// TestWorkedShop makes the job that is made from a shop file, written out as one file, and
// its plan of sheets.
func TestWorkedShop(t *testing.T) {
	const dir = "../../testdata/shop"
	for name, args := range map[string][]string{"plain.toml": {"plain"}, "stock.txt": {"stock", "--cuts"}, "list.txt": {"shop", "--list"}} {
		var got, said bytes.Buffer
		of := map[bool]string{true: "shop.toml", false: "pier-lights.toml"}[args[0] == "shop"]
		require.Equal(t, statusOK, run(append(args, filepath.Join(dir, of)), &got, &said), said.String())
		file := filepath.Join(dir, name)
		if *update {
			require.NoError(t, os.WriteFile(file, got.Bytes(), 0o644))
			continue
		}
		want, err := os.ReadFile(file)
		require.NoError(t, err)
		assert.Equal(t, string(want), filepath.ToSlash(got.String()), "%s has changed; make golden writes it again", name)
	}
}

// TestWorkedTimetable makes the timetable of three of the worked jobs, one of them
// patterned, as text and for a calendar.
func TestWorkedTimetable(t *testing.T) {
	const dir = "../../testdata/timetable"
	out := t.TempDir()
	var got, said bytes.Buffer
	args := []string{"timetable", "--start", "2026-12-01", "--out", out}
	for _, job := range []string{"harbour-log", "net-ledger", "lighthouse-papers"} {
		args = append(args, filepath.Join("../../testdata", job, "job.toml"))
	}
	require.Equal(t, statusOK, run(args, &got, &said), said.String())
	text, _, _ := strings.Cut(got.String(), "wrote ")
	calendar, err := os.ReadFile(filepath.Join(out, "timetable.ics"))
	require.NoError(t, err)
	for name, made := range map[string]string{"timetable.txt": text, "timetable.ics": string(calendar)} {
		file := filepath.Join(dir, name)
		if *update {
			require.NoError(t, os.WriteFile(file, []byte(made), 0o644))
			continue
		}
		want, err := os.ReadFile(file)
		require.NoError(t, err)
		assert.Equal(t, string(want), made, "%s has changed; make golden writes it again", name)
	}
}

// TestWorkedChoices advises what to make for some books, all of them invented.
func TestWorkedChoices(t *testing.T) {
	for name, flags := range map[string][]string{
		"ordinary":    {"--height", "221", "--width", "148.5", "--thickness", "32", "--weight", "640 g"},
		"heavy":       {"--height", "340", "--width", "260", "--thickness", "60", "--weight", "4.2 kg"},
		"tender":      {"--height", "9", "--width", "6", "--thickness", "1 1/4", "--units", "in", "--condition", "fragile", "--use", "handled daily"},
		"thin":        {"--height", "210", "--width", "148", "--thickness", "6"},
		"for-keeping": {"--height", "203", "--width", "130", "--thickness", "22", "--use", "archive"},
	} {
		holdReport(t, "../../testdata/choose/"+name+".txt", append([]string{"choose"}, flags...)...)
	}
}

// TestWorkedLessons learns from the records of six invented cases, for the first worked job,
// shows one of the records, and finds the way back of a case that came out too narrow.
func TestWorkedLessons(t *testing.T) {
	const dir, job = "../../testdata/lessons", "../../testdata/harbour-log/job.toml"
	holdReport(t, dir+"/lessons.txt", "lessons", dir, "--job", job)
	holdReport(t, dir+"/record.txt", "record", dir+"/buoy-list.toml", "--show")
	holdReport(t, dir+"/rescue.txt", "rescue", job, "--play-height", "2.1", "--play-thickness", "0.4", "--unfinished")
}

// holdReport holds what a command prints against a file.
func holdReport(t *testing.T, file string, args ...string) {
	var got, said bytes.Buffer
	require.Equal(t, statusOK, run(args, &got, &said), said.String())
	if *update {
		require.NoError(t, os.WriteFile(file, got.Bytes(), 0o644))
		return
	}
	want, err := os.ReadFile(file)
	require.NoError(t, err)
	assert.Equal(t, string(want), filepath.ToSlash(got.String()), "%s has changed; make golden writes it again", file)
}

// The first worked job is the starter with every setting and the invented book, so
// that what it shows is what forel new --full --example gives.
func TestStarterIsTheFirstWorkedJob(t *testing.T) {
	job, err := os.ReadFile("../../testdata/harbour-log/job.toml")
	require.NoError(t, err)
	assert.Equal(t, string(jobfile.Starter()), string(job))
}

// names lists the files of a folder, job.toml last.
func names(t *testing.T, dir string) []string {
	entries, err := os.ReadDir(dir)
	require.NoError(t, err)
	var out []string
	job := false
	for _, e := range entries {
		if e.Name() == "job.toml" {
			job = true
			continue
		}
		out = append(out, e.Name())
	}
	if job {
		out = append(out, "job.toml")
	}
	return out
}

// replace puts the files of one folder in the place of another's.
func replace(t *testing.T, from, to string) {
	for _, name := range names(t, to) {
		if strings.HasSuffix(name, ".svg") || name == "cutlist.json" || name == "fit.json" {
			require.NoError(t, os.Remove(filepath.Join(to, name)))
		}
	}
	for _, name := range names(t, from) {
		data, err := os.ReadFile(filepath.Join(from, name))
		require.NoError(t, err)
		require.NoError(t, os.WriteFile(filepath.Join(to, name), data, 0o644))
	}
}
