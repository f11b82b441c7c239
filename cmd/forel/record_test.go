package main

import (
	"bytes"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/cmd/recordfile"
)

// aJob writes a job file and returns it with its record's name.
func aJob(t *testing.T) (job, record string) {
	dir := t.TempDir()
	job = filepath.Join(dir, "case.toml")
	require.NoError(t, os.WriteFile(job, []byte("[[book]]\nheight = 148\nwidth = 105\nthickness = 14\n"), 0o644))
	return job, filepath.Join(dir, "case.record.toml")
}

// Of several programs that add to one record at once none loses what another wrote.
func TestRecordersLoseNothing(t *testing.T) {
	job, record := aJob(t)
	const writers = 6
	var all sync.WaitGroup
	for n := range writers {
		all.Go(func() {
			out, err := program([]string{"record", job, "--play-height", fmt.Sprintf("1.%d", n)}).CombinedOutput()
			assert.NoError(t, err, string(out))
		})
	}
	all.Wait()
	data, err := os.ReadFile(record)
	require.NoError(t, err)
	r, err := recordfile.Parse(record, data)
	require.NoError(t, err)
	seen := map[float64]bool{}
	for _, taken := range r.Taken {
		seen[taken.Readings[0].MM()] = true
	}
	assert.Len(t, seen, writers)
}

// A run that is killed leaves the record that was, or the longer one, and nothing that
// keeps the next from adding to it.
func TestRecorderKilled(t *testing.T) {
	for range repeats(5) {
		job, record := aJob(t)
		require.NoError(t, program([]string{"record", job, "--play-height", "1.1"}).Run())
		before, err := os.ReadFile(record)
		require.NoError(t, err)
		cmd := program([]string{"record", job, "--play-height", "1.2"})
		require.NoError(t, cmd.Start())
		time.Sleep(time.Duration(rand.IntN(60)) * time.Millisecond)
		require.NoError(t, cmd.Process.Kill())
		cmd.Wait()
		out, err := program([]string{"record", job, "--play-height", "1.3"}).CombinedOutput()
		require.NoError(t, err, string(out))
		after, err := os.ReadFile(record)
		require.NoError(t, err)
		assert.True(t, bytes.HasPrefix(after, before))
		r, err := recordfile.Parse(record, after)
		require.NoError(t, err)
		assert.Contains(t, []int{2, 3}, len(r.Taken))
		last, _ := r.Last("play-height")
		assert.InDelta(t, 1.3, last.Readings[0].MM(), 1e-9)
		entries, err := os.ReadDir(filepath.Dir(record))
		require.NoError(t, err)
		assert.Len(t, entries, 2)
	}
}
