package jobfile

import (
	"slices"

	"forel/geometry/job"
	"forel/paper/quote"
)

const mostExtra = 40 // lines of a quote's own

// Limits of amounts, both allowed.
const mostMoney = 1e6

// termKeys are the keys of what is ordered and of what it costs, in the order of a job file,
// but for those of lines of a quote's own.
func termKeys(f *File) []kept {
	a, q := &f.Adhesive, &f.Quote
	return []kept{
		shareAt("order.spare", "how much more than the plan needs is ordered", 100, &f.Order.Spare),
		numberAt("order.spare_pieces", "how many more of each piece", 0, 50, &f.Order.SparePieces),
		textAt("adhesive.name", "what you call it", &a.Name),
		numberAt("adhesive.coverage", "g/m²", 1, 2000, &a.Coverage),
		weightAt("adhesive.pack", "what a pack holds", 1, 100_000, &a.Pack),
		numberAt("adhesive.price", "of a pack, or of a kilogram", 0, mostMoney, &a.Price),
		weightAt("adhesive.at_hand", "what there is", 0, 100_000, &a.AtHand),
		textAt("adhesive.supplier", "who sells it", &a.Supplier),
		textAt("adhesive.ordered_as", "what the supplier calls it", &a.OrderedAs),
		textAt("quote.currency", "what prices are in", &q.Currency),
		numberAt("quote.hour", "an hour of work", 0, mostMoney, &q.Hour),
		shareAt("quote.spoilage", "what is spoilt, of the cost of the material", 200, &q.Spoilage),
		{byWhat, &q.Material},
		numberAt("quote.round_to", "the step of what is to be paid", 0.01, 1000, &q.RoundTo),
		shareAt("quote.tax", "tax on the price", 100, &q.Tax),
		textAt("quote.tax_name", "what the tax is called", &q.TaxName),
		textAt("quote.client", "whom the quote is for", &q.Client),
		textAt("quote.maker", "whom it is from", &q.Maker),
		textAt("quote.valid", "how long it holds", &q.Valid),
		textAt("quote.excluded", "what the price does not include", &q.Excluded),
	}
}

var byWhat = job.Setting{Key: "quote.material", What: "the share of a sheet that is used, or whole sheets", Words: []string{quote.ByShare, quote.ByWhole}}

// extraKeys are the keys of an [[extra]].
func extraKeys(e *quote.Extra) []kept {
	return []kept{
		textAt("extra.text", "what the line is for", &e.Text),
		numberAt("extra.amount", "what the line adds to the price, below zero: what it takes off", -mostMoney, mostMoney, &e.Amount),
	}
}

// extras reads every [[extra]]; flags alone make one too.
func (r *reader) extras() (out []quote.Extra) {
	names := r.each("extra")
	if len(names) == 0 && (r.has("extra.text") || r.has("extra.amount")) {
		names = []string{"extra"}
	}
	for _, name := range names {
		var e quote.Extra
		r.keepAll(name, extraKeys(&e))
		if !r.has(name + ".amount") {
			r.refuse(r.at(r.tables[name], name+".amount"), "missing", "give what the line adds to the price, such as amount = 12.50")
		}
		if e.Text == "" && !slices.ContainsFunc(r.issues, func(i Issue) bool { return i.Key == name+".text" }) {
			r.refuse(r.at(r.tables[name], name+".text"), "missing", `give what the line is for, such as text = "Label on the spine"`)
		}
		out = append(out, e)
	}
	return out
}
