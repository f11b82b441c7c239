package jobfile_test

import (
	"fmt"
	"math/big"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/cmd/jobfile"
	"forel/geometry"
	"forel/paper/money"
	"forel/paper/quote"
)

func exact(t require.TestingT, text string) money.Amount {
	a, err := money.Parse(text)
	require.NoError(t, err)
	return a
}

var refusedAmounts = []refusal{
	{"a price in words", book + "[quote]\nhour = 'a lot'\n", []string{`:6: quote.hour: "a lot" is no number; give 0 to 1000000 (an hour of work)`}},
	{"with its currency", book + "[quote]\nhour = '32 EUR'\n", []string{`:6: quote.hour: "32 EUR" is no number; `}},
	{"thousands or decimals", book + "[quote]\nhour = '1,250'\n", []string{`:6: quote.hour: "1,250" can be read in two ways; write 1.250 or 1250`}},
	{"huge", book + "[quote]\nhour = 1e999999999\n", []string{`:6: quote.hour: 1e999999999 is no number; `}},
	{"too large", book + "[quote]\nhour = 1e7\n", []string{`:6: quote.hour: 1e7 is too large; `}},
	{"tiny", book + "[quote]\nhour = 1e-300\n", []string{`:6: quote.hour: 1e-300 has more than 6 decimals; round it, such as to 0`}},
	{"as a spreadsheet hands it on", book + "[quote]\nhour = 34.500000000000007\n", []string{`:6: quote.hour: 34.500000000000007 has more than 6 decimals; round it, such as to 34.5`}},
	{"not a number", book + "[quote]\nhour = nan\ntax = inf\n", []string{`:6: quote.hour: nan is no number; `, `:7: quote.tax: inf is not a share in percent; `}},
	{"below nothing", book + "[quote]\nhour = -1\nspoilage = '-3 %'\n", []string{":6: quote.hour: -1 is too small; ", `:7: quote.spoilage: "-3 %" is negative; give 0 % to 200 %`}},
	{"a step of nothing", book + "[quote]\nround_to = 0\n", []string{":6: quote.round_to: 0 is too small; give 0.01 to 1000"}},
	{"a list", book + "[quote]\nhour = [1, 2]\n", []string{":6: quote.hour: a list is no number; "}},
	{"not one of the words", book + "[quote]\nmaterial = 'half'\n", []string{`:6: quote.material: "half" is none of its words; give "share" or "whole"`}},
	{"a client on two lines", book + "[quote]\nclient = \"a\\nb\"\n", []string{`:6: quote.client: "a\nb" is not one line of text`}},
	{"extra lines without their words", book + "[[extra]]\namount = 3\n[[extra]]\ntext = 'label'\n", []string{":5: extra.text: missing; ", ":7: extra[2].amount: missing; "}},
	{"a quote in double brackets", book + "[[quote]]\nhour = 3\n", []string{":5: quote: [[quote]] is a list of tables; write [quote]"}},
	{"spare pieces", book + "[order]\nspare_pieces = 1.5\nspare = '101 %'\n", []string{":6: order.spare_pieces: 1.5 is no whole number; ", `:7: order.spare: "101 %" is too large`}},
	{"a pack", book + "[adhesive]\npack = '0 g'\nat_hand = 'some'\n", []string{`:6: adhesive.pack: "0 g" is too light; give 1 g to 100 kg`, `:7: adhesive.at_hand: "some" is no weight; `}},
	{"a step of a sheet", book + "[[stock]]\nmaterial = 'board'\nsize = 'A1'\nsold_by = '100 mm'\n", []string{":8: stock.sold_by: a sheet is sold whole; "}},
}

// A price is read to its last digit, however it is written: held against big.Rat.
func TestAmountsAreExact(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		cents, decimals := rapid.IntRange(0, 9_999_999).Draw(t, "digits"), rapid.IntRange(0, 6).Draw(t, "decimals")
		scale := new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(decimals)), nil)
		want := new(big.Rat).SetFrac(big.NewInt(int64(cents)), scale)
		if want.Cmp(big.NewRat(1_000_000, 1)) > 0 {
			return
		}
		text := want.FloatString(decimals)
		comma := strings.Replace(text, ".", ",", 1)
		spellings := []string{text, "'" + text + "'"}
		if decimals > 0 && decimals != 3 {
			spellings = append(spellings, "'"+comma+"'")
		}
		typed := rapid.SampledFrom(spellings).Draw(t, "typed")
		f, _, err := jobfile.Parse("case.toml", []byte(book+"[[stock]]\nmaterial = 'board'\nsize = 'A1'\nprice = "+typed+"\n[quote]\nhour = "+typed+"\n"))
		require.NoError(t, err, typed)
		require.Zero(t, want.Cmp(f.Stock[0].Price.Rat()), typed)
		require.Zero(t, want.Cmp(f.Quote.Hour.Rat()), typed)
	})
}

func TestTerms(t *testing.T) {
	f := parse(t, book+`[order]
spare = "5 %"
spare_pieces = 2
[adhesive]
name = "white glue"
pack = "0.5 kg"
at_hand = 80
[quote]
currency = "kr"
tax = "25 %"
material = "Whole"
round_to = "0,05"
[[extra]]
text = "label"
amount = "12,50"
[[extra]]
text = "friend's price"
amount = -10
`)
	assert.Equal(t, "5", f.Order.Spare.String())
	assert.Equal(t, 2, f.Order.SparePieces)
	assert.Equal(t, "500 80", fmt.Sprint(f.Adhesive.Pack, " ", f.Adhesive.AtHand))
	assert.Nil(t, f.Quote.Hour)
	assert.Equal(t, "25", f.Quote.Tax.String())
	assert.Equal(t, quote.ByWhole, f.Quote.Material)
	assert.Equal(t, "0.05", f.Quote.RoundTo.String())
	require.Len(t, f.Quote.Extra, 2)
	assert.Equal(t, "12.5 -10", fmt.Sprint(f.Quote.Extra[0].Amount, " ", f.Quote.Extra[1].Amount))
	assert.Equal(t, geometry.MM, f.Job.Shared().Unit)
}
