package quote_test

import (
	"context"
	"encoding/csv"
	"math/big"
	"regexp"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/geometry/work"
	"forel/paper"
	"forel/paper/bench"
	"forel/paper/money"
	"forel/paper/order"
	"forel/paper/quote"
	"forel/paper/stock"
	"forel/render/document"
	"forel/render/pagetest"
	"forel/render/pdf/pdftest"
	draw "forel/render/quote"
)

// some is an amount with so many decimals.
func some(t *rapid.T, name string, lo, hi int, decimals int32) *money.Amount {
	a := money.Of(rapid.IntRange(lo, hi).Draw(t, name)).Shift(-decimals)
	return &a
}

// maybe is some, or none.
func maybe(t *rapid.T, name string, lo, hi int, decimals int32) *money.Amount {
	if rapid.IntRange(0, 3).Draw(t, "no "+name) == 0 {
		return nil
	}
	return some(t, name, lo, hi, decimals)
}

// anyTerms draws how a price is reckoned, and extra lines of each case.
func anyTerms(t *rapid.T, cases int) (terms quote.Terms, extra [][]quote.Extra, times []work.Times) {
	terms = quote.Terms{Currency: rapid.SampledFrom([]string{"", "EUR", "kr", "two words"}).Draw(t, "currency"),
		Hour: maybe(t, "hour", 0, 100_000, 3), Spoilage: *some(t, "spoilage", 0, 5000, 2),
		Material: rapid.SampledFrom([]string{quote.ByShare, quote.ByWhole}).Draw(t, "material"),
		RoundTo:  money.Of(rapid.SampledFrom([]int{0, 1, 5, 50, 100, 500}).Draw(t, "round to")).Shift(-2),
		Tax:      maybe(t, "tax", 0, 30_000, 3), TaxName: pagetest.AnyTitle(t), Client: pagetest.AnyTitle(t), Valid: "30 days"}
	for range cases {
		var lines []quote.Extra
		for range rapid.IntRange(0, 3).Draw(t, "extra lines") {
			lines = append(lines, quote.Extra{Text: "extra " + pagetest.AnyTitle(t), Amount: *some(t, "extra", -900, 9000, 2)})
		}
		own := work.UsualTimes()
		own[work.Paste] = time.Duration(rapid.IntRange(0, 999).Draw(t, "paste")) * time.Second
		extra, times = append(extra, lines), append(times, own)
	}
	return terms, extra, times
}

// anyStock draws what cases are cut from, at any price or none.
func anyStock(t *rapid.T) (all []stock.Stock) {
	for _, m := range []geometry.Material{geometry.Board, geometry.Lining, geometry.Cloth, geometry.Paper} {
		all = append(all, stock.Stock{Material: m, Width: 1800, Height: 2400, Grain: stock.NoGrain, Trim: 5, Per: stock.Metre, Price: maybe(t, "price of "+string(m), 0, 9_999_999, 4)})
		if m == geometry.Cloth {
			last := &all[len(all)-1]
			last.Roll, last.Height = true, 0
		}
	}
	return all
}

// rat reads a number as an exact fraction.
func rat(t require.TestingT, text string) *big.Rat {
	r, ok := new(big.Rat).SetString(text)
	require.True(t, ok, text)
	return r
}

// nearest rounds an exact fraction to a step, halves away from zero: in whole numbers, not
// as the program does.
func nearest(r, step *big.Rat) *big.Rat {
	n := new(big.Rat).Quo(r, step)
	twice := new(big.Int).Add(new(big.Int).Mul(new(big.Int).Abs(n.Num()), big.NewInt(2)), n.Denom())
	whole := new(big.Int).Div(twice, new(big.Int).Mul(n.Denom(), big.NewInt(2)))
	if n.Sign() < 0 {
		whole.Neg(whole)
	}
	return new(big.Rat).Mul(new(big.Rat).SetInt(whole), step)
}

// Whatever is quoted, what is read back from the spreadsheet is the arithmetic of exact
// fractions: each line its price times its quantity, spoilage and tax their share, and all
// lines come to what is to be paid, a whole number of steps, to the last cent. The PDFs say
// the same; the client's page has neither quantities nor prices of the maker.
func TestAnyQuoteAddsUp(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		cent := big.NewRat(1, 100)
		var jobs []bench.Job
		have := anyStock(rt)
		for range rapid.IntRange(1, 2).Draw(rt, "cases") {
			jobs = append(jobs, bench.Job{Plan: pagetest.AnyCase(rt).Plan(), Unit: geometry.MM, Stock: have})
		}
		p, err := bench.Lay(context.Background(), jobs, bench.Options{Buy: true})
		if err != nil {
			require.ErrorContains(rt, err, "larger than every sheet")
			return
		}
		terms, extra, times := anyTerms(rt, len(jobs))
		glue := order.Adhesive{Price: maybe(rt, "glue", 0, 99_999, 3), Pack: money.Of(rapid.SampledFrom([]int{0, 70, 250}).Draw(rt, "pack"))}
		q := draw.Costing{Quote: quote.Of(p, terms, glue, extra, times)}

		written := draw.CSV(q, pagetest.Rounding(geometry.MM))
		read, err := csv.NewReader(strings.NewReader(string(written))).ReadAll()
		require.NoError(rt, err)
		sum, material, net, missing := new(big.Rat), new(big.Rat), new(big.Rat), 0
		for _, row := range read[1:] {
			kind, quantity, unit, price, amount := row[0], row[3], row[4], row[5], row[6]
			if kind == "missing" {
				missing++
				continue
			}
			if amount == "" { // no price
				continue
			}
			a := rat(rt, amount)
			switch kind {
			case "material":
				require.Zero(rt, a.Cmp(nearest(new(big.Rat).Mul(rat(rt, price), rat(rt, quantity)), cent)), row)
				material.Add(material, a)
			case "work":
				require.Equal(rt, "min", unit)
				require.Zero(rt, a.Cmp(nearest(new(big.Rat).Mul(rat(rt, price), new(big.Rat).Quo(rat(rt, quantity), big.NewRat(60, 1))), cent)), row)
			case "spoilage":
				require.Zero(rt, a.Cmp(nearest(new(big.Rat).Mul(material, new(big.Rat).Quo(rat(rt, quantity), big.NewRat(100, 1))), cent)), row)
			case "tax":
				require.Zero(rt, a.Cmp(nearest(new(big.Rat).Mul(net, new(big.Rat).Quo(rat(rt, quantity), big.NewRat(100, 1))), cent)), row)
			case "to be paid":
				step := cent
				if !terms.RoundTo.IsZero() {
					step = terms.RoundTo.Rat()
				}
				require.True(rt, new(big.Rat).Quo(a, step).IsInt(), "whole steps")
				require.Zero(rt, a.Cmp(sum), "lines come to %s, not to %s", sum.FloatString(4), a.FloatString(4))
				continue
			case "rounding":
				step := rat(rt, "0.01")
				if !terms.RoundTo.IsZero() {
					step = terms.RoundTo.Rat()
				}
				require.LessOrEqual(rt, new(big.Rat).Mul(new(big.Rat).Abs(a), big.NewRat(2, 1)).Cmp(step), 0)
			}
			if kind == "material" || kind == "work" || kind == "spoilage" || kind == "extra" {
				net.Add(net, a)
			}
			sum.Add(sum, a)
		}
		require.Len(rt, q.Lacks(pagetest.Rounding(geometry.MM)), missing)
		require.Equal(rt, len(q.Missing) > 0, missing > 0)
		parts := new(big.Rat)
		for _, c := range q.Cases { // cases part all of it among them
			parts.Add(parts, c.Price.Rat())
			for _, e := range c.Extra {
				parts.Add(parts, e.Amount.Rat())
			}
		}
		require.Zero(rt, parts.Cmp(net))

		o := document.Options{Setup: pagetest.AnySetup(rt), Round: pagetest.Rounding(geometry.MM)}
		for name, d := range map[string]*document.Document{"client": draw.Client(q, o), "maker": draw.Maker(q, o)} {
			for i, page := range d.Pages() {
				require.Empty(rt, pagetest.Faults(&page.Surface, o.Setup.Reach(false)), "%s, page %d", name, i+1)
			}
			if rapid.IntRange(0, 19).Draw(rt, "read the PDF") > 0 {
				continue
			}
			file, err := d.PDF()
			require.NoError(rt, err)
			text, doc := "", pdftest.Open(t, file)
			for i := range d.Count() {
				text += doc.Text(i+1) + "\n"
			}
			require.Contains(rt, oneLine(text), oneLine("To be paid: "+q.Total.StringFixed(2)+" "+terms.Currency), name)
			if name == "client" {
				require.NotRegexp(rt, regexp.MustCompile(`\d an hour`), text)
				require.NotContains(rt, text, "spoilage")
				require.NotRegexp(rt, regexp.MustCompile(`\d a (sheet|m|kg|pack)\b`), text)
				require.Equal(rt, len(q.Missing) > 0, strings.Contains(oneLine(text), "is not complete"))
			}
		}
	})
}

func oneLine(s string) string { return strings.Join(strings.Fields(s), " ") }

// What the pages for client and maker add up comes to what stands below it: read back from
// the finished PDFs.
func TestPagesAddUp(t *testing.T) {
	hour, tax := money.Of(34), money.Of(19)
	var c quote.Quote
	rapid.Check(t, func(rt *rapid.T) {
		if c.Cases != nil {
			return
		}
		jobs := []bench.Job{{Plan: pagetest.AnyCase(rt).Plan(), Unit: geometry.MM, Stock: anyStock(rt)}}
		p, err := bench.Lay(context.Background(), jobs, bench.Options{Buy: true})
		if err != nil {
			return
		}
		terms := quote.Terms{Currency: "EUR", Hour: &hour, Tax: &tax, TaxName: "sales tax", RoundTo: money.Of(1), Extra: nil}
		c = quote.Of(p, terms, order.Adhesive{}, [][]quote.Extra{{{Text: "label", Amount: money.Of(18)}, {Text: "taken off", Amount: money.Of(-5)}}}, []work.Times{work.UsualTimes()})
	})
	o := document.Options{Setup: paper.DefaultSetup(), Round: pagetest.Rounding(geometry.MM)}
	for head, d := range map[string]*document.Document{"amount EUR": draw.Client(draw.Costing{Quote: c}, o), "What is to be paid": draw.Maker(draw.Costing{Quote: c}, o)} {
		file, err := d.PDF()
		require.NoError(t, err)
		text, doc := "", pdftest.Open(t, file)
		for i := range d.Count() {
			text += doc.Text(i+1) + "\n"
		}
		_, rows, ok := strings.Cut(text, head)
		require.True(t, ok, text)
		sum, held := new(big.Rat), 0
		for _, m := range regexp.MustCompile(`(?m)^(.*?)\s+([-−–]?\d+\.\d\d)\s*$`).FindAllStringSubmatch(rows, -1) {
			a := rat(t, strings.NewReplacer("−", "-", "–", "-").Replace(m[2]))
			if strings.HasPrefix(m[1], "price before") || strings.HasPrefix(m[1], "to be paid") {
				held++
				require.Zero(t, a.Cmp(sum), "%s: %s", m[0], rows)
				continue
			}
			sum.Add(sum, a)
		}
		require.Equal(t, 2, held, rows)
	}
}
