package main

import (
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const countedShop = `# what I have, invented
[[material]]
name = "grey board"
kind = "board"
thickness = 2
[[material.sheet]]
size = "700 x 1000 mm"
count = 60
`

// takings readies a folder with a shop file and a job, and returns what runs a taking there.
func takings(t *testing.T) (at string, take func() (string, error)) {
	at = t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(at, "shop.toml"), []byte(countedShop), 0o644))
	require.NoError(t, os.WriteFile(filepath.Join(at, "case.toml"), []byte("board = \"grey board\"\n[offcuts]\nleast = \"500 mm\"\n[[book]]\nheight = 221\nwidth = 148.5\nthickness = 32\n"), 0o644))
	return at, func() (string, error) {
		cmd := program([]string{"stock", "case.toml", "--take", "--effort", "0"})
		cmd.Dir = at
		said, err := cmd.CombinedOutput()
		return string(said), err
	}
}

var (
	taken = regexp.MustCompile(`(?s)\[\[taking\]\]\nnumber = (\d+)`)
)

// Of programs that take from one shop file at the same time each is written down, once, or
// refused and says so: what is left is what was there less what was taken.
func TestTakingsAtTheSameTime(t *testing.T) {
	at, take := takings(t)
	const runs = 6
	done := make(chan error, runs)
	for range runs {
		go func() {
			said, err := take()
			if err != nil && !strings.Contains(said, "was changed by another program meanwhile, and nothing was taken; run it again") &&
				!strings.Contains(said, "another run of forel is writing") {
				err = fmt.Errorf("%w: %s", err, said)
			} else if err != nil {
				err = errTurnedAway
			}
			done <- err
		}()
	}
	took := 0
	for range runs {
		switch err := <-done; err {
		case nil:
			took++
		case errTurnedAway:
		default:
			t.Error(err)
		}
	}
	require.Positive(t, took)
	text, err := os.ReadFile(filepath.Join(at, "shop.toml"))
	require.NoError(t, err)
	var numbers []string
	for _, m := range taken.FindAllStringSubmatch(string(text), -1) {
		numbers = append(numbers, m[1])
	}
	assert.Len(t, numbers, took, "%s", text)
	assert.Len(t, slices.Compact(slices.Sorted(slices.Values(numbers))), took)
	used := strings.Count(string(text), "[[used]]")
	assert.Contains(t, string(text), fmt.Sprintf("count = %d\n", 60-used))
	entries, err := os.ReadDir(at)
	require.NoError(t, err)
	assert.Len(t, entries, 2, "nothing is left beside")
}

var errTurnedAway = fmt.Errorf("turned away")

// A taking that is killed at a random moment leaves the shop file as it was or as it is to be;
// the next goes on from there.
func TestTakingKilled(t *testing.T) {
	at, take := takings(t)
	started := time.Now()
	said, err := take()
	require.NoError(t, err, said)
	lasts := time.Since(started)
	first, err := os.ReadFile(filepath.Join(at, "shop.toml"))
	require.NoError(t, err)
	random := rand.New(rand.NewPCG(1, 2))
	for range repeats(10) {
		require.NoError(t, os.WriteFile(filepath.Join(at, "shop.toml"), []byte(countedShop), 0o644))
		cmd := program([]string{"stock", "case.toml", "--take", "--effort", "0"})
		cmd.Dir = at
		require.NoError(t, cmd.Start())
		time.Sleep(lasts*3/10 + time.Duration(random.Int64N(int64(lasts*8/10))))
		cmd.Process.Kill()
		cmd.Wait()
		is, err := os.ReadFile(filepath.Join(at, "shop.toml"))
		require.NoError(t, err)
		if string(is) != countedShop {
			require.Equal(t, string(first), string(is))
		}
		said, err := take()
		require.NoError(t, err, said)
	}
	entries, err := os.ReadDir(at)
	require.NoError(t, err)
	assert.Len(t, entries, 2, "nothing is left beside")
}
