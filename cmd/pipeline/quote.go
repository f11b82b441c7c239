package pipeline

import (
	"cmp"
	"context"
	"errors"
	"slices"
	"sync"

	"forel/cmd/jobfile"
	"forel/geometry/parallel"
	"forel/geometry/wording"
	labour "forel/geometry/work"
	"forel/paper/bench"
	"forel/paper/money"
	"forel/paper/quote"
	"forel/paper/stock"
	draw "forel/render/quote"
)

// Quote reckons what one case costs, or many that are made together.
type Quote struct {
	Cases
	Format   string // text or csv; "": text
	Draw     bool   // quote.pdf and costing.pdf too
	Effort   string // how long to search: steps or a time; "": StockSteps
	Progress Progress
}

const (
	quoteName   = "quote.pdf"
	costingName = "costing.pdf"
)

// Make makes the costing, and the pages for client and maker if they are asked for.
func (q Quote) Make(ctx context.Context) (r Result, err error) {
	together := q.Progress
	if len(q.Files) > 1 { // then each is laid out alone too
		together = q.Progress.Part(0, 0.5)
	}
	all, p, err := laid(ctx, &r, q.cases, chosen(q.Settings()), q.Effort, bench.Options{Buy: true}, together, nil)
	if err != nil {
		return r, err
	}
	first := all[0] // its habits hold for all
	r.differ(all, "[quote]", func(w worked) any {
		t := w.file.Quote
		t.Extra = nil // each case has its own
		return t
	})
	r.differ(all, "[adhesive]", func(w worked) any { return w.file.Adhesive })
	c := draw.Costing{Quote: reckon(all, p, first)}
	if c.Total.IsNegative() {
		bad := issue("extra.amount", "what is taken off is more than the price", "take off "+money.Number(c.Net.Neg())+" less")
		if len(q.Files) > 0 {
			bad.Source = q.Files[0].Name
		}
		for i, k := range c.Cases {
			if quote.Sum(k.Extra).IsNegative() {
				bad.Source = cmp.Or(all[i].name, bad.Source)
			}
		}
		return r, jobfile.Issues{bad}
	}
	if len(all) > 1 {
		effort, _ := effortOf(q.Effort, StockSteps)
		wrong := make([]error, len(all))
		c.Alone = make([]money.Amount, len(all))
		var mu sync.Mutex
		done := 0
		parallel.Each(len(all), func(i int) {
			var alone bench.Plan
			if alone, wrong[i] = bench.Lay(ctx, []bench.Job{byItself(p.Jobs, i)}, bench.Options{Buy: true, Effort: effort}); wrong[i] == nil {
				c.Alone[i] = reckon(all[i:i+1], alone, first).Cases[0].Price
			}
			mu.Lock()
			defer mu.Unlock()
			done++
			q.Progress.at(0.5 + 0.5*float64(done)/float64(len(all)))
		})
		if err := errors.Join(wrong...); err != nil {
			return r, Problems(err)
		}
	}
	if lacks := c.Lacks(first.round); len(lacks) > 0 {
		r.Warnings = append(r.Warnings, issue("", "the quote is not complete: it lacks "+wording.And(lacks), "give prices in [[stock]] and [adhesive], an hour as quote.hour"))
	}
	o := first.printed()
	if q.Format == "csv" {
		r.Report = draw.CSV(c, o.Round)
	} else {
		r.Report = draw.Text(c, o.Round)
	}
	if !q.Draw {
		return r, nil
	}
	err = cmp.Or(r.add(quoteName, draw.Client(c, o)), r.add(costingName, draw.Maker(c, o)))
	r.Set = "quote"
	return r, err
}

// byItself returns a job with the stock of the others for what it has none of.
func byItself(jobs []bench.Job, i int) bench.Job {
	j := jobs[i]
	own := j.Stock
	for n, other := range jobs {
		for _, s := range other.Stock {
			if n != i && !slices.ContainsFunc(own, func(have stock.Stock) bool { return have.Material == s.Material }) {
				j.Stock = append(j.Stock[:len(j.Stock):len(j.Stock)], s)
			}
		}
	}
	return j
}

// reckon returns what the cases of a plan cost.
func reckon(all []worked, p bench.Plan, first worked) quote.Quote {
	extra := make([][]quote.Extra, len(all))
	times := make([]labour.Times, len(all))
	for i, w := range all {
		extra[i], times[i] = w.file.Quote.Extra, w.file.Times
	}
	return quote.Of(p, first.file.Quote, first.file.Adhesive, extra, times)
}
