package order_test

import (
	"context"
	"encoding/csv"
	"math/big"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/paper/bench"
	"forel/paper/money"
	"forel/paper/order"
	"forel/paper/stock"
	draw "forel/render/order"
	"forel/render/pagetest"
)

// cents is a price drawn to the cent.
func cents(t *rapid.T, name string) *money.Amount {
	a := money.Of(rapid.IntRange(0, 9999).Draw(t, name)).Shift(-2)
	return &a
}

// anyStock draws what a case is cut from: large sheets, some of them there, and rolls.
func anyStock(t *rapid.T, counted int) (all []stock.Stock) {
	for _, m := range []geometry.Material{geometry.Board, geometry.Lining, geometry.Cloth, geometry.Paper} {
		if rapid.IntRange(0, 4).Draw(t, "no stock of it") == 0 {
			continue
		}
		s := stock.Stock{Material: m, Width: 1800, Height: 2400, Grain: stock.NoGrain, Trim: 5, Per: stock.Metre,
			Supplier: rapid.SampledFrom([]string{"", "Mole stores", "Quay paper"}).Draw(t, "supplier"), OrderedAs: rapid.SampledFrom([]string{"", "no. 17", "=1+1"}).Draw(t, "name")}
		if m == geometry.Cloth {
			s.Roll, s.Height, s.SoldBy = true, 0, geometry.Length(rapid.SampledFrom([]int{0, 250, 1000}).Draw(t, "step"))
		} else {
			s.Count = rapid.IntRange(0, counted).Draw(t, "count")
		}
		if rapid.Bool().Draw(t, "priced") {
			s.Price = cents(t, "price")
		}
		all = append(all, s)
		if nothing := (money.Amount{}); counted > 0 && m != geometry.Cloth && rapid.Bool().Draw(t, "an offcut") {
			all = append(all, stock.Stock{Material: m, Width: 150, Height: geometry.Length(rapid.IntRange(100, 900).Draw(t, "long")), Grain: geometry.GrainHeight, Per: stock.Metre,
				Offcut: len(all), Count: 1, Price: &nothing})
		}
	}
	return all
}

// Whatever is ordered, no less is ordered than the plan needs and, with nothing spare, less
// than a step more; what is there is used up first and not ordered; a spreadsheet's sum of
// the costs is ours to the last cent; pages are sound, and the sum stands on one.
func TestAnyOrder(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		var jobs []bench.Job
		cases, counted := rapid.IntRange(1, 2).Draw(rt, "cases"), 2
		if cases > 1 {
			counted = 0 // what is counted serves one thickness only
		}
		have := anyStock(rt, counted)
		for range cases {
			jobs = append(jobs, bench.Job{Plan: pagetest.AnyCase(rt).Plan(), Unit: geometry.MM, Stock: have})
		}
		p, err := bench.Lay(context.Background(), jobs, bench.Options{Buy: true})
		if err != nil {
			require.ErrorContains(rt, err, "larger than every sheet")
			return
		}
		glue := order.Adhesive{Price: cents(rt, "glue"), Pack: money.Of(rapid.SampledFrom([]int{0, 250}).Draw(rt, "pack")), AtHand: money.Of(rapid.SampledFrom([]int{0, 5, 9000}).Draw(rt, "at hand"))}
		o := order.Of(p, order.Terms{Spare: money.Of(rapid.SampledFrom([]int{0, 5}).Draw(rt, "spare"))}, glue)

		for _, l := range o.Lines() {
			require.True(rt, l.Quantity.GreaterThanOrEqual(l.Needed) || l.Unit == order.Pack, "%v", l)
			require.False(rt, l.Stock.Owned())
			if l.Stock.Roll && o.Terms.Spare.IsZero() {
				step := l.Stock.SoldBy
				if step == 0 {
					step = 100 // mm, as the documents say
				}
				steps := new(big.Rat).Mul(l.Quantity.Rat(), big.NewRat(1000, int64(step)))
				require.True(rt, steps.IsInt(), "whole steps")
				require.Less(rt, l.Quantity.Sub(l.Needed).InexactFloat64(), step.MM()/1000)
			}
		}
		for _, g := range p.Groups {
			taken, there, more := 0, 0, 0
			for _, s := range g.Stock {
				if s.Offcut == 0 {
					there += s.Count
				}
			}
			for _, u := range g.Used {
				if s := g.Stock[u.Stock]; s.Offcut > 0 {
					require.Equal(rt, 1, u.Sheets, "there is one of it")
				} else if !s.Roll && s.Owned() {
					taken += u.Sheets
				} else if !s.Roll {
					more += u.Sheets
				}
			}
			require.LessOrEqual(rt, taken, there)
			if more > 0 {
				require.Equal(rt, there, taken, "%s is used up first", g.Label())
			}
		}

		at := draw.Options{Currency: "kr"}
		at.Setup, at.Round = pagetest.AnySetup(rt), pagetest.Rounding(geometry.MM)
		written := draw.CSV(o, at)
		read, err := csv.NewReader(strings.NewReader(string(written))).ReadAll()
		require.NoError(rt, err)
		require.Len(rt, read, 1+len(o.Lines()))
		sum, any := new(big.Rat), false
		for _, row := range read[1:] {
			if cost, ok := new(big.Rat).SetString(row[13]); ok {
				sum, any = sum.Add(sum, cost), true
			}
		}
		total, priced, _ := order.Total(o.Lines())
		require.Equal(rt, any, priced)
		require.Zero(rt, sum.Cmp(total.Rat()))

		d := draw.Document(o, at)
		text := ""
		for i, page := range d.Pages() {
			require.Empty(rt, pagetest.Faults(&page.Surface, at.Setup.Reach(false)), "page %d", i+1)
			for _, w := range page.Texts {
				text += w.String + "\n"
			}
		}
		if any {
			require.Contains(rt, text, sum.FloatString(2)+" kr")
		}
	})
}

// 0.3 m off a roll that is cut by the metre is a metre; by 1/8 yd, 0.4 yd is 0.5 yd.
func TestSold(t *testing.T) {
	roll := stock.Stock{Roll: true, Width: 1370, Per: stock.Metre, SoldBy: 1000}
	require.Equal(t, "1", roll.Sold(0, 300).String())
	require.Equal(t, "0.3", stock.Stock{Roll: true, Per: stock.Metre}.Sold(0, 300).String())
	require.Equal(t, "0.5", stock.Stock{Roll: true, Per: stock.Yard}.Sold(0, 0.4*914.4).String())
	require.Equal(t, "0.34", stock.Stock{Roll: true, Per: stock.Metre}.Quantity(0, 333.3).String(), "a hundredth more, rounded up")
}
