package proof

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/render/pagetest"
)

// The pages of any case, with any title and on any sheet, have words apart, off
// lines and within the margins.
func TestPagesOfAnyBook(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := Options{Setup: pagetest.Broad(t)}
		var d *Drawing
		if pagetest.OfCard(t) {
			c := pagetest.AnyCard(t)
			o.Round = pagetest.Rounding(c.Job.Unit)
			d = CardDrawing{c, o}.draw()
		} else {
			c := pagetest.AnyCase(t)
			o.Round = pagetest.Rounding(c.Job.Unit)
			d = Draw(Of(c), o)
		}
		for i := range d.Pages() {
			var p pagetest.Page
			d.Page(i, &p)
			require.NotEmpty(t, p.Texts)
			require.Empty(t, p.Faults(o.Setup.Reach(false)), "page %d of %d", i+1, d.Pages())
		}
	})
}
