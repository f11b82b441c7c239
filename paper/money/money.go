// Package money is exact decimal numbers: prices, amounts, and how much of a thing they
// are paid for. Nothing in it is floating point, so that what is added up by hand from a
// page comes to its total.
package money

import "github.com/shopspring/decimal"

// Amount is an exact decimal number.
type Amount = decimal.Decimal

// Cent is the smallest amount that a line is written in (common practice, no source: the
// hundredth of most currencies).
var Cent = decimal.New(1, -2)

// Of returns a whole number as an amount.
func Of(n int) Amount { return decimal.NewFromInt(int64(n)) }

// Thousandths returns a measured number as an amount, rounded to a thousandth: a length, an
// area or a weight enters the reckoning once, as it is shown.
func Thousandths(v float64) Amount { return decimal.NewFromFloatWithExponent(v, -3) }

// Parse reads a number with a decimal point, such as "4.80". It is for what is written in
// the program; what a maker types is read by package jobfile.
func Parse(text string) (Amount, error) { return decimal.NewFromString(text) }

// ToStep rounds to the nearest whole number of steps; halves go up, those below zero down.
// A step of zero leaves the amount as it is.
func ToStep(a, step Amount) Amount {
	if step.IsZero() {
		return a
	}
	return a.DivRound(step, 0).Mul(step)
}

// UpToStep rounds up to a whole number of steps, as what is sold by the step is. A step of
// zero leaves the amount as it is.
func UpToStep(a, step Amount) Amount {
	if step.IsZero() {
		return a
	}
	n, rest := a.QuoRem(step, 0)
	if rest.IsPositive() {
		n = n.Add(Of(1))
	}
	return n.Mul(step)
}

// ToCent rounds to the nearest cent, as a line of a page is written.
func ToCent(a Amount) Amount { return ToStep(a, Cent) }

// Percent returns so many percent of an amount.
func Percent(a, percent Amount) Amount { return a.Mul(percent).Shift(-2) }

// Number writes an amount with two decimals, or more where it has more.
func Number(a Amount) string {
	places := max(2, -a.Normalize().Exponent())
	return a.StringFixed(places)
}

// In writes an amount in a currency: "4.80 EUR". An empty currency is left out.
func In(a Amount, currency string) string {
	if currency == "" {
		return Number(a)
	}
	return Number(a) + " " + currency
}

// Share parts an amount in cents by weights, so that the parts add up to it: what is left
// over goes to those that lost most by rounding, the first of equals first (the method of
// the largest remainder). Weights are not below zero; where all are zero they count alike.
func Share(a Amount, weights []Amount) []Amount {
	parts := make([]Amount, len(weights))
	if len(weights) == 0 {
		return parts
	}
	var sum Amount
	for _, w := range weights {
		sum = sum.Add(w)
	}
	if sum.IsZero() {
		even := make([]Amount, len(weights))
		for i := range even {
			even[i] = Of(1)
		}
		return Share(a, even)
	}
	lost := make([]Amount, len(weights))
	left := a
	for i, w := range weights {
		n, rest := a.Mul(w).QuoRem(sum.Mul(Cent), 0)
		parts[i], lost[i] = n.Mul(Cent), rest
		left = left.Sub(parts[i])
	}
	for left.Abs().GreaterThanOrEqual(Cent) {
		most := 0
		for i := range lost {
			if lost[i].Abs().GreaterThan(lost[most].Abs()) {
				most = i
			}
		}
		coin := Cent.Mul(Of(left.Sign()))
		parts[most], left, lost[most] = parts[most].Add(coin), left.Sub(coin), Amount{}
	}
	return parts
}
