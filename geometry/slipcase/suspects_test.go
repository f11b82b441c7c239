package slipcase_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/geometry/slipcase"
)

// What is possible but more often a slip is made all the same, and named by
// its key with what to check.
func TestSuspects(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*slipcase.Job)
		key    string // none: nothing is suspect
	}{
		{"usual", func(*slipcase.Job) {}, ""},
		{"wider than high", func(j *slipcase.Job) { j.Books[0].Width = readings(221) }, "book.width"},
		{"square", func(j *slipcase.Job) { j.Books[0].Width = readings(220) }, ""},
		{"thicker than wide", func(j *slipcase.Job) { j.Books[0].Thickness = readings(151) }, "book.thickness"},
		// Nothing is inferred from the number: what is known is said.
		{"board of 3/32 in", func(j *slipcase.Job) { j.Board.Thickness = 3 * inch / 32 }, ""},
		{"readings far apart", func(j *slipcase.Job) { j.Books[0].Height = readings(220, 200) }, "book.height"},
		{"readings 2 mm apart", func(j *slipcase.Job) { j.Books[0].Height = readings(220, 218) }, ""},
		{"readings more than 2 mm apart", func(j *slipcase.Job) { j.Books[0].Height = readings(220, 217.9) }, "book.height"},
	} {
		t.Run(c.name, func(t *testing.T) {
			made, err := slipcase.Make(exampleJob(c.change))
			require.NoError(t, err)
			if c.key == "" {
				assert.Empty(t, made.Suspects())
				return
			}
			require.Len(t, made.Suspects(), 1)
			assert.Equal(t, c.key, made.Suspects()[0].Key)
			assert.NotEmpty(t, made.Suspects()[0].Fix)
		})
	}
}

// Within 5 mm of each other in both directions, pieces of one material can be
// mistaken for each other, or one for itself turned; further apart, not. Head
// and tail pieces are alike on purpose.
func TestConfused(t *testing.T) {
	confused := func(change func(*slipcase.Job)) map[string][]string {
		c, err := slipcase.Make(exampleJob(change))
		require.NoError(t, err)
		out := map[string][]string{}
		for _, p := range c.Pieces {
			if p.Confused != nil {
				out[p.Name] = p.Confused
			}
		}
		return out
	}
	assert.Empty(t, confused(func(*slipcase.Job) {}))

	// A side is 3.15 wider and 6.30 higher than the book, 226.30 high here: for a
	// book 222 wide it is 225.15 wide; for one of 229, 232.15, which is 5.85 more.
	square := func(j *slipcase.Job) { j.Books[0].Width = readings(222) }
	assert.Contains(t, confused(square), "side")
	assert.Contains(t, confused(square), "side lining")
	assert.NotContains(t, confused(func(j *slipcase.Job) { j.Books[0].Width = readings(229) }), "side")

	// A block of a book as thick as it is wide: the spine wall is 148 + 2 wide,
	// a side 150 + 3.15, both 226.30 high.
	block := confused(func(j *slipcase.Job) { j.Books[0].Thickness = readings(148) })
	assert.Contains(t, block["side"], "spine wall")
	assert.Contains(t, block["spine wall"], "side")
	assert.NotContains(t, block, "side paper")
}
