package shelf

import (
	"cmp"
	"context"
	"crypto/sha256"
	"errors"
	"fmt"
	"io/fs"
	"math/rand/v2"
	"os"
	"os/exec"
	"path"
	"path/filepath"
	"strconv"
	"strings"
	"sync"
	"syscall"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/cmd/pipeline"
	"forel/geometry/plan/plantest"
)

// A run that dies is another process: this test again, with these set.
const (
	dieAt   = "SHELF_TEST_DIES_AT" // the change to the disk that it does not come to
	dieIn   = "SHELF_TEST_FOLDER"
	dieWith = "SHELF_TEST_SET"
)

func TestMain(m *testing.M) {
	flush = func(*os.File) error { return nil } // no power fails here
	if at, err := strconv.Atoi(os.Getenv(dieAt)); err == nil {
		self, err := os.FindProcess(os.Getpid())
		if err != nil {
			panic(err)
		}
		changes := 0
		before = func(string) error {
			if changes++; changes == at {
				self.Kill()
				select {}
			}
			return nil
		}
		if err := put(os.Getenv(dieIn), os.Getenv(dieWith)); err != nil {
			fmt.Fprintln(os.Stderr, err)
			os.Exit(1)
		}
		os.Exit(0)
	}
	os.Exit(m.Run())
}

// setOf returns an invented set: the two have files of the same names, files of their
// own, and a folder each.
func setOf(which string) map[string][]pipeline.File {
	file := func(name string) pipeline.File {
		return pipeline.File{Name: name, Data: []byte("set " + which + ", file " + name)}
	}
	return map[string][]pipeline.File{
		"":             {file("side.svg"), file("templates.pdf"), file("only-" + which)},
		"both":         {file("a"), file("only-" + which)},
		"of-" + which:  {file("a")},
		"deep/" + "in": {file("b")},
	}
}

// put lands a set as a command does.
func put(folder, which string) error {
	s, err := Open(context.Background(), folder, "test")
	if err != nil {
		return err
	}
	defer s.Close(false)
	for below, files := range setOf(which) {
		if err := s.Put(below, "made of "+which, files); err != nil {
			return err
		}
	}
	_, err = s.Land(false, nil)
	return err
}

// tree returns what is below a folder: files with what is in them, folders with
// nothing.
func tree(t *testing.T, folder string) map[string]string {
	t.Helper()
	out := map[string]string{}
	require.NoError(t, filepath.WalkDir(folder, func(at string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		name, _ := filepath.Rel(folder, at)
		if out[filepath.ToSlash(name)] = ""; d.Type().IsRegular() {
			data, err := os.ReadFile(at)
			out[filepath.ToSlash(name)] = string(data)
			return err
		}
		return nil
	}))
	return out
}

// want is the tree of a folder with a set and files of the maker's own in it, put
// together without the package.
func want(t *testing.T, which string, own map[string]string) map[string]string {
	out := map[string]string{".": ""}
	add := func(name, data string) {
		out[name] = data
		for dir := path.Dir(name); dir != "."; dir = path.Dir(dir) {
			out[dir] = ""
		}
	}
	for name, data := range own {
		add(name, data)
	}
	if which == "" {
		return out
	}
	for below, files := range setOf(which) {
		for _, f := range files {
			add(strings.TrimPrefix(below+"/"+f.Name, "/"), string(f.Data))
		}
	}
	return out
}

// holds tells whether a folder holds just that set, the list of it, and the maker's own.
func holds(t *testing.T, folder, which string, own map[string]string) bool {
	is := tree(t, folder)
	list := is[ListName]
	delete(is, ListName)
	for name, data := range is {
		if strings.HasPrefix(data, "set ") && !strings.Contains(list, fmt.Sprintf("%x  %s\n", sha256.Sum256([]byte(data)), name)) {
			return false // by the form of FIPS 180-4 digests that others read
		}
	}
	return assert.ObjectsAreEqual(want(t, which, own), is)
}

// situations are the folders that a set can come into: with what is there of the maker's
// own, and how.
var situations = []struct {
	name string
	own  map[string]string
	with func(t *testing.T, folder string)
	once bool // the set changes at once, where folders can change places
}{
	{name: "new", once: true},
	{name: "forel's", once: true, with: lands("a")},
	{name: "with notes", once: true, own: map[string]string{"notes.txt": "mine", "both/notes.txt": "mine too", "of-a/x": "mine"}, with: lands("a")},
	{name: "with a folder", own: map[string]string{"photos/1.jpg": "mine", "both/sub/2.jpg": "mine", "side": "mine"}, with: lands("a")},
	{name: "with a folder, first", own: map[string]string{"photos/1.jpg": "mine"}},
}

// lands puts a set into a folder first.
func lands(which string) func(*testing.T, string) {
	return func(t *testing.T, folder string) { require.NoError(t, put(folder, which)) }
}

// ready makes a folder of a situation, in one of its own. It returns which set it holds.
func ready(t *testing.T, i int) (folder, holds string) {
	t.Helper()
	folder = filepath.Join(t.TempDir(), "case")
	s := situations[i]
	if s.with != nil {
		s.with(t, folder)
		holds = "a"
	}
	for name, data := range s.own {
		require.NoError(t, os.MkdirAll(filepath.Dir(filepath.Join(folder, name)), 0o755))
		require.NoError(t, os.WriteFile(filepath.Join(folder, name), []byte(data), 0o644))
	}
	return folder, holds
}

// alone checks that nothing is left beside a folder.
func alone(t *testing.T, folder string) {
	t.Helper()
	beside, err := os.ReadDir(filepath.Dir(folder))
	require.NoError(t, err)
	require.LessOrEqual(t, len(beside), 1, "%v", beside)
}

// changes counts the changes to the disk of a landing in a situation.
func changes(t *testing.T, i int) (n int) {
	folder, _ := ready(t, i)
	defer hook(func(string) error { n++; return nil })()
	require.NoError(t, put(folder, "b"))
	require.True(t, holds(t, folder, "b", situations[i].own))
	alone(t, folder)
	return n
}

// hook sets what happens before each change; what it returns takes that away.
func hook(f func(path string) error) func() {
	was, mu := before, sync.Mutex{}
	before = func(path string) error {
		mu.Lock()
		defer mu.Unlock()
		return f(path)
	}
	return func() { before = was }
}

// sample returns how many random cases of a test to run, of so many.
func sample(usual, all int) []int {
	seed, _ := strconv.ParseUint(os.Getenv("RAPID_SEED"), 10, 64)
	r := rand.New(rand.NewPCG(seed, 1))
	if seed == 0 {
		r = rand.New(rand.NewPCG(rand.Uint64(), 1))
	}
	if testing.Short() {
		usual /= 2
	}
	if plantest.Soak() || usual > all {
		usual = all // a soak
	}
	return r.Perm(all)[:usual]
}

// A run that is killed before any one of its changes to the disk leaves the old set or the
// new one, whole, where folders can change places; the next run leaves the new one and
// nothing else. The maker's files are there at any time.
func TestKilled(t *testing.T) {
	for i, s := range situations {
		t.Run(s.name, func(t *testing.T) {
			for _, n := range sample(6, changes(t, i)) {
				folder, was := ready(t, i)
				run := exec.Command(os.Args[0])
				run.Env = append(os.Environ(), fmt.Sprintf("%s=%d", dieAt, n+1), dieIn+"="+folder, dieWith+"=b")
				said, _ := run.CombinedOutput()
				require.False(t, run.ProcessState.Success(), "killed before change %d", n+1)
				require.Empty(t, string(said), "killed before change %d", n+1)

				if is := tree(t, filepath.Dir(folder)); len(is) > 1 {
					for name, data := range s.own {
						require.Equal(t, data, is["case/"+name], "killed before change %d", n+1)
					}
				}
				if _, err := os.Stat(folder); err == nil && swaps && s.once {
					os.Remove(filepath.Join(folder, lockName)) // which is there while a run is
					require.True(t, holds(t, folder, "b", s.own) || holds(t, folder, was, s.own), "killed before change %d: %v", n+1, tree(t, folder))
				}
				require.NoError(t, put(folder, "b"), "killed before change %d", n+1)
				require.True(t, holds(t, folder, "b", s.own), "killed before change %d: %v", n+1, tree(t, folder))
				alone(t, folder)
			}
		})
	}
}

// Where any one change to the disk fails, the old set is whole, or the new one without an
// error, and nothing is left behind. Where from then on all fail, the next run mends it.
func TestFails(t *testing.T) {
	for i, s := range situations {
		t.Run(s.name, func(t *testing.T) {
			for _, n := range sample(8, changes(t, i)) {
				for _, forever := range []bool{false, true} {
					folder, was := ready(t, i)
					at := 0
					unhook := hook(func(string) error {
						if at++; at == n+1 || forever && at > n {
							return syscall.ENOSPC
						}
						return nil
					})
					err := put(folder, "b")
					unhook()
					if err != nil {
						assert.Contains(t, err.Error(), syscall.ENOSPC.Error())
						assert.NotContains(t, err.Error(), workName, "names only what the maker knows")
					}
					if is := tree(t, filepath.Dir(folder)); err != nil && !forever && len(is) > 1 {
						require.True(t, holds(t, folder, was, s.own), "change %d: %v: %v", n+1, err, is)
					} else if err == nil {
						for name, data := range want(t, "b", s.own) {
							require.Equal(t, data, is[path.Join("case", name)], "change %d", n+1) // what failed then is for the next run
						}
					}
					if err != nil && !forever {
						alone(t, folder)
					}
					require.NoError(t, put(folder, "b"))
					require.True(t, holds(t, folder, "b", s.own), "change %d: %v", n+1, tree(t, folder))
					alone(t, folder)
				}
			}
		})
	}
}

// A file that another program holds open, as a viewer does on Windows, can't be moved: the
// old set stays whole.
func TestFileHeldOpen(t *testing.T) {
	held := errors.New("the file is open in another program")
	for i, s := range situations {
		folder, was := ready(t, i)
		if was == "" {
			continue
		}
		unhook := hook(func(path string) error {
			if path == folder || strings.HasSuffix(path, filepath.Join(oldName, "templates.pdf")) {
				return held // what holds a file holds its folder
			}
			return nil
		})
		err := put(folder, "b")
		unhook()
		require.ErrorIs(t, err, held)
		assert.ErrorContains(t, err, "can't write "+filepath.Join(folder, "templates.pdf"))
		assert.True(t, holds(t, folder, was, s.own), s.name)
		alone(t, folder)
	}
}

// Of runs into one folder at the same time each waits its turn.
func TestRunsTakeTurns(t *testing.T) {
	for i, s := range situations {
		folder, _ := ready(t, i)
		var all sync.WaitGroup
		for _, which := range []string{"a", "b", "c", "a", "b", "c"} {
			all.Go(func() { assert.NoError(t, put(folder, which)) })
		}
		all.Wait()
		assert.True(t, holds(t, folder, "a", s.own) || holds(t, folder, "b", s.own) || holds(t, folder, "c", s.own), "%s: %v", s.name, tree(t, folder))
		alone(t, folder)
	}
}

// A file that is not on the list, or is not as it was written, is neither replaced nor
// taken away, be it a file, a link, a pipe or a folder.
func TestWhatIsNotForelsStays(t *testing.T) {
	put := func(folder string, part bool, files ...string) (Change, error) {
		s, err := Open(t.Context(), folder, "test")
		if err != nil {
			return Change{}, err
		}
		defer s.Close(false)
		var out []pipeline.File
		for _, f := range files {
			name, data, _ := strings.Cut(f, "=")
			out = append(out, pipeline.File{Name: name, Data: []byte(data)})
		}
		if err := s.Put("", "", out); err != nil {
			return Change{}, err
		}
		return s.Land(part, nil)
	}
	folder := filepath.Join(t.TempDir(), "case")
	file := func(name string) string { return filepath.Join(folder, name) }
	_, err := put(folder, false, "x=1", "y=1", "z=1")
	require.NoError(t, err)

	c, err := put(folder, true, "x=2")
	require.NoError(t, err)
	assert.Equal(t, Change{}, c, "a part leaves the rest")
	assert.FileExists(t, file("y"))

	require.NoError(t, os.WriteFile(file("y"), []byte("mine"), 0o644))
	c, err = put(folder, false, "x=3")
	require.NoError(t, err)
	assert.Equal(t, Change{Took: []string{"z"}, Left: []string{"y"}}, c)
	assert.Equal(t, "mine", tree(t, folder)["y"])

	for what, make := range map[string]func() error{
		"changed": func() error { return os.WriteFile(file("y"), []byte("mine"), 0o644) },
		"folder":  func() error { return os.Mkdir(file("y"), 0o755) },
		"link":    func() error { return os.Symlink("x", file("y")) },
		"nowhere": func() error { return os.Symlink("none", file("y")) },
		"pipe":    func() error { return exec.Command("mkfifo", file("y")).Run() },
	} {
		require.NoError(t, os.RemoveAll(file("y")))
		err := make()
		is, none := os.Lstat(file("y"))
		if err = cmp.Or(err, none); err != nil {
			t.Logf("no %s here: %v", what, err)
			continue
		}
		_, err = put(folder, false, "x=4", "y=4")
		require.Error(t, err, what)
		assert.Contains(t, err.Error(), file("y"))
		assert.Equal(t, "3", tree(t, folder)["x"], "all or none")
		now, err := os.Lstat(file("y"))
		require.NoError(t, err, what)
		assert.True(t, os.SameFile(is, now), what)
	}
	require.NoError(t, os.RemoveAll(file("y")))
	require.NoError(t, os.WriteFile(file("y"), []byte("4"), 0o644))
	_, err = put(folder, false, "x=4", "y=4")
	assert.NoError(t, err, "what is as it would be written does no harm")

	require.NoError(t, os.WriteFile(file(ListName), []byte("my list\n"), 0o644))
	_, err = put(folder, false, "x=5")
	assert.ErrorContains(t, err, file(ListName)+" is not as forel writes it; move it away")
	alone(t, folder)
}

// What comes into the folder just as it changes places with the new one is not lost.
func TestChangedMeanwhile(t *testing.T) {
	if !swaps {
		t.Skip("folders don't change places here")
	}
	folder, _ := ready(t, 2)
	unhook := hook(func(path string) error {
		if path == folder {
			for _, name := range []string{"later.txt", "notes.txt", "side.svg", "sub/later.txt"} {
				require.NoError(t, os.MkdirAll(filepath.Dir(filepath.Join(folder, name)), 0o755))
				require.NoError(t, os.WriteFile(filepath.Join(folder, name+"~"), []byte("later"), 0o644))
				require.NoError(t, os.Rename(filepath.Join(folder, name+"~"), filepath.Join(folder, name)))
			}
		}
		return nil
	})
	err := put(folder, "b")
	unhook()
	require.NoError(t, err)
	is := tree(t, folder)
	for _, name := range []string{"later.txt", "notes.txt", "changed-side.svg", "sub/later.txt"} {
		assert.Equal(t, "later", is[name], name)
	}
	assert.Equal(t, "set b, file side.svg", is["side.svg"])
	alone(t, folder)
}

// A folder is given by a symbolic link, which stays; one that leads nowhere is told of.
func TestFolderByLink(t *testing.T) {
	real := filepath.Join(t.TempDir(), "real")
	link := filepath.Join(t.TempDir(), "link")
	require.NoError(t, os.Mkdir(real, 0o755))
	os.Symlink(real, link)
	if _, err := os.Readlink(link); err != nil {
		t.Skip("no symbolic links here: ", err)
	}
	require.NoError(t, put(link, "a"))
	require.NoError(t, put(link, "b"))
	assert.True(t, holds(t, real, "b", nil))
	to, err := os.Readlink(link)
	require.NoError(t, err)
	assert.Equal(t, real, to)
	require.NoError(t, os.RemoveAll(real))
	assert.ErrorContains(t, put(link, "a"), "a symbolic link that leads nowhere")
	_, err = os.Readlink(link)
	assert.NoError(t, err)
}

// A file of the maker's is changed as it was taken. Where a run ends at any change to the
// disk the file is as it was or as it was to be, and the next run changes it on.
func TestFileChanged(t *testing.T) {
	change := func(folder, to string) (was string, err error) {
		s, err := Open(context.Background(), folder, "")
		if err != nil {
			return "", err
		}
		defer s.Close(false)
		data, err := s.Take("record.toml")
		if err != nil {
			return "", err
		}
		if err := s.Put("", "", []pipeline.File{{Name: "record.toml", Data: append(data, to...)}}); err != nil {
			return "", err
		}
		_, err = s.Land(true, nil)
		return string(data), err
	}
	for at := 1; ; at++ {
		folder := t.TempDir()
		was, err := change(folder, "a")
		require.NoError(t, err)
		require.Empty(t, was)
		changes := 0
		unhook := hook(func(string) error {
			if changes++; changes >= at { // from there on nothing is done any more
				return errors.New("ended")
			}
			return nil
		})
		change(folder, "b")
		unhook()
		was, err = change(folder, "c")
		require.NoError(t, err, "ended at change %d", at)
		assert.Contains(t, []string{"a", "ab"}, was, "ended at change %d", at)
		data, err := os.ReadFile(filepath.Join(folder, "record.toml"))
		require.NoError(t, err)
		assert.Equal(t, was+"c", string(data))
		entries, err := os.ReadDir(folder)
		require.NoError(t, err)
		assert.Len(t, entries, 1)
		if changes < at {
			break
		}
	}
	// What somebody else wrote meanwhile stays.
	folder := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(folder, "record.toml"), []byte("mine"), 0o644))
	s, err := Open(context.Background(), folder, "")
	require.NoError(t, err)
	_, err = s.Take("record.toml")
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(filepath.Join(folder, "record.toml"), []byte("mine, later"), 0o644))
	require.NoError(t, s.Put("", "", []pipeline.File{{Name: "record.toml", Data: []byte("forel's")}}))
	_, err = s.Land(true, nil)
	assert.Error(t, err)
	require.NoError(t, s.Close(false))
	data, err := os.ReadFile(filepath.Join(folder, "record.toml"))
	require.NoError(t, err)
	assert.Equal(t, "mine, later", string(data))
}
