package proof

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/kinds"
	"forel/geometry/plan/plantest"
	"forel/paper"
	"forel/render/pagetest"
)

// lowest is how many times as wide as high a face may be for its numbers to stand
// beside it.
const lowest = 5

// The pages of any case, with any title and on any sheet, have words apart, off
// lines and within the margins.
func TestPagesOfAnyBook(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := Options{Setup: pagetest.AnySetup(t)}
		p, unit := pagetest.AnyPlan(t)
		for _, f := range p.Proof.Faces {
			if !f.Edge && f.Extent.Width() > lowest*f.Extent.Height() {
				t.Skip("beside so low a face there is no room for the numbers of its layers")
			}
		}
		o.Round = pagetest.Rounding(unit)
		pages := Document(p, o).Pages()
		for i, p := range pages {
			require.NotEmpty(t, p.Texts)
			require.Empty(t, pagetest.Faults(&p.Surface, o.Setup.Reach(false)), "page %d of %d", i+1, len(pages))
		}
	})
}

// A tall book's faces, and all that is left between a book, its chemise and its case, have
// room on small pages.
func TestSmallPages(t *testing.T) {
	for n, k := range kinds.All {
		for m, book := range []job.Book{
			{Height: job.Readings{372}, Width: job.Readings{57.7}, Thickness: job.Readings{3.5}},
			{Height: job.Readings{255.5}, Width: job.Readings{57.7}, Thickness: job.Readings{3.5}},
		} {
			j := k.New(geometry.MM)
			j.Shared().Books = []job.Book{book}
			if s, ok := j.Settings().Find("chemise.fore_edge"); ok {
				*s.Word = "hooks"
			}
			if s, ok := j.Settings().Find("chemise.book_cover"); ok {
				*s.Length = 3
			}
			p, err := plantest.Plan(j)
			require.NoError(t, err)
			for i, sheet := range []string{"166 x 166 mm", "177 x 177 mm", "196 x 166 mm"} {
				if testing.Short() && (n+m)%3 != i {
					continue // each on one of them
				}
				o := Options{Setup: paper.DefaultSetup(), Round: geometry.ToTenthMM}
				o.Setup.Sheet, err = paper.ParseSheet(sheet, geometry.MM)
				require.NoError(t, err)
				o.Setup.Margins = paper.Margins{Left: 5, Right: 1.5, Top: 1, Bottom: 1}
				for i, page := range Document(p, o).Pages() {
					assert.Empty(t, pagetest.Faults(&page.Surface, o.Setup.Reach(false)), "%s, %s, page %d", k.Name, sheet, i+1)
				}
			}
		}
	}
}
