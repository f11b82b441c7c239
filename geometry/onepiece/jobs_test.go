package onepiece_test

import (
	"regexp"
	"slices"
	"strconv"
	"strings"

	"pgregory.net/rapid"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/onepiece"
	"forel/geometry/plan/plantest"
	"forel/geometry/slipcase"
)

// eps is what two lengths, reached by two ways of calculating, may differ by:
// a nanometre. No maker cuts to that.
const eps = 1e-6

// jobFor gives a default job for a book, changed.
func jobFor(height, width, thickness slipcase.Length, change func(*onepiece.Job)) onepiece.Job {
	j := onepiece.DefaultJob(geometry.MM)
	j.Books = []job.Book{{
		Height: job.Readings{height}, Width: job.Readings{width}, Thickness: job.Readings{thickness},
	}}
	if change != nil {
		change(&j)
	}
	return j
}

// length draws a length in [lo, hi], often a limit, or a whole number of
// hundredths, as measured.
func length(lo, hi float64) *rapid.Generator[slipcase.Length] {
	return rapid.Map(rapid.OneOf(
		rapid.Float64Range(lo, hi),
		rapid.Map(rapid.IntRange(0, int((hi-lo)*100)), func(n int) float64 { return lo + float64(n)/100 }),
		rapid.SampledFrom([]float64{lo, hi}),
	), func(l float64) slipcase.Length {
		if l < lo+0.002 {
			l = lo // nobody sets a micrometre
		}
		return slipcase.Length(min(l, hi))
	})
}

// anyJobs draws jobs with every setting anywhere within its limits, or with
// all but a few at their defaults.
func anyJobs() *rapid.Generator[onepiece.Job] {
	return rapid.Custom(func(t *rapid.T) onepiece.Job {
		j := jobFor(length(40, 500).Draw(t, "height"), length(30, 400).Draw(t, "width"), length(3, 150).Draw(t, "thickness"), nil)
		j.Unit = rapid.SampledFrom([]geometry.Unit{geometry.MM, geometry.IN}).Draw(t, "unit")
		few := rapid.Bool().Draw(t, "few settings changed")
		change := func(key string) bool { return !few || rapid.IntRange(0, 2).Draw(t, "change "+key) == 0 }
		for _, f := range ownSettings(&j).Lengths() {
			if change(f.Key) {
				lo := f.Min
				if f.Key == "card.thickness" {
					lo = 0.3
				}
				*f.Length = length(lo, f.Max).Draw(t, f.Key)
			}
		}
		for _, f := range ownSettings(&j).Words() {
			*f.Word = rapid.SampledFrom(f.Words).Draw(t, f.Key)
		}
		for _, f := range ownSettings(&j).Numbers() {
			if change(f.Key) {
				*f.Number = rapid.OneOf(rapid.Float64Range(f.Min, f.Max), rapid.SampledFrom([]float64{f.Min, 0.5, f.Max})).Draw(t, f.Key)
			}
		}
		return j
	})
}

// ownSettings are those that the sizes of a case depend on.
func ownSettings(j *onepiece.Job) job.Settings {
	return slices.DeleteFunc(j.Settings(), func(s job.Setting) bool {
		return !slices.ContainsFunc([]string{"card.", "flaps.", "clearance."}, func(table string) bool { return strings.HasPrefix(s.Key, table) })
	})
}

// goodJobs draws jobs that are accepted, at once or after doing what a refusal
// says, so that jobs just within a limit are common.
func goodJobs() *rapid.Generator[onepiece.Job] {
	return rapid.Custom(func(t *rapid.T) onepiece.Job {
		j := anyJobs().Draw(t, "job")
		if plantest.Mended(&j) != nil {
			t.Skip("not mended; TestRefusalsMend is about these")
		}
		return j
	})
}

var mendText = regexp.MustCompile(`^at most (\d+(?:\.\d+)?) (mm|in)$`)

// mostOf reads the limit back from the words a maker sees.
func mostOf(p job.Problem) (slipcase.Length, bool) {
	w := mendText.FindStringSubmatch(p.Fix)
	if w == nil || setting(new(onepiece.Job), p.Key) == nil {
		return 0, false
	}
	n, err := strconv.ParseFloat(w[1], 64)
	if w[2] == "in" {
		n *= 25.4
	}
	return slipcase.Length(n), err == nil
}

// setting gives the length that a key names, nil where there is none.
func setting(j *onepiece.Job, key string) *slipcase.Length {
	f, _ := j.Settings().Find(key)
	return f.Length
}
