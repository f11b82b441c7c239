package main

import (
	"fmt"
	"maps"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// asProgram is set where this test is to be the program itself.
const asProgram = "FOREL_TEST_IS_THE_PROGRAM"

// program returns a run of the program.
func program(args []string) *exec.Cmd {
	cmd := exec.Command(os.Args[0], args...)
	cmd.Env = append(os.Environ(), asProgram+"=1")
	return cmd
}

// killed are runs into a folder that has another set of the same command, and whether
// the folder can be either set at any moment: not where the maker keeps a folder there.
// The search for a plan is left out or short: a run that is asked to stop writes the best until then.
var killed = []struct {
	name        string
	first, then []string
	own         map[string]string
	once        bool
}{
	{"templates", []string{"templates", "--example"}, []string{"templates", "--example", "--set", "lining.thickness=0"}, map[string]string{"notes.txt": "mine"}, true},
	{"templates, a folder", []string{"templates", "--example"}, []string{"templates", "--example", "--set", "lining.thickness=0"}, map[string]string{"own/notes.txt": "mine"}, false},
	{"templates, first", nil, []string{"templates", "--example"}, nil, true},
	{"gauge", []string{"gauge"}, []string{"gauge", "--units", "in"}, map[string]string{"notes.txt": "mine"}, true},
	{"handout", []string{"handout", "--example"}, []string{"handout", "--example", "--short"}, nil, true},
	{"stock", []string{"stock", "--example"}, []string{"stock", "--example", "--exact", "--effort", "0"}, map[string]string{"notes.txt": "mine"}, true},
	{"order", []string{"order", "--example"}, []string{"order", "--example", "--set", "order.spare_pieces=9", "--effort", "0"}, nil, true},
	{"quote", []string{"quote", "--example"}, []string{"quote", "--example", "--set", "quote.hour=30", "--effort", "0"}, map[string]string{"notes.txt": "mine"}, true},
	{"cutter", []string{"cutter", "--example", "--bed", "400x300"}, []string{"cutter", "--example", "--bed", "900x600", "--effort", "10"}, nil, true},
	{"timetable", []string{"timetable", "--example", "--start", "2026-12-01"}, []string{"timetable", "--example", "--start", "2026-12-02"}, nil, true},
	{"rescue", []string{"rescue", "--example", "--play-thickness=-0.8", "--unfinished"}, []string{"rescue", "--example", "--play-thickness=-0.8", "--unfinished", "--black"}, nil, true},
	{"measure", []string{"measure", "--example"}, []string{"measure", "--example", "--paper", "a5"}, map[string]string{"notes.txt": "mine"}, true},
	{"fit", []string{"fit", "--example"}, []string{"fit", "--example", "--swell", "2"}, nil, true},
	{"prove", []string{"prove", "--example"}, []string{"prove", "--example", "--black"}, nil, true},
	{"class", []string{"class", "old.csv"}, []string{"class", "new.csv", "--effort", "10"}, map[string]string{"01-ana/notes.txt": "mine", "letter.txt": "mine"}, true},
	{"new", nil, []string{"new", "case/case.toml"}, map[string]string{"notes.txt": "mine", "own/notes.txt": "mine"}, true},
}

// kills returns how many runs of each are killed: KILLS (as make soak has it), or one of
// a few.
func kills() (n int, soak bool) {
	if n, err := strconv.Atoi(os.Getenv("KILLS")); err == nil && n > 0 {
		return n, true
	}
	return 1, false
}

// repeats returns how often to kill what is usually killed so often.
func repeats(usual int) int {
	n, _ := kills()
	if testing.Short() {
		return (usual + 2) / 3 * n
	}
	return usual * n
}

// A run that is killed or asked to stop at a random moment leaves the old set or the new one,
// and the maker's own files; after one more run there is the new one and nothing else.
func TestKilledAtAnyMoment(t *testing.T) {
	seed, _ := strconv.ParseUint(os.Getenv("RAPID_SEED"), 10, 64)
	if seed == 0 {
		seed = uint64(time.Now().UnixNano())
	}
	t.Logf("seed %d", seed)
	kills, soak := kills()
	every := 3
	if testing.Short() {
		every = 8
	}
	for i, k := range killed {
		if !soak && i%every != int(seed%uint64(every)) {
			continue
		}
		t.Run(k.name, func(t *testing.T) {
			t.Parallel()
			random := rand.New(rand.NewPCG(seed, 2))
			at := t.TempDir()
			folder := filepath.Join(at, "case")
			for name, rows := range map[string]string{"old.csv": "Ana,220,150,30\nBen,200,140,20\n", "new.csv": "Ana,221,150,30\nCem,210,140,25\n"} {
				require.NoError(t, os.WriteFile(filepath.Join(at, name), []byte("name,height,width,thickness\n"+rows), 0o644))
			}
			run := func(args []string) *exec.Cmd {
				cmd := program(args)
				if args[0] != "new" {
					cmd = program(append(args[:len(args):len(args)], "--out", "case"))
				}
				cmd.Dir = at
				return cmd
			}
			calm := func(args []string) {
				said, err := run(args).CombinedOutput()
				require.NoError(t, err, "%s", said)
			}
			put := func(files map[string]string) {
				require.NoError(t, os.RemoveAll(folder))
				for name, data := range files {
					require.NoError(t, os.MkdirAll(filepath.Dir(filepath.Join(folder, name)), 0o755))
					require.NoError(t, os.WriteFile(filepath.Join(folder, name), []byte(data), 0o644))
				}
			}
			put(k.own)
			if k.first != nil {
				calm(k.first)
			}
			before := landed(t, folder)
			started := time.Now()
			calm(k.then)
			lasts := time.Since(started)
			after := landed(t, folder)
			require.NotEqual(t, before, after)

			mixed, left := 0, 0
			for n := range kills {
				put(before)
				cmd := run(k.then)
				require.NoError(t, cmd.Start())
				if random.IntN(2) == 0 {
					time.Sleep(time.Duration(random.Int64N(int64(lasts * 11 / 10))))
				} else { // as the files land
					for until := time.Now().Add(2 * lasts); time.Now().Before(until) && !working(at); {
						time.Sleep(50 * time.Microsecond)
					}
					time.Sleep(time.Duration(random.IntN(15_000)) * time.Microsecond)
				}
				signal := []os.Signal{os.Kill, os.Kill, syscall.SIGINT, syscall.SIGTERM}[random.IntN(4)]
				cmd.Process.Signal(signal)
				cmd.Wait()
				is := landed(t, folder)
				for name, data := range k.own {
					require.Equal(t, data, is[name], "kill %d", n)
				}
				if !maps.Equal(is, before) && !maps.Equal(is, after) && k.once {
					mixed++
					t.Logf("mixed after %v: %v", signal, names(t, folder))
				}
				if _, err := os.Stat(filepath.Join(folder, "case.toml")); k.name != "new" || err != nil {
					calm(k.then)
				} else {
					assert.Error(t, run(k.then).Run(), "a job file is not written over")
				}
				if entries, err := os.ReadDir(at); err != nil || len(entries) != 3 || !maps.Equal(filesBelow(t, folder), after) {
					left++
					t.Logf("left after %v: %v %v", signal, entries, names(t, folder))
				}
			}
			assert.Zero(t, mixed, "mixed sets")
			assert.Zero(t, left, "leftovers after one more run")
			t.Logf("%d kills: %d mixed sets, %d leftovers after one more run", kills, mixed, left)
		})
	}
}

// working tells whether files are landing in a folder.
func working(at string) bool {
	for _, name := range []string{".case.forel-work", "case/.forel-work"} {
		if _, err := os.Stat(filepath.Join(at, name)); err == nil {
			return true
		}
	}
	return false
}

// landed returns the files of a folder without those of a run that was killed.
func landed(t *testing.T, folder string) map[string]string {
	t.Helper()
	if _, err := os.Stat(folder); err != nil {
		return map[string]string{}
	}
	is := filesBelow(t, folder)
	maps.DeleteFunc(is, func(name, _ string) bool { return strings.HasPrefix(name, ".forel-") })
	return is
}

// Two runs at the same time, of two jobs, leave one set whole, and both say so.
func TestTwoRunsTakeTurns(t *testing.T) {
	folder := filepath.Join(t.TempDir(), "case")
	run := func(args ...string) map[string]string {
		require.NoError(t, program(append(args, "--out", folder)).Run())
		return filesBelow(t, folder)
	}
	one, two := []string{"gauge", "--units", "in"}, []string{"gauge"}
	a, b := run(one...), run(two...)
	for range 3 {
		first, second := program(append(one, "--out", folder)), program(append(two, "--out", folder))
		require.NoError(t, first.Start())
		require.NoError(t, second.Start())
		require.NoError(t, first.Wait())
		require.NoError(t, second.Wait())
		is := filesBelow(t, folder)
		require.True(t, maps.Equal(is, a) || maps.Equal(is, b), fmt.Sprint(names(t, folder)))
	}
}
