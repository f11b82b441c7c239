package jobfile_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/cmd/jobfile"
	"forel/geometry/slipcase"
	"forel/paper"
)

func TestStarter(t *testing.T) {
	f, suspects, err := jobfile.Parse("starter.toml", jobfile.Starter())
	require.NoError(t, err)
	assert.Empty(t, suspects)
	want := slipcase.DefaultJob()
	want.Title, want.Books = "Harbour log", harbour().Books
	near(t, want, f.Job)
	assert.Equal(t, paper.DefaultSetup(), f.Print)
}

// The starter shows every key there is, in its table.
func TestStarterHasEveryKey(t *testing.T) {
	found := map[string]bool{}
	table := ""
	for _, line := range strings.Split(string(jobfile.Starter()), "\n") {
		if name, ok := strings.CutPrefix(line, "["); ok {
			table = strings.Trim(name, "[]") + "."
		}
		if key, _, ok := strings.Cut(line, " = "); ok && !strings.HasPrefix(line, "#") {
			found[table+key] = true
		}
	}
	want := []string{"title", "units", "book.title", "print.paper", "print.margin", "print.overlap"}
	for _, f := range slipcase.BookFields {
		want = append(want, "book."+f.Key)
	}
	for _, f := range slipcase.Fields {
		want = append(want, f.Key)
	}
	for _, key := range want {
		assert.True(t, found[key], key)
	}
	assert.Len(t, found, len(want))
}

func TestStarterIsACopy(t *testing.T) {
	jobfile.Starter()[0] = 'x'
	assert.Equal(t, byte('#'), jobfile.Starter()[0])
}
