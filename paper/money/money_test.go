package money_test

import (
	"fmt"
	"math/big"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/paper/money"
)

func amount(t require.TestingT, text string) money.Amount {
	a, err := money.Parse(text)
	require.NoError(t, err)
	return a
}

// drawn is an amount with so many decimals, and the same as a fraction of whole numbers.
func drawn(t *rapid.T, name string, lo, hi, decimals int) (money.Amount, *big.Rat) {
	n := int64(rapid.IntRange(lo, hi).Draw(t, name))
	scale := int64(1)
	for range decimals {
		scale *= 10
	}
	exact := big.NewRat(n, scale)
	return amount(t, exact.FloatString(decimals)), exact
}

// Halves go up: what any table of rounding half away from zero has.
func TestToStep(t *testing.T) {
	for _, c := range []struct{ amount, step, want string }{
		{"1.005", "0.01", "1.01"}, {"1.0049", "0.01", "1"}, {"-1.005", "0.01", "-1.01"},
		{"2.025", "0.05", "2.05"}, {"2.0249", "0.05", "2"}, {"41.5", "1", "42"}, {"41.49", "1", "41"}, {"7", "5", "5"}, {"7.5", "5", "10"}, {"3.21", "0", "3.21"},
	} {
		assert.True(t, amount(t, c.want).Equal(money.ToStep(amount(t, c.amount), amount(t, c.step))), "%v", c)
	}
}

// What is rounded is a whole number of steps and no more than half a step off; rounded up
// it is no less than it was, and less than a step more.
func TestRoundingOfAnyAmount(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, exact := drawn(t, "amount", -1e9, 1e9, 4)
		step, stepExact := drawn(t, "step", 1, 20000, 3)
		got := money.ToStep(a, step).Rat()
		require.True(t, new(big.Rat).Quo(got, stepExact).IsInt())
		off := new(big.Rat).Sub(got, exact)
		require.LessOrEqual(t, new(big.Rat).Mul(off.Abs(off), big.NewRat(2, 1)).Cmp(stepExact), 0)
		if a.Sign() >= 0 {
			up := money.UpToStep(a, step).Rat()
			require.True(t, new(big.Rat).Quo(up, stepExact).IsInt())
			more := new(big.Rat).Sub(up, exact)
			require.True(t, more.Sign() >= 0 && more.Cmp(stepExact) < 0)
		}
	})
}

// Parts add up to the whole to the last cent, and none is a cent or more off its share.
func TestShareAddsUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		whole, exact := drawn(t, "amount", -1e7, 1e7, 2)
		var weights []money.Amount
		sum := new(big.Rat)
		var exactly []*big.Rat
		for range rapid.IntRange(1, 9).Draw(t, "parts") {
			w, e := drawn(t, "weight", 0, 1e6, 3)
			weights, exactly, sum = append(weights, w), append(exactly, e), new(big.Rat).Add(sum, e)
		}
		total := new(big.Rat)
		for i, p := range money.Share(whole, weights) {
			total.Add(total, p.Rat())
			require.True(t, new(big.Rat).Mul(p.Rat(), big.NewRat(100, 1)).IsInt(), "whole cents")
			if sum.Sign() > 0 {
				off := new(big.Rat).Sub(p.Rat(), new(big.Rat).Quo(new(big.Rat).Mul(exact, exactly[i]), sum))
				require.Less(t, off.Abs(off).Cmp(big.NewRat(1, 100)), 0)
			}
		}
		require.Zero(t, total.Cmp(exact))
	})
}

func ExampleIn() {
	price, _ := money.Parse("4.8")
	fmt.Println(money.In(price, "EUR"))
	fmt.Println(money.In(price.Mul(money.Of(3)), ""))
	// Output:
	// 4.80 EUR
	// 14.40
}
