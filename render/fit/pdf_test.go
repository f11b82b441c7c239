package fit_test

import (
	"bytes"
	"image"
	"math"
	"testing"

	"github.com/pdfcpu/pdfcpu/pkg/api"
	"github.com/pdfcpu/pdfcpu/pkg/pdfcpu/model"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/geometry/plan"
	"forel/geometry/slipcase"
	renderfit "forel/render/fit"
	"forel/render/pdf/pdftest"
)

const dpi = 250

// lying draws every lying page by code that is not ours, pixels to the millimetre
// beside it.
func lying(t testing.TB, file []byte) (pages []*image.RGBA, perMM float64) {
	doc := pdftest.Open(t, file)
	for n := 1; n <= doc.Pages; n++ {
		if size := doc.Size(n); size.X >= size.Y {
			pages = append(pages, doc.Picture(n, dpi))
		}
	}
	return pages, dpi / 25.4
}

// dark tells whether a pixel is printed.
func dark(p *image.RGBA, x, y int) bool { return p.RGBAAt(x, y).R < 128 }

// crossings gives the middles of the runs of dark pixels along a row, in mm.
func crossings(p *image.RGBA, y int, perMM float64) []float64 {
	var out []float64
	from := -1
	for x := range p.Rect.Dx() {
		switch d := dark(p, x, y); {
		case d && from < 0:
			from = x
		case !d && from >= 0:
			out = append(out, (float64(from)+float64(x))/2/perMM)
			from = -1
		}
	}
	return out
}

// stretches finds the parts of strips on a lying page: rows where a line runs
// from the left edge of a part for at least 50 mm, upper and lower edge in turn,
// 16 mm apart. It gives for each the places where upright lines cross it, 2 mm
// below its upper edge, where nothing is written.
func stretches(p *image.RGBA, margin, perMM float64) [][]float64 {
	left := int((margin + 0.5) * perMM)
	edge := func(y int) bool {
		for x := left + 3; x < left+int(50*perMM); x++ {
			if !dark(p, x, y) {
				return false
			}
		}
		return true
	}
	var tops []float64
	for y := 0; y < p.Rect.Dy(); y++ {
		if edge(y) && (len(tops) == 0 || float64(y)/perMM-tops[len(tops)-1] > 2) {
			tops = append(tops, float64(y)/perMM)
		}
	}
	var out [][]float64
	for i := 0; i+1 < len(tops); i++ {
		if math.Abs(tops[i+1]-tops[i]-16) < 0.3 {
			out = append(out, crossings(p, int((tops[i]+2)*perMM), perMM))
			i++
		}
	}
	return out
}

// The paper strips are true in the finished file: put together part by part, as
// their tabs say, their folds are as far apart as the design has it: the book with
// its clearance H + cH by T + cT in the body, less what is turned in at the mouth
// (2 cloth in height, 2 cloth and 2 paper in thickness), W + cW round the spine.
func TestStripsAreTrue(t *testing.T) {
	want := [][]float64{
		{223.5, 33.75, 223.5, 33.75},
		{222.8, 32.75, 222.8, 32.75},
		{149.5, 33.75, 149.5},
	}
	for _, s := range subjects() {
		if s.name != "plain, A4, mm" && s.name != "plain, Letter, in" {
			continue
		}
		file, err := renderfit.Document(s.report, s.Options).PDF()
		require.NoError(t, err)
		_, err = api.ReadAndValidate(bytes.NewReader(file), model.NewDefaultConfiguration())
		require.NoError(t, err)
		pages, perMM := lying(t, file)
		var found [][]float64
		for _, p := range pages {
			found = append(found, stretches(p, s.Setup.Margins.Left.MM(), perMM)...)
		}
		i := 0
		for n, panels := range want {
			var folds []float64
			at, total, closed := 0.0, 0.0, s.report.Gauges[n].Closed
			for _, l := range panels {
				total += l
			}
			for at < total-0.3 {
				require.Less(t, i, len(found), "%s: strip %d ends too soon", s.name, n)
				lines := found[i] // left edge, folds, join line, right edge of the tab
				i++
				last := len(lines) - 1
				if lines[last]-lines[last-1] < 12.3 && (closed || at+lines[last-1]-lines[0] < total-1) {
					last-- // the tab
				}
				for _, x := range lines[1:last] {
					folds = append(folds, at+x-lines[0])
				}
				at += lines[last] - lines[0]
			}
			assert.InDelta(t, total, at, 0.3, "%s: strip %d from end to end", s.name, n)
			require.Len(t, folds, len(panels)-1, "%s: strip %d", s.name, n)
			var sum float64
			for k, f := range folds {
				sum += panels[k]
				assert.InDelta(t, sum, f, 0.2, "%s: strip %d, fold %d", s.name, n, k+1)
			}
		}
		assert.Len(t, found, i, "%s: a part is left over", s.name)
	}
}

// The rulers on the pages of strips are 100 mm and 4 in long.
func TestRulersAreTrue(t *testing.T) {
	for _, s := range subjects() {
		if s.name != "plain, Letter, mm" {
			continue
		}
		file, err := renderfit.Document(s.report, s.Options).PDF()
		require.NoError(t, err)
		pages, perMM := lying(t, file)
		assert.NotEmpty(t, pages)
		for _, p := range pages {
			// The rulers are the last 11 mm above the foot. 3 mm above the line of the one
			// and below that of the other, only the end ticks are left.
			top := float64(p.Rect.Dy())/perMM - s.Setup.Margins.Bottom.MM() - 6 - 11
			mm, in := crossings(p, int((top+5.5-3)*perMM), perMM), crossings(p, int((top+6.9+3)*perMM), perMM)
			require.Len(t, mm, 2, s.name)
			require.Len(t, in, 2, s.name)
			assert.InDelta(t, 100, mm[1]-mm[0], 0.1)
			assert.InDelta(t, 101.6, in[1]-in[0], 0.1)
		}
		return
	}
}

// Every report's drawings can be made.
func TestEveryDimensionIsDrawn(t *testing.T) {
	for _, s := range subjects() {
		var names []string
		for _, p := range renderfit.Plots(s.report, s.Options) {
			names = append(names, p.File)
		}
		assert.Equal(t, []string{"fit-height.svg", "fit-depth.svg", "fit-thickness.svg"}, names)
		_, ok := s.report.Find(plan.Depth, slipcase.InBody)
		assert.True(t, ok)
	}
}
