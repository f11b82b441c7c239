package kinds_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/kinds"
	"forel/geometry/plan"
)

// book is of an invented book.
func book(height, width, thickness geometry.Length) job.Book {
	return job.Book{Height: job.Readings{height}, Width: job.Readings{width}, Thickness: job.Readings{thickness}}
}

// Every kind makes a case of a usual book with every setting at its default, and
// nothing of it is suspect.
func TestEveryKindMakesACase(t *testing.T) {
	for _, k := range kinds.All {
		t.Run(k.About, func(t *testing.T) {
			j := k.New(geometry.MM)
			_, refused, _ := j.Check()
			require.NotEmpty(t, refused, "a job without a book")
			j.Shared().Books = []job.Book{book(221, 148.5, 32)}
			sound, refused, suspect := j.Check()
			require.Empty(t, refused)
			assert.Empty(t, suspect)
			p, err := sound.Make()
			require.NoError(t, err)
			assert.NotEmpty(t, p.Pieces)
		})
	}
}

// A job that was checked is made as it was then, whatever is changed of it later.
func TestACheckedJobStays(t *testing.T) {
	for _, k := range kinds.All {
		j := k.New(geometry.MM)
		j.Shared().Books = []job.Book{book(221, 148.5, 32)}
		sound, _, _ := j.Check()
		want, err := sound.Make()
		require.NoError(t, err)
		j.Shared().Clearance.Height = 7
		got, err := sound.Make()
		require.NoError(t, err)
		assert.Equal(t, want.Pieces, got.Pieces, k.About)
		other, err := plan.Make(j)
		require.NoError(t, err)
		assert.NotEqual(t, want.Pieces, other.Pieces, k.About)
	}
}

// Each setting is kept in the job it came from, and in a place of its own there.
func TestSettingsAreOfTheirJob(t *testing.T) {
	for _, k := range kinds.All {
		j, untouched := k.New(geometry.MM), k.New(geometry.MM).Settings()
		keys := map[string]bool{}
		for i, s := range j.Settings() {
			require.False(t, keys[s.Key], "%s twice", s.Key)
			keys[s.Key] = true
			require.NotEmpty(t, s.What, s.Key)
			switch {
			case s.Length != nil:
				*s.Length += 0.25
			case s.Number != nil:
				*s.Number += 0.25
			default:
				require.Greater(t, len(s.Words), 1, s.Key)
				*s.Word = s.Words[1]
			}
			for n, now := range j.Settings() {
				assert.Equal(t, n > i, now.Same(untouched[n]), "%s, when %s was changed", now.Key, s.Key)
			}
		}
	}
}

// The names a kind says its pieces can have are those they have.
func TestPiecesAreNamed(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		k := rapid.SampledFrom(kinds.All).Draw(t, "kind")
		j := k.New(geometry.MM)
		mm := func(lo, hi int, name string) geometry.Length {
			return geometry.Length(rapid.IntRange(lo, hi).Draw(t, name))
		}
		for range rapid.IntRange(1, 2).Draw(t, "books") {
			j.Shared().Books = append(j.Shared().Books, book(mm(120, 300, "height"), mm(90, 200, "width"), mm(10, 60, "thickness")))
		}
		for _, s := range j.Settings().Words() {
			*s.Word = rapid.SampledFrom(s.Words).Draw(t, s.Key)
		}
		for _, s := range j.Settings().Lengths() {
			if s.Key == "pattern.repeat_across" || s.Key == "pattern.repeat_along" {
				*s.Length = mm(20, 60, s.Key)
			}
		}
		p, err := plan.Make(j)
		if err != nil {
			t.Skip("can't be made")
		}
		for _, q := range p.Drawn() {
			require.Contains(t, k.Pieces, q.Name)
			require.Contains(t, kinds.Pieces(), q.Name)
		}
	})
}

func TestFind(t *testing.T) {
	for _, k := range kinds.All {
		found, ok := kinds.Find(k.Name, k.Construction)
		assert.True(t, ok)
		assert.Equal(t, k.About, found.About, "two kinds of one name and construction")
		assert.Contains(t, kinds.Names(), k.Name)
	}
	first, ok := kinds.Find("slipcase", "")
	assert.True(t, ok)
	assert.Equal(t, kinds.All[0].About, first.About)
	_, ok = kinds.Find("no such thing", "")
	assert.False(t, ok)
}
