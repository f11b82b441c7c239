package slipcase_test

import (
	"errors"
	"math"
	"regexp"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/slipcase"
)

// refusal gives a job's problems, none where it is accepted.
func refusal(t require.TestingT, j slipcase.Job) job.Problems {
	c, err := slipcase.Make(j)
	if err == nil {
		return nil
	}
	var refused job.Problems
	require.True(t, errors.As(err, &refused), "%T", err)
	require.NotEmpty(t, refused)
	require.Empty(t, c.Pieces, "templates of a refused job")
	return refused
}

func names(ps job.Problems, key string) bool {
	for _, p := range ps {
		if p.Key == key {
			return true
		}
	}
	return false
}

// A refused job, each setting within its own limits, is told which setting to
// change and by how much; doing so, a few times over, makes it possible.
func TestRefusalsMend(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := anyJobs().Draw(t, "job")
		for _, p := range refusal(t, j) {
			_, ok := parseMend(p)
			require.True(t, ok, p)
		}
		_, err := mended(j)
		require.NoError(t, err, "after %d rounds", mendRounds)
	})
}

// The number in a refusal is the smallest change that does: a little less of a
// change, more than the rounding of the number, leaves the refusal standing.
func TestRefusalsAskForNoMore(t *testing.T) {
	const little = 0.03 // a thousandth of an inch is 0.0254 mm
	rapid.Check(t, func(t *rapid.T) {
		j := anyJobs().Draw(t, "job")
		for _, p := range refusal(t, j) {
			m, ok := parseMend(p)
			if !ok {
				continue // TestRefusalsMend is about these
			}
			less := j
			if m.atMost {
				m.limit += little
			} else {
				m.limit -= little
			}
			*setting(&less, m.key) = m.limit
			require.True(t, names(refusal(t, less), m.key), "%v, yet %v does too", p, m.limit)
		}
	})
}

// A setting that nothing speaks against is left alone: whatever a refusal
// names was outside the number it gives.
func TestRefusalsAreTrue(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := anyJobs().Draw(t, "job")
		for _, p := range refusal(t, j) {
			m, ok := parseMend(p)
			if !ok {
				continue // TestRefusalsMend is about these
			}
			is := *setting(&j, m.key)
			assert.True(t, m.atMost && is > m.limit || !m.atMost && is < m.limit, "%v, but it is %v", p, is)
		}
	})
}

// A refusal does not call a length wrong and ask for that very length: here
// 0.746 where 2 x 0.35 + 0.05 are needed.
func TestRefusalsDoNotContradictThemselves(t *testing.T) {
	for _, unit := range []geometry.Unit{geometry.MM, geometry.IN} {
		j := exampleJob(func(j *slipcase.Job) { j.Unit, j.Clearance.Height = unit, 0.746 })
		for _, p := range refusal(t, j) {
			m, ok := parseMend(p)
			require.True(t, ok, p)
			is := regexp.MustCompile(`^[\d.]+`).FindString(p.Wrong())
			n, err := strconv.ParseFloat(is, 64)
			require.NoError(t, err, p)
			assert.Less(t, n*unit.Length().MM(), m.limit.MM(), p)
		}
	}
}

// A job is refused where no clearance would be left at the mouth, and told
// what would do; where it is accepted, what is left is reported.
func TestMouthClearance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := anyJobs().Draw(t, "job")
		q, refused := truthOf(j), refusal(t, j)
		if q.mouthH <= 0 {
			assert.True(t, names(refused, "clearance.height"), "%v left head to tail", q.mouthH)
		}
		if q.mouthT <= 0 {
			assert.True(t, names(refused, "clearance.thickness"), "%v left side to side", q.mouthT)
		}
		if refused != nil {
			return
		}
		c, err := slipcase.Make(j)
		require.NoError(t, err)
		assert.InDelta(t, q.mouthH, c.Stands.Mouth().Height.MM(), eps)
		if 2*q.m > q.Ho { // head and tail cloth lie over each other on the sides
			q.mouthT -= 2 * q.k
		}
		assert.InDelta(t, q.mouthT, c.Stands.Mouth().Thickness.MM(), eps)
		assert.Positive(t, c.Stands.Mouth().Thickness.MM())
	})
}

// Whatever is no length, or outside the limits of its setting, is refused by
// its key, and nothing else of a good job is.
func TestLimitsOfSettings(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := goodJobs().Draw(t, "case").job
		key, l, lo, hi := anySetting(t, &j)
		*l = outside(t, lo, hi)
		refused := refusal(t, j)
		require.True(t, names(refused, key), "%s = %v: %v", key, *l, refused)
		assert.Len(t, refused, 1)
		assert.NotContains(t, refused.Error(), "\n")
	})
}

// anySetting draws a setting of a job or a reading of its book.
func anySetting(t *rapid.T, j *slipcase.Job) (key string, l *slipcase.Length, lo, hi slipcase.Length) {
	if rapid.Bool().Draw(t, "of the book") {
		f := rapid.SampledFrom(bookFields()).Draw(t, "reading")
		r := f.At(&j.Books[0])
		*r = append(job.Readings{}, *r...)
		return "book." + f.Key, &(*r)[0], f.Min, f.Max
	}
	f := rapid.SampledFrom(plainFields(j)).Draw(t, "setting")
	return f.Key, f.Length, slipcase.Length(f.Min), slipcase.Length(f.Max)
}

// outside draws what lies outside [lo, hi]: a little, but more than the rounding of limits,
// far, or not a number.
func outside(t *rapid.T, lo, hi slipcase.Length) slipcase.Length {
	below, above := rapid.Float64Range(1e-8, 1e9), rapid.Float64Range(1e-8, 1e9)
	return rapid.OneOf(
		rapid.Map(below, func(d float64) slipcase.Length { return lo - slipcase.Length(d) }),
		rapid.Map(above, func(d float64) slipcase.Length { return hi + slipcase.Length(d) }),
		rapid.SampledFrom([]slipcase.Length{
			slipcase.Length(math.NaN()), slipcase.Length(math.Inf(1)), slipcase.Length(math.Inf(-1)),
		}),
	).Draw(t, "outside")
}

// A book without readings, and no book, are refused by key.
func TestMissingMeasurements(t *testing.T) {
	for _, f := range bookFields() {
		j := slipcase.DefaultJob(geometry.MM)
		j.Books = []job.Book{{Height: readings(220), Width: readings(150), Thickness: readings(30)}}
		require.Nil(t, refusal(t, j))
		*f.At(&j.Books[0]) = nil
		assert.True(t, names(refusal(t, j), "book."+f.Key))
	}
	j := slipcase.DefaultJob(geometry.MM)
	assert.True(t, names(refusal(t, j), "book"))
}

// The limits that a refusal quotes are themselves allowed, in either unit.
func TestQuotedLimitsAreAllowed(t *testing.T) {
	text := regexp.MustCompile(`^give (\S+) (?:mm|in) to (\S+) (?:mm|in)`)
	check := func(t *testing.T, what string, lo, hi slipcase.Length, unit geometry.Unit) {
		p, _ := job.CheckRange("key", what, -1, lo, hi, unit, nil)
		w := text.FindStringSubmatch(p.Fix)
		require.Len(t, w, 3, p.Fix)
		for _, quoted := range w[1:] {
			n, err := strconv.ParseFloat(quoted, 64)
			require.NoError(t, err)
			l := slipcase.Length(n) * unit.Length()
			_, ok := job.CheckRange("key", what, l, lo, hi, unit, nil)
			assert.True(t, ok, "%s of %q", quoted, p.Fix)
		}
	}
	for _, unit := range []geometry.Unit{geometry.MM, geometry.IN} {
		for _, f := range new(slipcase.Job).Settings().Lengths() {
			t.Run(f.Key+" in "+unit.String(), func(t *testing.T) { check(t, f.What, slipcase.Length(f.Min), slipcase.Length(f.Max), unit) })
		}
		for _, f := range job.Dimensions {
			t.Run("book."+f.Key+" in "+unit.String(), func(t *testing.T) { check(t, f.What, f.Min, f.Max, unit) })
		}
	}
}
