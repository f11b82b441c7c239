package templates_test

import (
	"math"
	"sync"
	"testing"

	"github.com/stretchr/testify/require"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/plan"
	"forel/geometry/plan/plantest"
	"forel/geometry/slipcase"
	"forel/paper"
	"forel/render"
	"forel/render/document"
	"forel/render/templates"
)

const (
	inch  = 25.4
	point = inch / 72 // of a PDF's user space (ISO 32000-1, 8.3.2.3)
)

// scenario is an invented book, in millimetres, and the lining of its case;
// everything else is at its default.
type scenario struct {
	name                     string
	height, width, thickness float64
	lining                   float64
	hole                     string // the shape of its thumb hole
}

// The scenarios that files are read back for.
var (
	octavo     = scenario{"octavo", 221.5, 148.5, 32, 0.15, slipcase.NoHole}
	pamphlet   = scenario{"pamphlet", 210, 148, 3, 0.15, slipcase.NoHole}
	folio      = scenario{"folio", 420, 300, 150, 0.15, slipcase.NoHole}
	unlined    = scenario{"unlined", 180, 120, 25, 0, slipcase.NoHole}
	nearSquare = scenario{"near square", 200, 203, 30, 0.15, slipcase.NoHole}
	thumbHole  = scenario{"thumb hole", 240, 170, 40, 0.15, slipcase.Semicircle}

	scenarios = []scenario{octavo, pamphlet, folio, unlined, nearSquare, thumbHole}
)

func (s scenario) job() slipcase.Job {
	j := slipcase.DefaultJob(geometry.MM)
	j.Title = "Invented " + s.name
	j.Lining.Thickness = geometry.Length(s.lining)
	j.ThumbHole.Shape = s.hole
	j.Books = []job.Book{{
		Height:    job.Readings{geometry.Length(s.height)},
		Width:     job.Readings{geometry.Length(s.width)},
		Thickness: job.Readings{geometry.Length(s.thickness)},
	}}
	return j
}

// make returns the case of a scenario.
func (s scenario) make() plan.Plan { return cases(s) }

var cases = plantest.Once(func(s scenario) plan.Plan { return planOf(plantest.Must{}, s.job()) })

// printed is a case on a sheet, and its document as it was drawn.
type printed struct {
	plan.Plan
	o      templates.Options
	layout paper.Layout
	pages  []*document.Page
	missed []string // labels there was no room for
	file   func() []byte
}

// on returns a scenario on a sheet as a maker names it, made once for all tests.
func (s scenario) on(sheet string) printed {
	return onSheets(struct {
		scenario
		sheet string
	}{s, sheet})
}

var onSheets = plantest.Once(func(of struct {
	scenario
	sheet string
}) printed {
	return printedOn(of.make(), on(plantest.Must{}, of.sheet))
})

func printedOn(c plan.Plan, o templates.Options) printed {
	p := printed{Plan: c, o: o, layout: layoutOf(c, o)}
	doc, missed := templates.Draw(c, p.layout, o)
	p.pages, p.missed = doc.Pages(), missed
	p.file = sync.OnceValue(func() []byte {
		file, err := doc.PDF()
		require.NoError(plantest.Must{}, err)
		return file
	})
	return p
}

// few are the scenarios that the slower tests try, all but where tests are to be short.
func few() []scenario {
	if testing.Short() {
		return []scenario{octavo, thumbHole}
	}
	return scenarios
}

// oneSheet tells whether a test that could try everything on two sheets tries the nth of
// all on the ith of them: each on one.
func oneSheet(i, n int) bool { return n%2 == i || plantest.Soak() }

func planOf(t require.TestingT, j slipcase.Job) plan.Plan {
	c, err := plantest.Make[slipcase.Case](j)
	require.NoError(t, err)
	return c.Plan()
}

// cut is what the design says of one template: how many are cut, and the size
// of its bounding box in millimetres.
type cut struct {
	count         int
	width, height float64
}

// cuts works out every template by the tables of the design of the five-board
// case, in plain numbers, with the defaults as a starter job lists them.
func (s scenario) cuts() map[string]cut {
	const (
		board         = 2.0
		cH, cW, cT    = 2.0, 1.0, 2.0
		overlap, ends = 28.0, 28.0 // cloth onto the sides, over head and tail
		gap, mouth    = 5.0, 20.0  // of head and tail cloth at spine and mouth
		inset, beyond = 6.0, 13.0  // of the side paper
		trim          = 12.0       // of a lining, on every side
	)
	lined := board + s.lining
	h, w, t := s.height+cH, s.width+cW, s.thickness+cT // cavity
	outH, outW, outT := h+2*lined, w+lined, t+2*lined  // carcass
	out := map[string]cut{
		"side":        {2, w + lined, h + 2*lined},
		"spine wall":  {1, t, h + 2*lined},
		"head wall":   {1, w, t},
		"tail wall":   {1, w, t},
		"spine cloth": {1, outT + 2*overlap, outH + 2*ends},
		"head cloth":  {1, outT + 2*overlap, outW - gap + mouth},
		"tail cloth":  {1, outT + 2*overlap, outW - gap + mouth},
		"side paper":  {2, outW - inset + beyond, outH - 2*inset},
	}
	if s.lining > 0 {
		for wall, name := range map[string]string{
			"side": "side lining", "spine wall": "spine lining", "head wall": "head lining", "tail wall": "tail lining",
		} {
			b := out[wall]
			out[name] = cut{b.count, b.width + 2*trim, b.height + 2*trim}
		}
	}
	if s.hole == slipcase.Semicircle { // half a circle, a fourteenth of the side high and 16 at most, with 3 all round
		r := min(16, outH/14)
		out["hole strip"] = cut{2, lined + 6, math.Pi*r + 6}
	}
	return out
}

// sheets are the sizes to print on, in millimetres: ISO 216 for A4 and A3,
// ANSI/ASME Y14.1 for Letter and Tabloid, US practice for Legal, and a size
// without a name.
var sheets = []struct {
	name        string
	short, long float64
}{
	{"A4", 210, 297},
	{"A3", 297, 420},
	{"Letter", 8.5 * inch, 11 * inch},
	{"Legal", 8.5 * inch, 14 * inch},
	{"Tabloid", 11 * inch, 17 * inch},
	{"250 x 350 mm", 250, 350},
}

// on returns the options for a sheet as a maker names it, all else at default.
func on(t require.TestingT, sheet string) templates.Options {
	s, err := paper.ParseSheet(sheet, geometry.MM)
	require.NoError(t, err)
	return options(s)
}

func options(s paper.Sheet) templates.Options {
	setup := paper.DefaultSetup()
	setup.Sheet = s
	return templates.Options{Setup: setup, Theme: render.DefaultTheme(), Round: geometry.ToTenthMM}
}

// layoutOf returns the sheets of a case.
func layoutOf(p plan.Plan, o templates.Options) paper.Layout {
	return o.Setup.Lay(p.Drawn(), paper.Options{})
}
