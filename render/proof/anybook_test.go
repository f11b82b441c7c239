package proof

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

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
