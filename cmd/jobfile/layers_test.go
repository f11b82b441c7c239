package jobfile_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/cmd/jobfile"
	"forel/geometry"
)

// thicknessOf parses a job with a line for the board's thickness.
func thicknessOf(t require.TestingT, units, written string) (geometry.Length, error) {
	text := fmt.Sprintf("units = %q\n[[book]]\nheight = \"220 mm\"\nwidth = \"150 mm\"\nthickness = \"30 mm\"\n[board]\nthickness = %s\n", units, written)
	f, _, err := jobfile.Parse("case.toml", []byte(text))
	if err != nil {
		return 0, err
	}
	s, ok := f.Job.Settings().Find("board.thickness")
	require.True(t, ok)
	return *s.Length, nil
}

// What several layers measure together, divided by how many they are, is the thickness.
func TestLayers(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 20).Draw(t, "layers")
		all := float64(rapid.IntRange(100*n, 500*n).Draw(t, "together")) / 100
		unit := rapid.SampledFrom([]string{"", " mm", " cm"}).Draw(t, "unit")
		shown := all
		if unit == " cm" {
			shown = all / 10
		}
		word := rapid.SampledFrom([]string{" layers ", " layers: ", " Layers  ", " layer "}).Draw(t, "word")
		got, err := thicknessOf(t, "mm", fmt.Sprintf("%q", fmt.Sprintf("%d%s%.4g%s", n, word, shown, unit)))
		require.NoError(t, err)
		if d := got.MM() - all/float64(n); d > 0.006 || d < -0.006 { // four digits were written
			t.Fatalf("%d layers of %g mm are not %g mm each", n, all, got.MM())
		}
	})
	got, err := thicknessOf(t, "in", `"4 layers 5/16"`)
	require.NoError(t, err)
	assert.InDelta(t, 25.4*5/16/4, got.MM(), 1e-9)
}

// Layers that can't be are refused with what would do; where no material is asked for
// they are no length.
func TestLayersRefused(t *testing.T) {
	for written, want := range map[string]string{
		`"0 layers 8.1"`:  `write how many and what they measure together, such as "4 layers 8.1 mm"`,
		`"4 layers"`:      `write how many and what they measure together`,
		`"4 layers 8.1x"`: "unknown unit",
		`"4 layers 81"`:   "too large; give 0.5 mm to 6 mm",
	} {
		_, err := thicknessOf(t, "mm", written)
		require.Error(t, err, written)
		assert.Contains(t, err.Error(), want, written)
		assert.Contains(t, err.Error(), "case.toml:7: board.thickness: ", written)
	}
	_, _, err := jobfile.Parse("case.toml", []byte("[[book]]\nheight = \"4 layers 800 mm\"\nwidth = 150\nthickness = 30\n"))
	require.Error(t, err)
}

// A change of units leaves what is typed as it is: bare layers get the unit they had.
func TestLayersKeepTheirUnit(t *testing.T) {
	was := string(jobfile.Starter())
	four := changed(t, was, jobfile.Change{Key: "board.thickness", Value: "4 layers 8.1"})
	assert.Contains(t, four, `thickness = "4 layers 8.1" `)
	inches := changed(t, four, jobfile.Change{Key: "units", Value: "in"})
	assert.Contains(t, inches, `thickness = "4 layers 8.1 mm" `)
}

// Two volumes that change places take all that stands in them along; twice is not at all.
func TestSwappedVolumes(t *testing.T) {
	was := "# mine\n[[book]]\ntitle = \"one\" # first\nheight = 220\nwidth = 150\nthickness = 30\n\n# between\n[[book]]\nheight = 210 # low\nwidth = 140\nthickness = 20"
	swap := jobfile.Change{Key: "book", Swap: "book[2]"}
	is := changed(t, was, swap)
	assert.Equal(t, "# mine\n[[book]]\nheight = 210 # low\nwidth = 140\nthickness = 20\n\n# between\n[[book]]\ntitle = \"one\" # first\nheight = 220\nwidth = 150\nthickness = 30\n", is)
	assert.Equal(t, was+"\n", changed(t, is, swap))
	assert.Equal(t, "# mine\n\n# between\n[[book]]\ntitle", changed(t, is, jobfile.Change{Key: "book", Gone: true})[:32])
	_, err := jobfile.Changed("case.toml", []byte(was), []jobfile.Change{{Key: "book", Swap: "book[3]"}})
	require.ErrorContains(t, err, "name two tables that are there")
	assert.Equal(t, 2, strings.Count(is, "[[book]]"))
}
