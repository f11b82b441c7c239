package pipeline

import (
	"context"
	"encoding/json"
	"slices"

	"forel/cmd/jobfile"
	"forel/paper/bench"
	"forel/paper/order"
	draw "forel/render/order"
)

// Order lists what is to be ordered for one job or many.
type Order struct {
	Cases
	Format   string // text or csv; "": text
	Draw     bool   // order.pdf too
	Effort   string // how long to search: steps or a time; "": StockSteps
	Progress Progress
}

const orderName = "order.pdf"

// Make makes the list, and the document if it is asked for.
func (o Order) Make(ctx context.Context) (r Result, err error) {
	all, p, err := laid(ctx, &r, o.cases, chosen(o.Settings()), o.Effort, bench.Options{Buy: true}, o.Progress, spare)
	if err != nil {
		return r, err
	}
	first := all[0] // its habits hold for all
	r.differ(all, "[order]", func(w worked) any { return w.file.Order })
	r.differ(all, "[adhesive]", func(w worked) any { return w.file.Adhesive })
	list := order.Of(p, first.file.Order, first.file.Adhesive)
	at := draw.Options{Options: first.printed(), Currency: first.file.Quote.Currency}
	if o.Format == "csv" {
		r.Report = draw.CSV(list, at)
	} else {
		r.Report = draw.Text(list, at)
	}
	if !o.Draw {
		return r, nil
	}
	err = r.add(orderName, draw.Document(list, at))
	r.Set = "order"
	return r, err
}

// spare adds the spare pieces of every job.
func spare(all []worked) jobfile.Issues {
	for i := range all {
		pieces := slices.Clone(all[i].plan.Pieces)
		for k := range pieces {
			pieces[k].Count += all[i].file.Order.SparePieces
		}
		all[i].plan.Pieces = pieces
	}
	return nil
}

// differ warns of jobs that say something else than the first of what holds for all.
func (r *Result) differ(all []worked, table string, of func(worked) any) {
	text := func(w worked) string { // of amounts what they are, not where they are kept
		written, _ := json.Marshal(of(w))
		return string(written)
	}
	for _, w := range all[1:] {
		if text(w) != text(all[0]) {
			r.Warnings = append(r.Warnings, issue(w.name, table+" is not the same as in "+all[0].name+", which holds for all", "give one for all, or make each by itself"))
		}
	}
}
