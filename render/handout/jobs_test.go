package handout_test

import (
	"errors"
	"sync"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/onepiece"
	"forel/geometry/plan"
	"forel/geometry/plan/plantest"
	"forel/geometry/slipcase"
	"forel/paper"
	"forel/render/document"
	"forel/render/handout"
)

type length = geometry.Length

// jobOf gives the job for an invented book, every setting at its default.
func jobOf(height, width, thickness length) slipcase.Job {
	j := slipcase.DefaultJob(geometry.MM)
	j.Title = "Invented"
	j.Books = []job.Book{{Height: job.Readings{height}, Width: job.Readings{width}, Thickness: job.Readings{thickness}}}
	return j
}

func changed(j slipcase.Job, change func(*slipcase.Job)) slipcase.Job {
	change(&j)
	return j
}

func threeVolumes(j *slipcase.Job) {
	j.Books = append(j.Books, j.Books[0], j.Books[0])
	j.Books[1].Thickness = job.Readings{22}
	j.Books[2].Height = job.Readings{180}
}

// jobs are cases from a 3 mm pamphlet to a 150 mm folio, of every covering,
// lining, hole and compartment.
func jobs() map[string]slipcase.Job { return plantest.Few(allJobs(), usual...) }

// usual are the jobs that are looked at with -short: each covering, hole and lining once.
var usual = []string{"ordinary", "smallest", "lined last, hole", "wrap of paper, hole", "three volumes, dividers", "inches, stretch"}

func allJobs() map[string]slipcase.Job {
	ordinary := jobOf(221.5, 148.5, 32)
	return map[string]slipcase.Job{
		"ordinary":       ordinary,
		"pamphlet":       jobOf(210, 148, 3),
		"folio":          jobOf(420, 300, 150),
		"smallest":       jobOf(40, 30, 3),
		"largest":        jobOf(500, 400, 150),
		"low and oblong": jobOf(40, 200, 60),
		"unlined":        changed(ordinary, func(j *slipcase.Job) { j.Lining.Thickness = 0 }),
		"lined last, hole": changed(ordinary, func(j *slipcase.Job) {
			j.Lining.Order, j.ThumbHole.Shape = slipcase.LinedAfter, slipcase.Semicircle
		}),
		"wrap of cloth": changed(ordinary, func(j *slipcase.Job) { j.Covering, j.Cloth.Stretch = slipcase.AllCloth, 1.5 }),
		"wrap of paper, hole": changed(ordinary, func(j *slipcase.Job) {
			j.Covering, j.ThumbHole.Shape = slipcase.AllPaper, slipcase.Semicircle
		}),
		"sides only, triangle": changed(ordinary, func(j *slipcase.Job) {
			j.Covering, j.ThumbHole.Shape = slipcase.SidesOnly, slipcase.Triangle
		}),
		"three volumes": changed(ordinary, threeVolumes),
		"three volumes, dividers": changed(ordinary, func(j *slipcase.Job) {
			threeVolumes(j)
			j.Compartments = slipcase.EachItsOwn
		}),
		"inches, stretch": changed(ordinary, func(j *slipcase.Job) {
			j.Unit, j.Cloth.Stretch, j.SidePaper.Stretch = geometry.IN, 2, 1.25
		}),
	}
}

func subjectOf(t require.TestingT, j slipcase.Job) plan.Plan {
	c, err := plantest.Make[slipcase.Case](j)
	require.NoError(t, err)
	return c.Plan()
}

func cardJob(height, width, thickness, card length) onepiece.Job {
	j := onepiece.DefaultJob(geometry.MM)
	j.Title, j.Card.Thickness = "Invented", card
	j.Books = jobOf(height, width, thickness).Books
	return j
}

func cardOf(t require.TestingT, height, width, thickness, card length) plan.Plan {
	c, err := plantest.Make[onepiece.Case](cardJob(height, width, thickness, card))
	require.NoError(t, err)
	return c.Plan()
}

// subjects are all jobs and some cases of card, worked out once for all tests.
var subjects = sync.OnceValue(func() map[string]plan.Plan {
	out := map[string]plan.Plan{
		"card":        cardOf(plantest.Must{}, 203, 130, 22, 1.6),
		"card, thin":  cardOf(plantest.Must{}, 210, 148, 3, 0.6),
		"card, thick": cardOf(plantest.Must{}, 120, 90, 100, 3),
	}
	for name, j := range jobs() {
		out[name] = subjectOf(plantest.Must{}, j)
	}
	return plantest.Few(out, append(usual, "card")...)
})

// drawnJobs returns how many drawn jobs a test looks at whose pages or figures take a
// while.
func drawnJobs() int {
	if testing.Short() {
		return 1
	}
	return 3
}

// anyJob draws a job that can be made: a book of any size a slipcase is made for,
// and every choice.
func anyJob(t *rapid.T) slipcase.Job {
	for range 40 {
		n := rapid.SampledFrom([]int{1, 1, 1, 2, 3}).Draw(t, "volumes")
		j := jobOf(0, 0, 0)
		j.Books = nil
		for range n {
			j.Books = append(j.Books, jobOf(
				length(rapid.Float64Range(40, 500).Draw(t, "height")), length(rapid.Float64Range(30, 400).Draw(t, "width")),
				length(rapid.Float64Range(3, 150/float64(n)).Draw(t, "thickness"))).Books[0])
		}
		for _, c := range j.Settings().Words() {
			*c.Word = rapid.SampledFrom(c.Words).Draw(t, c.Key)
		}
		j.LiningPattern.Across, j.LiningPattern.Along = 24, 24
		if j.Pattern.Across, j.Pattern.Along = 40, 30; rapid.Bool().Draw(t, "unlined") {
			j.LiningPattern = slipcase.DefaultJob(geometry.MM).LiningPattern
			j.Lining.Thickness = 0
		}
		j.Board.Thickness = length(rapid.Float64Range(1, 4).Draw(t, "board"))
		j.Clearance.Thickness = length(rapid.Float64Range(2, 6).Draw(t, "clearance"))
		if _, err := plantest.Make[slipcase.Case](j); err == nil {
			return j
		} else if refused := (job.Problems)(nil); !errors.As(err, &refused) {
			t.Fatalf("%v", err)
		}
	}
	t.Skip("no job that can be made")
	return slipcase.Job{}
}

func on(t require.TestingT, sheet string) handout.Options {
	s, err := paper.ParseSheet(sheet, geometry.MM)
	require.NoError(t, err)
	setup := paper.DefaultSetup()
	setup.Sheet = s
	return handout.Options{Options: document.Options{Setup: setup, Round: geometry.ToTenthMM}}
}

// anyTitle draws none, a short one, or a long one with words of any length, in
// letters that the typeface has and in those it lacks.
func anyTitle(t *rapid.T) string {
	return rapid.OneOf(
		rapid.SampledFrom([]string{"", "Invented harbour log"}),
		rapid.StringOfN(rapid.RuneFrom([]rune("  aeinorstWM–éß½ЖщΩאب港日誌\u0301")), 1, 200, -1),
	).Draw(t, "title")
}

// anyCard draws a case of scored card for a book of any size.
func anyCard(t *rapid.T) plan.Plan {
	draw := func(lo, hi float64, label string) length { return length(rapid.Float64Range(lo, hi).Draw(t, label)) }
	j := cardJob(draw(40, 700, "height"), draw(20, 600, "width"), draw(1, 200, "thickness"), rapid.SampledFrom([]length{0, 0.4, 1, 3}).Draw(t, "card"))
	j.Title = anyTitle(t)
	j.Card.Kind = rapid.SampledFrom([]string{onepiece.Solid, onepiece.Corrugated}).Draw(t, "kind")
	c, err := plantest.Make[onepiece.Case](j)
	if err != nil {
		t.Skip("can't be made")
	}
	return c.Plan()
}

// anySubject draws a case of any kind, with titles of any kind.
func anySubject(t *rapid.T) plan.Plan {
	if rapid.IntRange(0, 3).Draw(t, "of card") == 0 {
		return anyCard(t)
	}
	j := anyJob(t)
	j.Title = anyTitle(t)
	if len(j.Books) > 1 {
		for i := range j.Books {
			j.Books[i].Title = anyTitle(t)
		}
	}
	return subjectOf(t, j)
}

// anyPrinter draws a sheet and the margins that a printer leaves of it.
func anyPrinter(t *rapid.T) handout.Options {
	o := on(t, rapid.SampledFrom([]string{"A4", "Letter", "Legal", "A3", "185 x 200 mm", "170 x 170 mm"}).Draw(t, "sheet"))
	most := rapid.SampledFrom([]float64{18, paper.MostMargin.MM()}).Draw(t, "most margin")
	margin := func(label string) length { return length(rapid.Float64Range(0, most).Draw(t, label)) }
	o.Setup.Margins = paper.Margins{Left: margin("left"), Right: margin("right"), Top: margin("top"), Bottom: margin("bottom")}
	if o.Setup.Check() != nil {
		t.Skip("too little to print on")
	}
	o.Round = rapid.SampledFrom([]geometry.Rounding{geometry.ToTenthMM, geometry.To64th, geometry.ToHalfMM}).Draw(t, "rounding")
	return o
}
