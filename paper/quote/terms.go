// Package quote is what a case costs: material, labour, what is spoilt, tax, and the price
// rounded as the maker likes. All of it is exact decimal arithmetic, a line at a time: what
// is shown of a line is what is added up.
package quote

import (
	"cmp"

	"forel/paper/money"
)

// Terms are how a maker reckons a price.
type Terms struct {
	Currency string        // any text: "EUR", "kr"; may be empty
	Hour     *money.Amount // an hour of work; nil: not known
	Spoilage money.Amount  // percent of the material
	Material string        // ByShare or ByWhole
	RoundTo  money.Amount  // the step of what is to be paid; zero: a cent
	Tax      *money.Amount // percent of the price; nil: no tax is reckoned
	TaxName  string        // empty: "tax"
	Client   string        // whom it is for; may be empty
	Maker    string        // whom it is from; may be empty
	Valid    string        // how long it holds, such as "30 days"; may be empty
	Excluded string        // what the price does not include; empty: DefaultExcluded
	Extra    []Extra
}

// How material is reckoned.
const (
	ByShare = "share" // what of a sheet goes into pieces and waste; what is worth keeping stays the maker's
	ByWhole = "whole" // whole sheets, lengths and packs as they are sold
)

// DefaultExcluded is what a price does not include where nothing else is said (common
// practice, no source).
const DefaultExcluded = "the book itself, packing and carriage, and whatever is not named above"

// Extra is a line of the maker's own.
type Extra struct {
	Text   string
	Amount money.Amount // below zero: taken off
}

// TaxWord returns what tax is called.
func (t Terms) TaxWord() string {
	return cmp.Or(t.TaxName, "tax")
}

// Excludes returns what the price does not include.
func (t Terms) Excludes() string {
	return cmp.Or(t.Excluded, DefaultExcluded)
}
