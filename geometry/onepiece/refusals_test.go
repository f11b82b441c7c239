package onepiece_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/onepiece"
	"forel/geometry/plan/plantest"
	"forel/geometry/slipcase"
)

// refusal gives a job's problems, none where it is accepted.
func refusal(t require.TestingT, j onepiece.Job) job.Problems {
	c, err := onepiece.Make(j)
	if err == nil {
		return nil
	}
	var ps job.Problems
	require.True(t, errors.As(err, &ps), "%T", err)
	require.NotEmpty(t, ps)
	require.Empty(t, c.Pieces, "the blank of a refused job")
	return ps
}

func speaksOf(ps job.Problems, key string) bool {
	for _, p := range ps {
		if p.Key == key {
			return true
		}
	}
	return false
}

// A refused job, each setting within its own limits, is told which setting to
// change and to what; doing so makes it possible, and a little less of a change
// than that does not.
func TestRefusalsMend(t *testing.T) {
	const little = 0.03 // more than the rounding of a limit: a thousandth of an inch is 0.0254 mm
	rapid.Check(t, func(t *rapid.T) {
		j := anyJobs().Draw(t, "job")
		if rapid.Bool().Draw(t, "a thin book without clearance") {
			j.Books[0].Thickness[0], j.Clearance.Thickness = length(1, 4).Draw(t, "thickness"), 0
		}
		for _, p := range refusal(t, j) {
			limit, ok := mostOf(p)
			require.True(t, ok, p)
			require.Greater(t, *setting(&j, p.Key), limit, p)
			less := j
			*setting(&less, p.Key) = limit + little
			require.True(t, speaksOf(refusal(t, less), p.Key), "%v, yet %v does too", p, limit+little)
		}
		require.NoError(t, plantest.Mended(&j))
		require.Empty(t, refusal(t, j))
	})
}

// By hand: in a cavity 3 thick, card may be no thicker than that, and the
// relief no more than a quarter of it.
func TestWhatIsRefused(t *testing.T) {
	thin := func(change func(*onepiece.Job)) onepiece.Job {
		j := jobFor(220, 150, 3, change)
		j.Clearance.Thickness = 0
		return j
	}
	require.Empty(t, refusal(t, thin(func(j *onepiece.Job) { j.Card.Thickness, j.Flaps.Relief = 3, 0.75 })))
	thick := refusal(t, thin(func(j *onepiece.Job) { j.Card.Thickness = 3.1 }))
	require.Len(t, thick, 1)
	assert.Equal(t, "card.thickness", thick[0].Key)
	assert.Equal(t, "at most 3 mm", thick[0].Fix)
	loose := refusal(t, thin(func(j *onepiece.Job) { j.Flaps.Relief = 0.754 }))
	require.Len(t, loose, 1)
	assert.Equal(t, "flaps.relief", loose[0].Key)
	assert.Equal(t, "at most 0.75 mm", loose[0].Fix)
	assert.Contains(t, loose[0].Wrong(), "0.754", "not the limit itself")
	inches := refusal(t, thin(func(j *onepiece.Job) { j.Unit, j.Card.Thickness = geometry.IN, 3.1 }))
	require.Len(t, inches, 1)
	assert.Equal(t, "at most 0.118 in", inches[0].Fix) // 3 mm is 0.1181 in
}

// Whatever is outside its limits, or no number, is refused by its key, and
// nothing else of a good job is.
func TestLimits(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := goodJobs().Draw(t, "job")
		beyond := func(lo, hi float64) float64 {
			return rapid.OneOf(
				rapid.Map(rapid.Float64Range(1e-8, 1e9), func(d float64) float64 { return lo - d }),
				rapid.Map(rapid.Float64Range(1e-8, 1e9), func(d float64) float64 { return hi + d }),
				rapid.SampledFrom([]float64{math.NaN(), math.Inf(1), math.Inf(-1)}),
			).Draw(t, "beyond")
		}
		key := ""
		switch rapid.IntRange(0, 2).Draw(t, "what") {
		case 0:
			f := rapid.SampledFrom(job.Dimensions).Draw(t, "reading")
			key = "book." + f.Key
			*f.At(&j.Books[0]) = job.Readings{onepiece.Length(beyond(f.Min.MM(), f.Max.MM()))}
		case 1:
			f := rapid.SampledFrom(j.Settings().Lengths()).Draw(t, "setting")
			key = f.Key
			*f.Length = onepiece.Length(beyond(f.Min, f.Max))
		default:
			f := rapid.SampledFrom(j.Settings().Numbers()).Draw(t, "fraction")
			key = f.Key
			*f.Number = beyond(f.Min, f.Max)
		}
		ps := refusal(t, j)
		require.True(t, speaksOf(ps, key), "%s: %v", key, ps)
		assert.Len(t, ps, 1)
		assert.NotContains(t, ps.Error(), "\n")
		assert.NotEmpty(t, ps[0].Fix)
	})
}

// A book that lacks a measurement is refused by its key.
func TestMissingMeasurements(t *testing.T) {
	for _, f := range job.Dimensions {
		j := jobFor(220, 150, 30, nil)
		*f.At(&j.Books[0]) = nil
		assert.Equal(t, !f.Optional, speaksOf(refusal(t, j), "book."+f.Key), f.Key)
	}
}

// The largest of several readings counts, and the thicker edge.
func TestLargestReadingCounts(t *testing.T) {
	j := jobFor(220, 150, 30, nil)
	j.Books[0].Height = append(j.Books[0].Height, 221, 219)
	j.Books[0].ForeEdge = job.Readings{31, 32.5}
	j.Clearance = job.Clearance{Height: 2, Width: 1, Thickness: 2}
	c, err := onepiece.Make(j)
	require.NoError(t, err)
	same(t, slipcase.Size{Height: 223, Width: 151, Thickness: 34.5}, c.Proof.Cavity)
}

// What is possible but more often a slip is made all the same, and named, on
// paper too.
func TestSuspects(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*onepiece.Job)
		key    string // none: nothing is suspect
	}{
		{"usual", func(*onepiece.Job) {}, ""},
		{"wider than high", func(j *onepiece.Job) { j.Books[0].Width = job.Readings{221} }, "book.width"},
		{"thicker than wide", func(j *onepiece.Job) { j.Books[0].Thickness = job.Readings{151} }, "book.thickness"},
		{"readings far apart", func(j *onepiece.Job) { j.Books[0].Height = job.Readings{220, 200} }, "book.height"},
		{"paper", func(j *onepiece.Job) { j.Card.Thickness = 0.29 }, "card.thickness"},
		{"thin card", func(j *onepiece.Job) { j.Card.Thickness = 0.3 }, ""},
		{"no allowance", func(j *onepiece.Job) { j.Card.Thickness = 0 }, "card.thickness"},
		{"stiff card", func(j *onepiece.Job) { // a cavity 5 thick
			j.Card.Thickness, j.Books[0].Thickness, j.Clearance.Thickness = 2.6, job.Readings{3}, 2
		}, "card.thickness"},
		{"not so stiff card", func(j *onepiece.Job) {
			j.Card.Thickness, j.Books[0].Thickness, j.Clearance.Thickness = 2.5, job.Readings{3}, 2
		}, ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			made, err := onepiece.Make(jobFor(220, 150, 30, c.change))
			require.NoError(t, err)
			if c.key == "" {
				assert.Empty(t, made.Suspects())
				assert.Empty(t, made.Plan().Warnings)
				return
			}
			require.Len(t, made.Suspects(), 1)
			assert.Equal(t, c.key, made.Suspects()[0].Key)
			assert.NotEmpty(t, made.Suspects()[0].Fix)
			thing, measure, _ := strings.Cut(c.key, ".")
			require.Len(t, made.Plan().Warnings, 1)
			assert.Regexp(t, "^the "+measure+" of the "+thing+": .+; .+", made.Plan().Warnings[0])
		})
	}
}
