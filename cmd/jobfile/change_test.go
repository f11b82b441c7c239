package jobfile_test

import (
	"maps"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/cmd/jobfile"
	"forel/geometry"
)

func changed(t require.TestingT, text string, changes ...jobfile.Change) string {
	out, err := jobfile.Changed("case.toml", []byte(text), changes)
	require.NoError(t, err)
	return string(out)
}

// What is changed reads as it was typed, all other lines stay as they are.
func TestChangedLines(t *testing.T) {
	for _, c := range []struct{ name, key, value, was, is string }{
		{"a number", "board.thickness", "1.9", `thickness = "2 mm"                 # one board`, `thickness = 1.9                    # one board`},
		{"a fraction", "cloth.overlap", "1 1/8 in", `overlap = "28 mm"                  # onto`, `overlap = "1 1/8 in"               # onto`},
		{"readings", "book.height", "220; 8 3/4 in", `height = [221, 221.5]              # head`, `height = [220, "8 3/4 in"]         # head`},
		{"a title of digits", "title", "1984", `title = "Harbour log"              # invented: the`, `title = "1984"                     # invented: the`},
		{"quotes", "title", `a "b" # c`, `title = "Harbour log"              # invented: the`, `title = "a \"b\" # c"              # invented: the`},
		{"in a comment", "book.thickness_at_fore_edge", "30", `# thickness_at_fore_edge = 30.5    # only`, `thickness_at_fore_edge = 30        # only`},
		{"in a comment without words", "board.name", "grey", `# name = "grey board"              # what`, `name = "grey"                      # what`},
	} {
		t.Run(c.name, func(t *testing.T) {
			was := string(jobfile.Starter())
			require.Contains(t, was, c.was)
			want, got := strings.Split(strings.Replace(was, c.was, c.is, 1), "\n"), strings.Split(changed(t, was, jobfile.Change{Key: c.key, Value: c.value}), "\n")
			require.Len(t, got, len(want))
			for i := range want {
				assert.Equal(t, want[i], got[i])
			}
		})
	}
}

// A key of the top is put after those that are there, in the order of the changes, whatever
// was changed before it.
func TestChangedAtTheTop(t *testing.T) {
	kind, covering := jobfile.Change{Key: "kind", Value: "slipcase"}, jobfile.Change{Key: "covering", Value: "cloth"}
	assert.Equal(t, "# Mine.\ntitle = \"Log\" # invented\nkind = \"slipcase\"\ncovering = \"cloth\"\n\n[[book]]\nheight = 221\n",
		changed(t, "# Mine.\ntitle = \"Log\" # invented\n\n[[book]]\nheight = 221\n", kind, covering))
	assert.Equal(t, "kind = \"slipcase\"\ncovering = \"cloth\"\n[[book]]\nheight = 221\n", changed(t, "[[book]]\nheight = 221\n", kind, covering))
	assert.Equal(t, "kind = \"slipcase\"\ncovering = \"cloth\"\n", changed(t, "", kind, covering))
}

// A table that stands in a comment is used where it stands.
func TestChangedTables(t *testing.T) {
	was := string(jobfile.Starter())
	two := changed(t, was, jobfile.Change{Key: "book[2].height", Value: "200"}, jobfile.Change{Key: "book[2].width", Value: "140"}, jobfile.Change{Key: "book[2].thickness", Value: "20"})
	assert.Contains(t, two, "[[book]]\n# title = \"Harbour log, part two\"  # invented\nheight = 200\nwidth = 140\nthickness = 20\n")
	f, _, err := jobfile.Parse("case.toml", []byte(two))
	require.NoError(t, err)
	assert.Len(t, f.Job.Shared().Books, 2)
	three := changed(t, two, jobfile.Change{Key: "book[3].height", Value: "199"})
	s, err := jobfile.Read("case.toml", []byte(three))
	require.NoError(t, err)
	assert.Equal(t, 3, s.Books)
	assert.Equal(t, two, strings.Replace(changed(t, three, jobfile.Change{Key: "book[3]", Gone: true}), "\n\n\n", "\n\n", 1))

	built := changed(t, was, jobfile.Change{Key: "as_built.width", Value: "151.6"})
	assert.Contains(t, built, "[as_built]\n# height = [227.8, 227.5]          # head to tail\nwidth = 151.6                      # spine to mouth")
	for _, stock := range []string{"stock", "stock[2]"} {
		was = changed(t, was, jobfile.Change{Key: stock + ".material", Value: "board"}, jobfile.Change{Key: stock + ".size", Value: "26 x 38 in"})
	}
	f, _, err = jobfile.Parse("case.toml", []byte(was))
	require.NoError(t, err)
	assert.Len(t, f.Stock, 2)
}

// What is left out and set again is as it was, for every key with a comment.
func TestLeftOutAndBack(t *testing.T) {
	was := string(jobfile.Starter())
	s, err := jobfile.Read("case.toml", []byte(was))
	require.NoError(t, err)
	for i, key := range slices.Sorted(maps.Keys(s.Values)) {
		if testing.Short() && i%3 > 0 {
			continue
		}
		out := changed(t, was, jobfile.Change{Key: key, Gone: true})
		left, err := jobfile.Read("case.toml", []byte(out))
		require.NoError(t, err)
		assert.Empty(t, left.Values[key])
		back := changed(t, out, jobfile.Change{Key: key, Value: s.Values[key]})
		again, err := jobfile.Read("case.toml", []byte(back))
		require.NoError(t, err)
		assert.Equal(t, s.Values, again.Values, key)
		assert.Equal(t, len(strings.Split(was, "\n")), len(strings.Split(back, "\n")), "%s: no line is lost", key)
	}
}

// Other units leave every size as it was.
func TestChangedUnits(t *testing.T) {
	was := changed(t, string(jobfile.Starter()), jobfile.Change{Key: "as_built.height", Value: "227.8; 227.5"}, jobfile.Change{Key: "print.paper", Value: "210 x 300"}, jobfile.Change{Key: "board.thickness", Value: "2"})
	out := changed(t, was, jobfile.Change{Key: "units", Value: "in"})
	a, _, err := jobfile.Parse("case.toml", []byte(was))
	require.NoError(t, err)
	b, _, err := jobfile.Parse("case.toml", []byte(out))
	require.NoError(t, err)
	assert.Equal(t, a.Job.Shared().Books, b.Job.Shared().Books)
	assert.Equal(t, a.Print, b.Print)
	assert.Equal(t, geometry.IN, b.Job.Shared().Unit)
	of := b.Job.Settings()
	for i, s := range a.Job.Settings() {
		assert.True(t, s.Same(of[i]), s.Key)
	}
	assert.Contains(t, out, `height = ["221 mm", "221.5 mm"]`)
}

// A table that is written in short takes other keys, and other names; nothing else changes.
func TestChangedBesideShort(t *testing.T) {
	was := "# mine\nboard = \"grey board\"   # of the rack\ncloth = 'linen'\n[[book]]\nheight = 221\n"
	out := changed(t, was, jobfile.Change{Key: "board.thickness", Value: "2.5 mm"})
	assert.Equal(t, "# mine\ncloth = 'linen'\n[[book]]\nheight = 221\n\n[board]\nmaterial = \"grey board\"   # of the rack\nthickness = \"2.5 mm\"\n", out)
	out = changed(t, was, jobfile.Change{Key: "board.material", Value: "red board"})
	assert.Equal(t, strings.Replace(was, `"grey board"   `, `"red board"    `, 1), out)
	out = changed(t, was, jobfile.Change{Key: "cloth.material", Gone: true})
	assert.Equal(t, strings.Replace(was, "cloth = 'linen'\n", "", 1), out)
}

// What is written so that keys can't be changed one by one is told, not spoiled.
func TestUnchangeable(t *testing.T) {
	for _, text := range []string{
		"book = [{height = 221, width = 148, thickness = 30}]\n",
		"book = {height = 221}\n",
	} {
		_, err := jobfile.Changed("case.toml", []byte(text), []jobfile.Change{{Key: "book.height", Value: "220"}})
		assert.ErrorContains(t, err, "can't be changed key by key", text)
	}
	_, err := jobfile.Changed("case.toml", []byte("title = \n"), []jobfile.Change{{Key: "title", Value: "a"}})
	assert.ErrorContains(t, err, "case.toml:1")
	_, err = jobfile.Changed("case.toml", nil, []jobfile.Change{{Key: "book[3].height", Value: "2"}})
	assert.ErrorContains(t, err, "number them")
	_, err = jobfile.Changed("case.toml", nil, []jobfile.Change{{Key: "bord.thickness", Value: "2"}})
	assert.ErrorContains(t, err, "unknown key")
}

// Whatever is typed into any blank of any job, one after the other, reads as typed.
func TestAnythingTyped(t *testing.T) {
	var keys []string
	var two []jobfile.Change // of each list
	for _, s := range jobfile.Fields(geometry.MM) {
		for _, f := range s.Fields {
			if keys = append(keys, f.Key); f.List {
				second := strings.Replace(f.Key, ".", "[2].", 1)
				keys, two = append(keys, second), append(two, jobfile.Change{Key: f.Key, Value: "a"}, jobfile.Change{Key: second, Value: "b"})
			}
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		text, want := string(jobfile.Starter()), map[string]string{}
		if rapid.Bool().Draw(t, "empty") {
			text = ""
		}
		text = changed(t, text, two...)
		for range rapid.IntRange(1, 6).Draw(t, "changes") {
			key := rapid.SampledFrom(keys).Draw(t, "key")
			value := rapid.OneOf(rapid.SampledFrom([]string{"2", "2.50", "2,5", "9 1/4 in", "", " ", "00", "-1", "1e3", "#", `"`, "'''", `\`, "a\nb", "[", "é"}), rapid.StringN(0, 12, -1)).Draw(t, "value")
			value = strings.ReplaceAll(value, ";", "")
			if key == "units" {
				value = "mm"
			}
			text = changed(t, text, jobfile.Change{Key: key, Value: value})
			want[key] = value
		}
		s, err := jobfile.Read("case.toml", []byte(text))
		require.NoError(t, err)
		for key, value := range want {
			if s.Values[key] != value && s.Values[key] != strings.TrimSpace(value) {
				t.Fatalf("%s: %q, not %q, in\n%s", key, s.Values[key], value, text)
			}
		}
	})
}

// The table of fields has every key of a job file, each once, with words for it; what
// must be given has no default, and each default is one that the key takes.
func TestFields(t *testing.T) {
	for _, unit := range []geometry.Unit{geometry.MM, geometry.IN} {
		seen := map[string]bool{}
		text := string(jobfile.Starter())
		if unit == geometry.IN {
			text = changed(t, text, jobfile.Change{Key: "units", Value: "in"})
		}
		for _, s := range jobfile.Fields(unit) {
			assert.NotEmpty(t, s.Says, "[%s]", s.Table)
			for _, f := range s.Fields {
				assert.False(t, seen[f.Key], f.Key)
				seen[f.Key] = true
				assert.True(t, jobfile.Known(f.Key), f.Key)
				assert.NotEmpty(t, f.Says+f.What, f.Key)
				if f.Kind == jobfile.TakesChoice {
					assert.NotEmpty(t, f.Words, f.Key)
				}
				if f.Default != "" {
					text = changed(t, text, jobfile.Change{Key: f.Key, Value: f.Default})
				}
			}
		}
		for _, key := range jobfile.KnownKeys() {
			assert.True(t, seen[key], key)
		}
		_, _, err := jobfile.Parse("case.toml", []byte(text))
		assert.NoError(t, err)
	}
}
