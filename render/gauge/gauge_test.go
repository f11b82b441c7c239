package gauge_test

import (
	"bytes"
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/pdfcpu/pdfcpu/pkg/api"
	"github.com/pdfcpu/pdfcpu/pkg/pdfcpu/model"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/paper"
	"forel/render/document"
	"forel/render/gauge"
	"forel/render/pagetest"
	"forel/render/pdf/pdftest"
	"forel/render/record"
)

const inch = 25.4

func on(t require.TestingT, sheet string) gauge.Options {
	s, err := paper.ParseSheet(sheet, geometry.MM)
	require.NoError(t, err)
	return gauge.Options{Options: document.Options{Setup: paper.Setup{Sheet: s, Margins: paper.EvenMargins(gauge.Margin)}}}
}

func file(t testing.TB, o gauge.Options) []byte {
	t.Helper()
	require.NoError(t, o.Check())
	data, err := gauge.Document(o).PDF()
	require.NoError(t, err)
	require.NoError(t, api.Validate(bytes.NewReader(data), model.NewDefaultConfiguration()))
	return data
}

// measured finds the two rules of a printed sheet and measures from the first
// to the last of the long ticks on each side: millimetres and inches across,
// then along. x and y are what the printer makes of a millimetre each way.
func measured(t testing.TB, paths []pdftest.Path, x, y float64) (mm, in [2]float64) {
	t.Helper()
	for way := range 2 {
		at := func(p pdftest.XY) (along, side float64) {
			if way == 0 {
				return p.X * x, p.Y * y
			}
			return p.Y * y, p.X * x
		}
		long, line := 0.0, 0.0
		for _, p := range paths {
			if a, s := at(p.Pieces[0][0]); len(p.Pieces) == 1 {
				b, e := at(p.Pieces[0][1])
				if math.Abs(s-e) < 1e-3 && math.Abs(b-a) > long {
					long, line = math.Abs(b-a), s
				}
			}
		}
		ends := map[bool][]float64{}
		for _, p := range paths {
			a, s := at(p.Pieces[0][0])
			b, e := at(p.Pieces[0][1])
			if len(p.Pieces) == 1 && math.Abs(a-b) < 1e-3 && math.Abs(s-line) < 1e-3 && math.Abs(e-s) > 6.5 {
				ends[e < s] = append(ends[e < s], a)
			}
		}
		require.Len(t, ends[true], 2, "long ticks on the millimetre side")
		require.Len(t, ends[false], 2, "long ticks on the inch side")
		mm[way] = math.Abs(ends[true][1] - ends[true][0])
		in[way] = math.Abs(ends[false][1]-ends[false][0]) / inch
	}
	return mm, in
}

// The rules of the finished file are as long as the sheet says, 200 mm both
// ways on A4 and Letter, and within the margins.
func TestRulesAreTrue(t *testing.T) {
	for sheet, want := range map[string]struct{ mm, in [2]float64 }{
		"A4":           {[2]float64{200, 200}, [2]float64{7, 8}},
		"Letter":       {[2]float64{200, 200}, [2]float64{8, 8}},
		"A3":           {[2]float64{200, 200}, [2]float64{8, 8}},
		"A6":           {[2]float64{90, 110}, [2]float64{3, 4}},
		"100 x 120 mm": {[2]float64{90, 80}, [2]float64{3, 3}},
	} {
		o := on(t, sheet)
		doc := pdftest.Open(t, file(t, o))
		require.Equal(t, 1, doc.Pages)
		mm, in := measured(t, doc.Paths(1), 1, 1)
		for way := range 2 {
			assert.InDelta(t, want.mm[way], mm[way], 0.005, "%s, %d", sheet, way)
			assert.InDelta(t, want.in[way], in[way], 0.0005, "%s, %d", sheet, way)
		}
		text := strings.Join(strings.Fields(doc.Text(1)), " ")
		assert.Contains(t, text, fmt.Sprintf("arrow at %.0f mm", want.mm[0]), sheet)
		assert.Contains(t, text, fmt.Sprintf("from 0 to %.0f mm", want.mm[1]), sheet)
		assert.Contains(t, text, `scale 100 %, no "fit to page"`)
		lo, hi, _ := doc.Ink(1, 100)
		size := doc.Size(1)
		const dot, m = 0.3, 4.5
		assert.True(t, lo.X > m-dot && lo.Y > m-dot && hi.X < size.X-m+dot && hi.Y < size.Y-m+dot, "%s: %v to %v", sheet, lo, hi)
	}
}

// The sheet is not corrected, so that it can be measured again; the one to check
// by is, and measures true on the printer it was corrected for.
func TestCorrected(t *testing.T) {
	for _, sheet := range []string{"A4", "Letter", "A6"} {
		const across, along = 0.9905, 1.012
		o := on(t, sheet)
		o.Setup.Measured = paper.Measured{Across: 200 * across, Along: 200 * along}
		mm, _ := measured(t, pdftest.Open(t, file(t, o)).Paths(1), across, along)
		assert.InDelta(t, across, mm[0]/math.Round(mm[0]/across), 1e-4, "%s shows the printer as it is", sheet)
		o.Corrected = true
		doc := pdftest.Open(t, file(t, o))
		mm, in := measured(t, doc.Paths(1), across, along)
		for way := range 2 {
			assert.InDelta(t, math.Round(mm[way]/10)*10, mm[way], 0.02, sheet)
			assert.InDelta(t, math.Round(in[way]), in[way], 0.001, sheet)
		}
		assert.Contains(t, strings.Join(strings.Fields(doc.Text(1)), " "), "corrected: across 200 mm printed as 198.1, along 200 mm printed as 202.4.")
	}
}

// Whatever the sheet and the printer, words stand within the margins, clear of
// each other and of the rules.
func TestWordsAreClear(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		side := func(name string) geometry.Length {
			return geometry.Length(rapid.IntRange(int(paper.LeastSheet), 600).Draw(t, name))
		}
		length := func(lo, hi geometry.Length, name string) geometry.Length {
			return geometry.Length(rapid.Float64Range(lo.MM(), hi.MM()).Draw(t, name))
		}
		a, b := side("a"), side("b")
		most := rapid.SampledFrom([]geometry.Length{gauge.Margin, 15, paper.MostMargin}).Draw(t, "most margin")
		o := gauge.Options{
			Options: document.Options{Setup: paper.Setup{
				Sheet: paper.Sheet{Width: min(a, b), Height: max(a, b)},
				Margins: paper.Margins{Left: length(0, most, "left"), Right: length(0, most, "right"),
					Top: length(0, most, "top"), Bottom: length(0, most, "bottom")},
				Measured: paper.Measured{Across: length(paper.LeastMeasured, paper.MostMeasured, "across"), Along: length(paper.LeastMeasured, paper.MostMeasured, "along")},
			}, Round: pagetest.Rounding(rapid.SampledFrom([]geometry.Unit{geometry.MM, geometry.IN}).Draw(t, "unit"))},
			Corrected: rapid.Bool().Draw(t, "corrected"),
		}
		if o.Check() != nil {
			t.Skip("too small")
		}
		var on record.Surface
		gauge.Draw(&on, o)
		room := o.Setup.Reach(false)
		if o.Corrected {
			room = o.Setup.Printable(false)
		}
		require.NotEmpty(t, on.Texts)
		require.Empty(t, pagetest.Faults(&on, room))
	})
}

var horizontal = regexp.MustCompile(`d="M ([\d.]+) ([\d.]+) L ([\d.]+) ([\d.]+)"`)

// The drawing is the sheet in millimetres with the same rule across.
func TestSVG(t *testing.T) {
	data := string(gauge.SVG(on(t, "A4")))
	assert.Contains(t, data, `width="210.0000mm" height="297.0000mm"`)
	assert.Contains(t, data, `viewBox="0.0000 0.0000 210.0000 297.0000"`)
	long := 0.0
	for _, m := range horizontal.FindAllStringSubmatch(data, -1) {
		var v [4]float64
		for i := range v {
			v[i], _ = strconv.ParseFloat(m[i+1], 64)
		}
		if v[1] == v[3] {
			long = max(long, v[2]-v[0])
		}
	}
	assert.InDelta(t, 200, long, 1e-3)
}

// crossed finds the centres of the four crosses of a printed sheet: level lines 8 mm long
// that upright ones 8 mm long halve.
func crossed(paths []pdftest.Path) (at []pdftest.XY) {
	var level, upright []pdftest.XY
	for _, p := range paths {
		if len(p.Pieces) != 1 {
			continue
		}
		a, b := p.Pieces[0][0], p.Pieces[0][1]
		mid := pdftest.XY{X: (a.X + b.X) / 2, Y: (a.Y + b.Y) / 2}
		if math.Abs(math.Hypot(a.X-b.X, a.Y-b.Y)-8) > 0.01 {
			continue
		}
		if math.Abs(a.Y-b.Y) < 0.01 {
			level = append(level, mid)
		} else {
			upright = append(upright, mid)
		}
	}
	for _, l := range level {
		for _, u := range upright {
			if math.Hypot(l.X-u.X, l.Y-u.Y) < 0.01 {
				at = append(at, l)
			}
		}
	}
	return at
}

// The diagonals of the finished sheet are alike. Where a printer's feed leans, what they
// differ by tells by how much, as the sheet says.
func TestDiagonalsTellALeaningFeed(t *testing.T) {
	for _, sheet := range []string{"A4", "Letter", "A3"} {
		doc := pdftest.Open(t, file(t, on(t, sheet)))
		at := crossed(doc.Paths(1))
		require.Len(t, at, 4, sheet)
		lo, hi := at[0], at[0]
		for _, p := range at {
			lo, hi = pdftest.XY{X: min(lo.X, p.X), Y: min(lo.Y, p.Y)}, pdftest.XY{X: max(hi.X, p.X), Y: max(hi.Y, p.Y)}
		}
		said := regexp.MustCompile(`Each millimetre between them is ([0-9.]+) mm out of square in 200 mm`).FindStringSubmatch(strings.Join(strings.Fields(doc.Text(1)), " "))
		require.NotNil(t, said, sheet)
		each, err := strconv.ParseFloat(said[1], 64)
		require.NoError(t, err)
		for _, lean := range []float64{0, 0.5, -1.5} { // in 200 mm
			slanted := func(p pdftest.XY) pdftest.XY { return pdftest.XY{X: p.X + p.Y*lean/200, Y: p.Y} }
			distance := func(p, q pdftest.XY) float64 {
				p, q = slanted(p), slanted(q)
				return math.Hypot(p.X-q.X, p.Y-q.Y)
			}
			a, b := distance(lo, hi), distance(pdftest.XY{X: hi.X, Y: lo.Y}, pdftest.XY{X: lo.X, Y: hi.Y})
			assert.InDelta(t, lean, (a-b)*each, 0.1, "%s, %.1f mm in 200 mm", sheet, lean)
		}
		text := strings.Join(strings.Fields(doc.Text(1)), " ")
		assert.Contains(t, text, "margins are then larger than those of this sheet, 4.5 mm")
		assert.Contains(t, text, "margin_left, margin_right, margin_top and margin_bottom")
	}
}
