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
			assert.Contains(t, string(changed), `price = "12.50 a metre"`)
			assert.Contains(t, string(changed), "price = 4.80\n")
			again, err := jobfile.Changed("case.toml", changed, []jobfile.Change{{Key: "units", Value: "mm"}})
			require.NoError(t, err)
			assert.InDelta(t, before[0].Per.MM(), parse(t, string(again)).Stock[0].Per.MM(), 1e-9)
		}
	}
	yards := "units = 'in'\n[[book]]\nheight = 9\nwidth = 6\nthickness = 1\n[[stock]]\nmaterial = 'cloth'\nroll = 54\nprice = "
	for written, mm := range map[string]float64{"10": 914.4, "'10 a yard'": 914.4, "'10/yd'": 914.4, "'10 per metre'": 1000, "'10,50/m'": 1000, "'.5 a meter'": 1000} {
		assert.InDelta(t, mm, parse(t, yards+written+"\n").Stock[0].Per.MM(), 1e-9, written)
	}
	_, _, err := jobfile.Parse("case.toml", []byte(text[:len(text)-len("4.80\n")]+"'4.80 a metre'\n"))
	assert.ErrorContains(t, err, "case.toml:12: stock[2].price: a sheet is priced whole; give the price of one, such as 4.80")
}
