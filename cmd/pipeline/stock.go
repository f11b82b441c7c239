package pipeline

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"strconv"
	"strings"
	"time"

	"forel/cmd/jobfile"
	"forel/geometry/job"
	"forel/paper/bench"
	"forel/paper/pack"
	draw "forel/render/bench"
	"forel/render/document"
	"forel/render/offcuts"
)

// Stock lays the pieces of one job or many on sheets and rolls.
type Stock struct {
	Job
	Format string   // text, markdown, json or csv; "": text
	Cuts   bool     // with text and markdown: the order of the cuts too
	Only   []string // pieces, materials or parts that are laid out; none: all
	Draw   bool     // stock.pdf and a drawing of each sheet too
	Ledger
	Exact      bool   // cut to size what is trimmed later too
	LooseWalls bool   // let the walls of one case come off different strips
	Effort     string // how long to search: steps or a time; "": StockSteps
	Progress   Progress
}

// StockSteps is how long a plan is searched for where nothing is asked for: steps,
// not seconds, so that the same jobs give the same plan on every machine.
const StockSteps = 5000

const stockName = "stock.pdf"

// Make makes the list of what to buy, and the document and drawings if they are
// asked for.
func (s Stock) Make(ctx context.Context) (r Result, err error) {
	if s.Undo {
		return s.undo(s.Source, s.Draw)
	}
	bad := append(chosen(s.Settings()), s.Ledger.wrong(s.Source)...)
	if s.Cuts && (s.Format == "json" || s.Format == "csv") {
		bad = refuse(bad, "--cuts goes with text and markdown only", "leave it out: "+s.Format+" holds the cuts")
	}
	all, p, err := laid(ctx, &r, s.readAll, bad, s.Effort, bench.Options{Loose: s.LooseWalls, Exact: s.Exact}, s.Progress,
		func(all []worked) jobfile.Issues { return s.only(s.Only, all) })
	if err != nil {
		return r, err
	}
	o := all[0].printed() // as its first job says
	switch s.Format {
	case "json":
		r.Report = draw.JSON(p, o.Round)
	case "csv":
		r.Report = draw.CSV(p, o.Round)
	case "markdown":
		r.Report = draw.Text(p, o.Round, s.Cuts, document.Markdown)
	default:
		r.Report = draw.Text(p, o.Round, s.Cuts, document.Plain)
	}
	var kept []offcuts.Label
	if s.Take {
		var report []byte
		if r.Shop, report, kept, err = s.take(s.Source, titlesOf(p.Jobs), []lot{{p, "the plan"}}, o.Round); err != nil {
			return r, err
		}
		if s.Format != "json" && s.Format != "csv" {
			r.Report = append(r.Report, report...)
		}
	}
	if !s.Draw {
		return r, nil
	}
	err = r.add(stockName, draw.Document(p, o))
	for _, d := range draw.Drawings(p, o) {
		r.Files = append(r.Files, File{d.Name, d.SVG})
	}
	if len(kept) > 0 {
		err = cmp.Or(err, r.add(offcutsName, offcuts.Document(kept, o)))
	}
	r.Set = "stock"
	return r, err
}

// laid reads all jobs, by read, and plans their bench work. change, which may be nil, changes them in
// between and tells what is wrong. bad is what is wrong with the settings of the command; all
// is told together.
func laid(ctx context.Context, r *Result, read func(*Result, jobfile.Issues) ([]worked, error), bad jobfile.Issues, effort string, o bench.Options, p Progress, change func([]worked) jobfile.Issues) ([]worked, bench.Plan, error) {
	var more jobfile.Issues
	o.Effort, more = effortOf(effort, StockSteps)
	all, err := read(r, append(bad, more...))
	if change != nil {
		err = append(Problems(err), change(all)...).Err()
	}
	if err != nil { // what the stock does not take is told too
		o.Effort = pack.Effort{}
		return nil, bench.Plan{}, append(Problems(err), unstocked(ctx, all, o)...)
	}
	if len(all) > 0 {
		o.Keep = all[0].file.Keep
	}
	o.Effort.Progress = p.at
	plan, err := layOut(ctx, all, o, r)
	return all, plan, err
}

// atBench returns jobs as they are planned, each with a title of its own.
func atBench(all []worked) (jobs []bench.Job) {
	seen := map[string]int{}
	for _, w := range all {
		seen[w.plan.Title]++
	}
	for i, w := range all {
		if seen[w.plan.Title] > 1 { // pieces must be told apart
			w.plan.Title = strings.TrimSpace(fmt.Sprintf("%s [job %d]", w.plan.Title, i+1))
		}
		jobs = append(jobs, bench.Job{Plan: w.plan, Unit: w.unit, Stock: w.file.Stock, Names: w.file.Names, Source: w.name})
	}
	return jobs
}

// layOut plans the bench work of all jobs.
func layOut(ctx context.Context, all []worked, o bench.Options, r *Result) (bench.Plan, error) {
	p, err := bench.Lay(ctx, atBench(all), o)
	if err != nil {
		return p, Problems(err)
	}
	if ctx.Err() != nil {
		r.Warnings = append(r.Warnings, issue("", "stopped early: this is the best plan until then", ""))
	}
	return p, nil
}

// unstocked tells of what can't be laid out on the stock there is.
func unstocked(ctx context.Context, all []worked, o bench.Options) jobfile.Issues {
	_, err := bench.Lay(ctx, atBench(all), o)
	var wrong job.Problems
	if errors.As(err, &wrong) {
		return Problems(wrong)
	}
	return nil
}

// effortOf reads steps or a time; with nothing asked for it returns the usual steps.
func effortOf(text string, usual int) (pack.Effort, jobfile.Issues) {
	text = strings.TrimSpace(text)
	if text == "" {
		return pack.Effort{Iterations: usual}, nil
	}
	if n, err := strconv.Atoi(text); err == nil && n >= 0 && n <= 1e9 {
		return pack.Effort{Iterations: n}, nil
	}
	if d, err := time.ParseDuration(text); err == nil && d >= 0 && d <= 24*time.Hour {
		return pack.Effort{Time: d}, nil
	}
	return pack.Effort{}, refuse(nil, fmt.Sprintf("--effort: %.20q is neither steps nor a time", text), "give steps such as 5000, or a time such as 20s or 5m")
}
