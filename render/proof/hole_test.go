package proof

import (
	"testing"

	"github.com/stretchr/testify/require"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/plan/plantest"
	"forel/geometry/slipcase"
	"forel/paper"
	"forel/render/pagetest"
)

// The frame about the corner that is drawn larger is broader than a case for a book 1 mm
// thick: the names on its right stand beyond the frame.
func TestHoleOfAThinCaseIsNamedClear(t *testing.T) {
	j := slipcase.DefaultJob(geometry.MM)
	j.Title, j.Unit = "Invented harbour log", geometry.IN
	j.Covering, j.Lining.Thickness, j.Lining.Order, j.Cloth.Corners = slipcase.AllCloth, 0, slipcase.LinedAfter, slipcase.CornersMarked
	j.ThumbHole.Shape = slipcase.Triangle
	j.Books = []job.Book{{Height: job.Readings{101}, Width: job.Readings{26}, Thickness: job.Readings{1}}}
	c, err := plantest.Make[slipcase.Case](j)
	require.NoError(t, err)
	s := paper.DefaultSetup()
	s.Sheet = paper.Sheet{Width: 188, Height: 227}
	s.Margins = paper.Margins{Left: 1.1, Right: 3.9}
	s.Measured = paper.Measured{Across: 202.85, Along: 194.375}
	for _, sheet := range []paper.Sheet{{Width: 227, Height: 188}, {Width: 188, Height: 227}} {
		s.Sheet = sheet
		o := Options{Setup: s, Round: pagetest.Rounding(j.Unit)}
		for i, p := range Document(c.Plan(), o).Pages() {
			require.Empty(t, pagetest.Faults(&p.Surface, o.Setup.Reach(false)), "page %d", i+1)
		}
	}
}
