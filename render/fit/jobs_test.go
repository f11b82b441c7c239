package fit_test

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"sync"

	"github.com/stretchr/testify/require"

	"forel/geometry"
	"forel/geometry/fit"
	"forel/geometry/job"
	"forel/geometry/onepiece"
	"forel/geometry/plan/plantest"
	"forel/geometry/slipcase"
	"forel/paper"
	"forel/render/document"
	renderfit "forel/render/fit"
)

// Length is short for that of geometry.
type Length = geometry.Length

// subject is an invented job worked out, and how it is shown.
type subject struct {
	name   string
	report fit.Report
	renderfit.Options
}

func boards(t require.TestingT, change func(*slipcase.Job)) fit.Report {
	j := slipcase.DefaultJob(geometry.MM)
	j.Title = "Harbour log" // invented
	j.Books = []job.Book{{Height: job.Readings{221, 221.5}, Width: job.Readings{148.5}, Thickness: job.Readings{31, 31.75}}}
	change(&j)
	c, err := plantest.Make[slipcase.Case](j)
	require.NoError(t, err)
	return fit.Of(c.Plan())
}

// pages returns the pages of a subject, drawn once for all tests.
func (s subject) pages() []*document.Page { return drawn(s.name) }

var drawn = plantest.Once(func(name string) []*document.Page {
	s := subjects()[slices.IndexFunc(subjects(), func(s subject) bool { return s.name == name })]
	return renderfit.Document(s.report, s.Options).Pages()
})

// subjects are jobs of every kind on A4 and Letter, in either unit, worked out once.
var subjects = sync.OnceValue(func() (out []subject) {
	t := plantest.Must{}
	card := onepiece.DefaultJob(geometry.MM)
	card.Title = "Net mending" // invented
	card.Books = []job.Book{{Height: job.Readings{203}, Width: job.Readings{130}, Thickness: job.Readings{22}}}
	blank, err := plantest.Make[onepiece.Case](card)
	require.NoError(t, err)
	reports := map[string]fit.Report{
		"plain": boards(t, func(*slipcase.Job) {}),
		"long title, tight, each by itself, damp": boards(t, func(j *slipcase.Job) {
			j.Title = strings.Repeat("The sailing directions of the north channel ", 4)
			j.Clearance.Height, j.Clearance.Thickness = 0.9, 1.2
			j.Uncertainty.Settings, j.Limits.Swell = job.EachBySelf, 1.5
		}),
		"twelve volumes apart": boards(t, func(j *slipcase.Job) {
			j.Compartments = slipcase.EachItsOwn
			for i := range 11 {
				j.Books = append(j.Books, job.Book{Title: fmt.Sprintf("Keepers of the light, being part %d of the lighthouse papers", i+2),
					Height: job.Readings{220}, Width: job.Readings{148}, Thickness: job.Readings{Length(8 + i)}})
			}
		}),
		"paper all round, unlined, huge": boards(t, func(j *slipcase.Job) {
			j.Covering, j.Lining.Thickness = slipcase.AllPaper, 0
			j.Books[0].Height, j.Books[0].Width = job.Readings{640}, job.Readings{480}
		}),
		"thin": boards(t, func(j *slipcase.Job) { j.Books[0].Thickness = job.Readings{4} }),
		"card": fit.Of(blank.Plan()),
	}
	for _, name := range slices.Sorted(maps.Keys(reports)) {
		r := reports[name]
		for _, sheet := range []paper.Sheet{paper.Sheets[0], paper.Sheets[2]} {
			for _, round := range []geometry.Rounding{geometry.ToTenthMM, geometry.To64th} {
				setup := paper.DefaultSetup()
				setup.Sheet = sheet
				out = append(out, subject{fmt.Sprintf("%s, %s, %s", name, sheet, round.Unit), r, renderfit.Options{Setup: setup, Round: round}})
			}
		}
	}
	return out
})
