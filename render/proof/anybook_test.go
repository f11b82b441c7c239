package proof

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/render/document"
	"forel/render/pagetest"
)

// The pages of any case, with any title and on any sheet, have words apart, off
// lines and within the margins.
func TestPagesOfAnyBook(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := Options{Setup: pagetest.Broad(t)}
		var d *document.Document
		if pagetest.OfCard(t) {
			c := pagetest.AnyCard(t)
			o.Round = pagetest.Rounding(c.Job.Unit)
			d = Draw(c.Plan(), o)
		} else {
			c := pagetest.AnyCase(t)
			o.Round = pagetest.Rounding(c.Job.Unit)
			d = Draw(c.Plan(), o)
		}
		pages := d.Pages()
		for i, p := range pages {
			require.NotEmpty(t, p.Texts)
			require.Empty(t, pagetest.Faults(&p.Surface, o.Setup.Reach(false)), "page %d of %d", i+1, len(pages))
		}
	})
}
