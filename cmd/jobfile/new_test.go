package jobfile_test

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/cmd/jobfile"
	"forel/geometry"
	"forel/geometry/kinds"
	"forel/geometry/slipcase"
)

func flagsOf(pairs ...string) (out []jobfile.Flag) {
	for i := 0; i < len(pairs); i += 2 {
		name := pairs[i][strings.LastIndexByte(pairs[i], '.')+1:]
		out = append(out, jobfile.Flag{Name: "--" + name, Key: pairs[i], Value: pairs[i+1]})
	}
	return out
}

// The short job is a job with every setting at its default, of about ten settings,
// each with a comment on its line.
func TestNewShort(t *testing.T) {
	text, err := jobfile.New{Flags: flagsOf("title", "Invented", "book.height", "221", "book.width", "148.5", "book.thickness", "32")}.Text()
	require.NoError(t, err)
	f, suspects, err := jobfile.Parse("case.toml", text)
	require.NoError(t, err)
	assert.Empty(t, suspects)
	want := slipcase.DefaultJob(geometry.MM)
	want.Title, want.Books = "Invented", f.Job.Shared().Books
	near(t, want, boards(f))
	b := want.Books[0]
	assert.Equal(t, []geometry.Length{221, 148.5, 32}, []geometry.Length{b.Height.Largest(), b.Width.Largest(), b.Thickness.Largest()})
	settings := 0
	for _, line := range strings.Split(string(text), "\n") {
		if strings.Contains(line, " = ") && !strings.HasPrefix(line, "#") {
			settings++
			assert.Regexp(t, `  # .+`, line)
		}
	}
	assert.InDelta(t, 11, settings, 2)
}

// A short job of each kind asks for what that kind has, and is that kind.
func TestNewOfEachKind(t *testing.T) {
	for _, kind := range kinds.Names() {
		text, err := jobfile.New{Flags: flagsOf("kind", kind, "book.height", "221", "book.width", "148.5", "book.thickness", "32")}.Text()
		require.NoError(t, err)
		f, suspects, err := jobfile.Parse("case.toml", text)
		require.NoError(t, err, kind)
		assert.Empty(t, suspects, kind)
		assert.Equal(t, kind, f.Kind.Name)
		assert.NotContains(t, string(text), "\n\n\n")
		usual := f.Kind.New(geometry.MM).Settings()
		for i, s := range f.Job.Settings() {
			assert.True(t, s.Same(usual[i]), "%s: %s", kind, s.Key)
		}
	}
}

// Nobody prints a stranger's book by accident: a new job has the invented book only
// where it was asked for.
func TestNewIsEmpty(t *testing.T) {
	for _, full := range []bool{false, true} {
		for _, unit := range []string{"mm", "in"} {
			text, err := jobfile.New{Full: full, Flags: flagsOf("units", unit, "book.width", "6 in")}.Text()
			require.NoError(t, err)
			_, _, err = jobfile.Parse("case.toml", text)
			require.Error(t, err)
			assert.Equal(t, 2, strings.Count(err.Error(), "\n")+1, err)
			assert.Contains(t, err.Error(), "type in the height you measured")
			assert.Contains(t, err.Error(), "type in the thickness you measured")
			text, err = jobfile.New{Full: full, Example: true, Flags: flagsOf("units", unit)}.Text()
			require.NoError(t, err)
			assert.Contains(t, string(text), "invented")
			f, _, err := jobfile.Parse("case.toml", text)
			require.NoError(t, err)
			assert.InDelta(t, harbour().Books[0].Height.Largest().MM(), f.Job.Shared().Books[0].Height.Largest().MM(), 0.2)
		}
	}
}

var (
	comment  = regexp.MustCompile(`(?m) *#.*$`)
	measures = flagsOf("book.height", "222", "book.width", "151", "book.thickness", "33")
)

// Of an old job all stays but the book: every comment before the books, every setting.
func TestNextKeepsAllButTheBook(t *testing.T) {
	files, err := filepath.Glob("../../testdata/*/job.toml")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for _, name := range files {
		old, err := os.ReadFile(name)
		require.NoError(t, err)
		was, _, err := jobfile.Parse(name, old)
		require.NoError(t, err)
		text, err := noShop.Next(name, old, nil)
		require.NoError(t, err, name)
		_, _, err = jobfile.Parse(name, text)
		require.ErrorContains(t, err, "type in the height you measured")
		if title := was.Job.Shared().Title; title != "" {
			assert.NotContains(t, comment.ReplaceAllString(string(text), ""), title)
		}
		text, err = noShop.Next(name, old, flagsOf("book.height", "222 mm", "book.width", "151 mm", "book.thickness", "33 mm"))
		require.NoError(t, err)
		is, _, err := jobfile.Parse(name, text)
		require.NoError(t, err, name)
		require.Len(t, is.Job.Shared().Books, 1)
		b := is.Job.Shared().Books[0]
		assert.Empty(t, b.ForeEdge)
		assert.Zero(t, b.Weight)
		wants, gets := was.Job.Settings(), is.Job.Settings()
		for i := range wants {
			if strings.HasPrefix(wants[i].Key, "as_built.") { // of the old case
				assert.Empty(t, *gets[i].Readings, "%s: %s", name, wants[i].Key)
				continue
			}
			assert.True(t, wants[i].Same(gets[i]), "%s: %s", name, wants[i].Key)
		}
		assert.Equal(t, was.Print, is.Print)
		assert.Equal(t, was.Names, is.Names)
		assert.Len(t, is.Stock, len(was.Stock))
	}
}

// However a value is written, it is found whole.
func TestNextFindsValues(t *testing.T) {
	for _, height := range []string{
		"221", "'221 mm'", `"221 # mm"`, "[221, 222]", "[ # one\n 221, # ] two\n '222' ]", "\"\"\"\n221 mm\"\"\"", "'''221 mm'''", `"\"#"`, "[]", "221.5e0", `""`,
	} {
		text, err := noShop.Next("old.toml", []byte("# Old.\r\n[[book]]\nheight = "+height+" # kept\nwidth=148\nthickness = 30 # kept too\n[board]\nthickness = 1.8"), measures)
		require.NoError(t, err, height)
		assert.Equal(t, "title = \"\"\n", string(text)[strings.Index(string(text), "title"):strings.Index(string(text), "[[book]]")], height)
		squeezed := regexp.MustCompile(` +#`).ReplaceAllString(string(text), " #")
		assert.Contains(t, squeezed, "height = 222 # kept\nwidth=151\nthickness = 33 # kept too\n[board]\nthickness = 1.8", height)
	}
}
