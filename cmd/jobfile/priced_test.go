package jobfile_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/cmd/jobfile"
)

// A change of units leaves what a roll costs as it is: its price gets the length that it
// is for. That of a sheet stays bare.
func TestPriceOfARollStays(t *testing.T) {
	const text = "[[book]]\nheight = 221\nwidth = 148.5\nthickness = 32\n[[stock]]\nmaterial = 'cloth'\nroll = 1370\nprice = 12.50\n[[stock]]\nmaterial = 'board'\nsize = 'A1'\nprice = 4.80\n"
	before := parse(t, text).Stock
	for _, units := range []string{"in", "mm"} {
		changed, err := jobfile.Changed("case.toml", []byte(text), []jobfile.Change{{Key: "units", Value: units}})
		require.NoError(t, err)
		after := parse(t, string(changed)).Stock
		for i := range before {
			assert.Equal(t, before[i].Price, after[i].Price, string(changed))
		}
		assert.InDelta(t, before[0].Per.MM(), after[0].Per.MM(), 1e-9, string(changed))
		if units == "in" { // and back again
			assert.Contains(t, string(changed), `per = "metre"`)
			assert.Contains(t, string(changed), "price = 4.80\n")
			again, err := jobfile.Changed("case.toml", changed, []jobfile.Change{{Key: "units", Value: "mm"}})
			require.NoError(t, err)
			assert.InDelta(t, before[0].Per.MM(), parse(t, string(again)).Stock[0].Per.MM(), 1e-9)
		}
	}
}
