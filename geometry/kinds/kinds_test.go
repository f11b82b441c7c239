package kinds_test

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/kinds"
	"forel/geometry/plan"
	"forel/geometry/plan/plantest"
	"forel/geometry/stage"
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
		for _, key := range []string{"clearance.height", "box.clearance_height"} {
			if s, ok := j.Settings().Find(key); ok {
				*s.Length = 7
			}
		}
		if k.Name == "chemise" {
			j.Shared().Clearance.Height = 7
		}
		got, err := sound.Make()
		require.NoError(t, err)
		assert.Equal(t, want.Pieces, got.Pieces, k.About)
		other, err := plantest.Plan(j)
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
			case s.Readings != nil:
				*s.Readings = append(*s.Readings, 100)
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

// anyPlan draws a case of any kind for one or two books, every word of its settings
// and some lengths drawn.
func anyPlan(t *rapid.T) (plan.Kind, plan.Plan) {
	k := rapid.SampledFrom(kinds.All).Draw(t, "kind")
	j := k.New(geometry.MM)
	mm := func(lo, hi int, name string) geometry.Length {
		return geometry.Length(rapid.IntRange(lo, hi).Draw(t, name))
	}
	for range rapid.IntRange(1, 2).Draw(t, "books") {
		j.Shared().Books = append(j.Shared().Books, book(mm(40, 400, "height"), mm(30, 300, "width"), mm(3, 80, "thickness")))
	}
	for _, s := range j.Settings().Words() {
		*s.Word = rapid.SampledFrom(s.Words).Draw(t, s.Key)
	}
	for _, s := range j.Settings() {
		switch s.Key {
		case "pattern.repeat_across", "pattern.repeat_along", "lining_pattern.repeat_across", "lining_pattern.repeat_along":
			*s.Length = mm(20, 60, s.Key)
		case "board.thickness", "card.thickness":
			*s.Length = geometry.Length(rapid.Float64Range(1, 4).Draw(t, s.Key))
		case "cloth.stretch", "side_paper.stretch":
			*s.Number = rapid.SampledFrom([]float64{0, 0, 1.5, 2.25}).Draw(t, s.Key)
		}
	}
	p, err := plantest.Plan(j)
	if err != nil {
		t.Skip("can't be made")
	}
	return k, p
}

// All that a plan says is put into words without a place for a length left over or
// a length without a place.
func TestEverySentenceIsWhole(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		_, p := anyPlan(t)
		says := slices.Concat(p.Remarks, p.Finished.Good, p.Finished.Bad)
		for _, f := range p.Facts {
			says = append(says, f.Says())
		}
		for _, s := range p.Steps {
			assert.NotEmpty(t, s.Short.Text, "every step stands in the overview too: %s", s.Title)
			says = append(append(says, s.Short), s.Text...)
			for _, c := range s.Checks {
				says = append(append(says, c.See...), c.Fails)
				assert.True(t, c.Fails.Text != "" || len(c.Found) > 0, "%s: nothing is told to do", c.Name)
				for _, f := range c.Found {
					says = append(says, f.What, f.Means, f.Do)
				}
			}
			for _, picture := range slices.Concat(s.Pictures...) {
				says = append(says, picture.Caption)
				for _, n := range picture.Notes {
					says = append(says, n.Name, n.More)
				}
			}
		}
		for _, s := range says {
			assert.NotContains(t, s.In(geometry.ToTenthMM.Pretty), "%!", s.Text)
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

// Of a case that a book stands in with what it wears, no sentence takes the bare book for what
// goes in: not the steps, the checks, what may be found, or what the finished case is held
// against.
func TestWhatTheBookWearsIsNotForgotten(t *testing.T) {
	bare := regexp.MustCompile(`(?i)(round )?\bthe book\b( in its)?`)
	tried := 0
	for _, k := range kinds.All {
		inner, outer, both := strings.Cut(k.Name, " and ")
		if !both {
			continue
		}
		j := k.New(geometry.MM)
		j.Shared().Books = []job.Book{book(220, 150, 30)}
		p, err := plantest.Plan(j)
		require.NoError(t, err)
		var says []stage.Say
		for _, s := range p.Steps {
			if !strings.HasPrefix(strings.ToLower(s.Title), outer) {
				continue
			}
			says = append(append(says, stage.Say{Text: s.Title}, s.Short), s.Text...)
			for _, c := range s.Checks {
				says = append(append(says, c.See...), c.Fails)
				for _, f := range c.Found {
					says = append(says, f.What, f.Means, f.Do)
				}
			}
			for _, picture := range slices.Concat(s.Pictures...) {
				for _, n := range picture.Notes {
					says = append(says, n.Name, n.More)
				}
			}
		}
		for _, s := range slices.Concat(p.Finished.Good, p.Finished.Bad) {
			if strings.HasPrefix(strings.ToLower(s.Text), outer) {
				says = append(says, s)
			}
		}
		require.Greater(t, len(says), 20, k.Name)
		for _, s := range says {
			for _, found := range bare.FindAllStringSubmatch(s.Text, -1) {
				tried++
				assert.True(t, found[2] != "" || found[1] != "" && strings.Contains(s.Text, inner), "%s: %q", k.Name, s.Text)
			}
		}
	}
	assert.Greater(t, tried, 20)
}
