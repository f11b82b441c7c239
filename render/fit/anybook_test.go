package fit_test

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry/fit"
	renderfit "forel/render/fit"
	"forel/render/pagetest"
)

// The pages of any case, with any title and on any sheet, have words apart, off
// lines and within the margins.
func TestPagesOfAnyBook(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := renderfit.Options{Setup: pagetest.AnySetup(t)}
		p, unit := pagetest.AnyPlan(t)
		o.Round = pagetest.Rounding(unit)
		r := fit.Of(p)
		pages := renderfit.Document(r, o).Pages()
		for i, p := range pages {
			require.NotEmpty(t, p.Texts)
			require.Empty(t, pagetest.Faults(&p.Surface, o.Setup.Printable(p.Width > p.Height)), "page %d of %d", i+1, len(pages))
		}
	})
}
