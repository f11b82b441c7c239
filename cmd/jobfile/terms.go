package jobfile

import (
	"slices"

	"forel/geometry/job"
	"forel/paper/money"
	"forel/paper/order"
	"forel/paper/quote"
)

const mostExtra = 40 // lines of a quote's own

// Limits of amounts, both allowed.
const mostMoney = 1e6

func amountOf(key, what string, lo, hi float64) job.Setting {
	return job.NumberOf(key, what, lo, hi, new(float64))
}

func shareOf(key, what string, most float64) job.Setting {
	return job.PercentOf(key, what, 0, most, new(float64))
}

func weightOf(key, what string, lo, hi float64) job.Setting {
	return job.Setting{Key: key, What: what, Min: lo, Max: hi}
}

// The keys of what is ordered and of what it costs; what they hold is read by terms.
var (
	spare       = shareOf("order.spare", "how much more than the plan needs is ordered", 100)
	sparePieces = amountOf("order.spare_pieces", "how many more of each piece", 0, 50)
	coverage    = amountOf("adhesive.coverage", "g/m²", 1, 2000)
	pack        = weightOf("adhesive.pack", "what a pack holds", 1, 100_000)
	gluePrice   = amountOf("adhesive.price", "of a pack, or of a kilogram", 0, mostMoney)
	atHand      = weightOf("adhesive.at_hand", "what there is", 0, 100_000)
	hour        = amountOf("quote.hour", "an hour of work", 0, mostMoney)
	spoilage    = shareOf("quote.spoilage", "what is spoilt, of the cost of the material", 200)
	byWhat      = job.Setting{Key: "quote.material", What: "the share of a sheet that is used, or whole sheets", Words: []string{quote.ByShare, quote.ByWhole}}
	roundTo     = amountOf("quote.round_to", "the step of what is to be paid", 0.01, 1000)
	tax         = shareOf("quote.tax", "tax on the price", 100)
	extraAmount = amountOf("extra.amount", "what the line adds to the price, below zero: what it takes off", -mostMoney, mostMoney)
)

// termSettings are all of them, in the order of a job file.
var termSettings = []job.Setting{
	spare, sparePieces,
	{Key: "adhesive.name", What: "what you call it"}, coverage, pack, gluePrice, atHand,
	{Key: "adhesive.supplier", What: "who sells it"}, {Key: "adhesive.ordered_as", What: "what the supplier calls it"},
	{Key: "quote.currency", What: "what prices are in"}, hour, spoilage, byWhat, roundTo, tax,
	{Key: "quote.tax_name", What: "what the tax is called"}, {Key: "quote.client", What: "whom the quote is for"},
	{Key: "quote.maker", What: "whom it is from"}, {Key: "quote.valid", What: "how long it holds"},
	{Key: "quote.excluded", What: "what the price does not include"},
	{Key: "extra.text", What: "what the line is for"}, extraAmount,
}

// terms reads how the maker orders and reckons a price.
func (r *reader) terms(f *File) {
	r.setAmount(spare, &f.Order.Spare)
	if v, ok := r.get(sparePieces.Key); ok {
		f.Order.SparePieces = int(r.number(v, sparePieces, true))
	}
	f.Adhesive = r.adhesive()
	q := &f.Quote
	r.title("quote.currency", &q.Currency)
	r.title("quote.tax_name", &q.TaxName)
	r.title("quote.client", &q.Client)
	r.title("quote.maker", &q.Maker)
	r.title("quote.valid", &q.Valid)
	r.title("quote.excluded", &q.Excluded)
	q.Hour, q.Tax = r.anAmount(hour), r.anAmount(tax)
	r.setAmount(spoilage, &q.Spoilage)
	r.setAmount(roundTo, &q.RoundTo)
	q.Material = r.word(byWhat)
	q.Extra = r.extras()
}

// adhesive reads what the maker glues with.
func (r *reader) adhesive() (a order.Adhesive) {
	r.title("adhesive.name", &a.Name)
	r.title("adhesive.supplier", &a.Supplier)
	r.title("adhesive.ordered_as", &a.OrderedAs)
	r.setAmount(coverage, &a.Coverage)
	a.Price = r.anAmount(gluePrice)
	a.Pack, a.AtHand = r.grams(pack), r.grams(atHand)
	return a
}

// grams reads a weight where its key is set.
func (r *reader) grams(s job.Setting) (a money.Amount) {
	if v, ok := r.get(s.Key); ok {
		a = money.Thousandths(r.weight(v, s))
	}
	return a
}

// extras reads every [[extra]]; flags alone make one too.
func (r *reader) extras() (out []quote.Extra) {
	count := r.counts["extra"]
	if count == 0 && (r.has("extra.text") || r.has("extra.amount")) {
		count = 1
	}
	for n := range min(count, mostExtra) {
		name := numbered("extra", n+1)
		var e quote.Extra
		r.title(name+".text", &e.Text)
		v, ok := r.get(name + ".amount")
		if ok {
			e.Amount, _ = r.amount(v, extraAmount)
		} else {
			r.refuse(r.at(r.tables[name], name+".amount"), "missing", "give what the line adds to the price, such as amount = 12.50")
		}
		if e.Text == "" && !slices.ContainsFunc(r.issues, func(i Issue) bool { return i.Key == name+".text" }) {
			r.refuse(r.at(r.tables[name], name+".text"), "missing", `give what the line is for, such as text = "Label on the spine"`)
		}
		out = append(out, e)
	}
	return out
}

// anAmount reads an amount that may be left out.
func (r *reader) anAmount(s job.Setting) *money.Amount {
	if v, ok := r.get(s.Key); ok {
		if a, ok := r.amount(v, s); ok {
			return &a
		}
	}
	return nil
}

// setAmount reads an amount where its key is set.
func (r *reader) setAmount(s job.Setting, to *money.Amount) {
	if a := r.anAmount(s); a != nil {
		*to = *a
	}
}
