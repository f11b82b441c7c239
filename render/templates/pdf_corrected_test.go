package templates_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/geometry"
	"forel/geometry/slipcase"
	"forel/paper"
	"forel/render/pdf/pdftest"
)

// printer is what a printer makes of a file: every place goes away from one
// that stays, by a factor across the sheet as it is fed and one along it.
type printer struct {
	across, along float64
	still         pdftest.XY // on the upright sheet
}

// print returns where a page's paths come on paper, seen as the page is.
func (p printer) print(paths []pdftest.Path, lying bool) []pdftest.Path {
	x, y := p.across, p.along
	if lying {
		x, y = y, x
	}
	var out []pdftest.Path
	for _, path := range paths {
		moved := path
		moved.Pieces = nil
		for _, piece := range path.Pieces {
			var m []pdftest.XY
			for _, q := range piece {
				m = append(m, pdftest.XY{X: p.still.X + x*(q.X-p.still.X), Y: p.still.Y + y*(q.Y-p.still.Y)})
			}
			moved.Pieces = append(moved.Pieces, m)
		}
		out = append(out, moved)
	}
	return out
}

// off returns how far the path nearest to a size is from it.
func off(paths []pdftest.Path, width, height float64) float64 {
	best := math.Inf(1)
	for _, p := range paths {
		lo, hi := p.Bounds()
		best = min(best, max(math.Abs(hi.X-lo.X-width), math.Abs(hi.Y-lo.Y-height)))
	}
	return best
}

// A printer that scales each way by its own error prints true what was corrected
// for it: rulers and outlines come out right within 0.05 mm on paper, on upright
// and on lying pages. Uncorrected they would be millimetres off.
func TestCorrectedPrintsAreTrue(t *testing.T) {
	const tolerance = 0.05
	seenLying, outlines, worst := false, 0, 0.0
	for _, test := range []struct {
		scenario
		sheet string
		printer
	}{
		{scenario{"oblong", 150, 230, 20, 0, slipcase.NoHole}, "A4", printer{0.993, 1.0055, pdftest.XY{X: 105, Y: 0}}},
		{pamphlet, "Letter", printer{1.028, 0.972, pdftest.XY{X: 0, Y: 279.4}}},
	} {
		o := on(t, test.sheet)
		o.Setup.Margins = paper.Margins{Left: 6, Right: 8, Top: 5, Bottom: 13}
		// The maker measures a rule of 200 mm.
		o.Setup.Measured = paper.Measured{Across: geometry.Length(200 * test.across), Along: geometry.Length(200 * test.along)}
		require.NoError(t, o.Setup.Check())
		c := printedOn(test.make(), o)
		doc, words := pdftest.Open(t, c.file()), view(t, c.file())
		for n := 1; n <= doc.Pages; n++ {
			text := strings.Join(words.text(n), "\n")
			assert.Contains(t, text, fmt.Sprintf("corrected: across 200 mm printed as %.5g", 200*test.across), "page %d", n)
			assert.Contains(t, text, fmt.Sprintf("along 200 mm printed as %.5g", 200*test.along), "page %d", n)
		}
		for _, p := range c.layout.Tilings {
			if !p.Whole() {
				continue
			}
			piece, want := p.Piece.Name, test.cuts()[p.Piece.Name]
			page := doc.Pages - len(c.layout.Pages) + p.Tiles[0].Page + 1
			size := doc.Size(page)
			seenLying = seenLying || size.X > size.Y
			printed := test.print(doc.Paths(page), size.X > size.Y)
			for _, l := range [][2]float64{{100, 0}, {4 * inch, 0}, {want.width, want.height}} {
				d := min(off(printed, l[0], l[1]), off(printed, l[1], l[0])) // a template may be turned
				assert.Less(t, d, tolerance, "%s, %s on %s: %.2f", test.name, piece, test.sheet, l)
				worst = max(worst, d)
			}
			outlines++
		}
	}
	assert.True(t, seenLying, "a page that lies")
	assert.Greater(t, outlines, 15)
	t.Logf("%d outlines with their rulers, furthest off: %.4f mm", outlines, worst)
}

// No dot of any page is inked where the printer does not reach, on any sheet.
func TestNoInkInTheMargins(t *testing.T) {
	for i, s := range paper.Sheets {
		o := on(t, s.Name)
		o.Setup.Margins = paper.Margins{Left: 4, Right: 9, Top: 6, Bottom: 17}
		if o.Setup.Check() != nil {
			continue // too small for templates
		}
		if testing.Short() && i%4 > 0 {
			continue // a quarter of them remains
		}
		o.Setup.Measured = paper.Measured{Across: 197, Along: 203.5}
		few := pamphlet.make()
		few.Pieces = few.Pieces[:3]
		doc := pdftest.Open(t, printedOn(few, o).file())
		dpi := 72
		if s.Height > 500 {
			dpi = 36
		}
		dot := 1.5 * inch / float64(dpi)
		for n := 1; n <= doc.Pages; n++ {
			size := doc.Size(n)
			left, right, top, bottom := 4., 9., 6., 17.
			if size.X > size.Y { // turned a quarter anticlockwise onto the sheet
				left, right, top, bottom = bottom, top, left, right
			}
			lo, hi, ok := doc.Ink(n, dpi)
			require.True(t, ok)
			assert.GreaterOrEqual(t, lo.X, left-dot, "%s, page %d: left", s.Name, n)
			assert.GreaterOrEqual(t, lo.Y, top-dot, "%s, page %d: top", s.Name, n)
			assert.LessOrEqual(t, hi.X, size.X-right+dot, "%s, page %d: right", s.Name, n)
			assert.LessOrEqual(t, hi.Y, size.Y-bottom+dot, "%s, page %d: bottom", s.Name, n)
		}
	}
}
