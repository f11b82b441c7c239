package slipcase_test

import (
	"regexp"
	"slices"
	"strconv"
	"strings"

	"pgregory.net/rapid"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/plan/plantest"
	"forel/geometry/slipcase"
)

// eps is what two lengths, reached by two ways of calculating, may differ by:
// a nanometre. No maker cuts to that.
const eps = 1e-6

// length draws a length in [lo, hi], often the usual one, a limit, or one
// close to a limit, and often a whole number of hundredths, as measured.
func length(lo, hi, usual float64) *rapid.Generator[float64] {
	snap := func(l float64) float64 {
		if l < lo+0.001 {
			return lo // nobody sets a micrometre
		}
		return min(l, hi)
	}
	return rapid.Map(rapid.OneOf(
		rapid.Just(usual),
		rapid.Float64Range(lo, hi),
		rapid.Map(rapid.Float64Range(0, hi-lo), func(below float64) float64 { return hi - below }),
		rapid.Float64Range(max(lo, usual*0.7), min(hi, usual*1.3+0.01)),
		rapid.Map(rapid.IntRange(0, int((hi-lo)*100)), func(n int) float64 { return lo + float64(n)/100 }),
		rapid.SampledFrom([]float64{lo, hi}),
	), snap)
}

// books draws one book of any size that a slipcase is made for.
func books() *rapid.Generator[job.Book] {
	return rapid.Custom(func(t *rapid.T) job.Book {
		thickness := rapid.OneOf(length(3, 150, 30), length(1, 200, 3)).Draw(t, "thickness")
		return job.Book{
			Height:    readings(length(40, 700, 220).Draw(t, "height")),
			Width:     readings(length(20, 600, 150).Draw(t, "width")),
			Thickness: readings(thickness),
		}
	})
}

func readings(mm ...float64) job.Readings {
	var r job.Readings
	for _, l := range mm {
		r = append(r, slipcase.Length(l))
	}
	return r
}

// defaultJobs draws jobs that leave every setting at its default.
func defaultJobs() *rapid.Generator[slipcase.Job] {
	return rapid.Custom(func(t *rapid.T) slipcase.Job {
		j := slipcase.DefaultJob(geometry.MM)
		j.Books = []job.Book{books().Draw(t, "book")}
		return j
	})
}

// plainFields are the settings of a plain case: one book, no thumb hole, no
// divider.
func plainFields(j *slipcase.Job) job.Settings {
	return slices.DeleteFunc(j.Settings().Lengths(), func(f job.Setting) bool {
		section, _, _ := strings.Cut(f.Key, ".")
		return !slices.Contains([]string{"board", "lining", "cloth", "side_paper", "clearance"}, section)
	})
}

// bookFields are the three dimensions of a book.
func bookFields() []job.Dimension {
	return slices.DeleteFunc(slices.Clone(job.Dimensions), func(f job.Dimension) bool {
		return !slices.Contains([]string{"height", "width", "thickness"}, f.Key)
	})
}

// anyJobs draws jobs with every setting anywhere within its own limits, or
// with all but a few settings at their defaults; many of them can't be made.
func anyJobs() *rapid.Generator[slipcase.Job] {
	return rapid.Custom(func(t *rapid.T) slipcase.Job {
		j := defaultJobs().Draw(t, "book")
		j.Unit = rapid.SampledFrom([]geometry.Unit{geometry.MM, geometry.IN}).Draw(t, "unit")
		few := rapid.Bool().Draw(t, "few settings changed")
		for _, f := range plainFields(&j) {
			l := f.Length
			if few && rapid.IntRange(0, 3).Draw(t, "change "+f.Key) > 0 {
				continue
			}
			*l = slipcase.Length(length(f.Min, f.Max, l.MM()).Draw(t, f.Key))
		}
		return j
	})
}

// made is a job that is accepted, and the case for it.
type made struct {
	job slipcase.Job
	slipcase.Case
}

// goodJobs draws jobs that are accepted: at once, or after doing what the
// refusal says, so that jobs just within a limit are common.
func goodJobs() *rapid.Generator[made] {
	return rapid.Custom(func(t *rapid.T) made {
		c, err := mended(rapid.OneOf(defaultJobs(), anyJobs(), anyJobs()).Draw(t, "job"))
		if err != nil {
			t.Skip("not mended; TestRefusalsMend is about these")
		}
		return made{c.Job, c}
	})
}

// mendRounds is how often a maker is asked to change something before giving up.
const mendRounds = 6

// mended does what each refusal says until the job is accepted.
func mended(j slipcase.Job) (slipcase.Case, error) {
	if err := plantest.Mended(&j); err != nil {
		return slipcase.Case{}, err
	}
	return slipcase.Make(j)
}

// mend is the change that a refusal asks for.
type mend struct {
	key    string
	atMost bool // otherwise at least
	limit  slipcase.Length
}

var mendText = regexp.MustCompile(`^at (most|least) (\d+(?:\.\d+)?) (mm|in)$`)

// parseMend reads the change back from the words a maker sees.
func parseMend(p job.Problem) (mend, bool) {
	w := mendText.FindStringSubmatch(p.Fix)
	if w == nil || setting(new(slipcase.Job), p.Key) == nil {
		return mend{}, false
	}
	n, err := strconv.ParseFloat(w[2], 64)
	if w[3] == "in" {
		n *= 25.4
	}
	return mend{p.Key, w[1] == "most", slipcase.Length(n)}, err == nil
}

// apply changes the job as little as the mend asks.
func (m mend) apply(j *slipcase.Job) {
	l := setting(j, m.key)
	if m.atMost {
		*l = min(*l, m.limit)
	} else {
		*l = max(*l, m.limit)
	}
}

// setting gives the length that a key names, nil where there is none.
func setting(j *slipcase.Job, key string) *slipcase.Length {
	f, _ := j.Settings().Find(key)
	return f.Length
}
