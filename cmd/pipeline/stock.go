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
	"forel/render/offcuts"
)

// Stock lays the pieces of one job or many on sheets and rolls.
type Stock struct {
	Job
	Format     string   // text, markdown, json or csv; "": text
	Cuts       bool     // with text and markdown: the order of the cuts too
	Only       []string // pieces, materials or parts that are laid out; none: all
	Draw       bool     // stock.pdf and a drawing of each sheet too
	Take       bool     // take off the shop file what the plan uses, and put there what it leaves
	Undo       bool     // take the last taking back instead of planning
	On         string   // the day of the taking, as in 2026-11-28; "": that of the documents, if they have one
	Exact      bool     // cut to size what is trimmed later too
	LooseWalls bool     // let the walls of one case come off different strips
	Effort     string   // how long to search: steps or a time; "": StockSteps
	Progress   Progress `json:"-"`
}

// StockSteps is how long a plan is searched for where nothing is asked for: steps,
// not seconds, so that the same jobs give the same plan on every machine.
const StockSteps = 5000

const stockName = "stock.pdf"

// Make makes the list of what to buy, and the document and drawings if they are
// asked for.
func (s Stock) Make(ctx context.Context) (r Result, err error) {
	if s.Undo {
		return s.undo()
	}
	bad := append(format(&s.Format, stockFormats), s.taking()...)
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
		r.Report, err = draw.JSON(p, o.Round)
	case "csv":
		r.Report, err = draw.CSV(p, o.Round)
	case "markdown":
		r.Report = draw.Markdown(p, o.Round, s.Cuts)
	default:
		r.Report = draw.Text(p, o.Round, s.Cuts)
	}
	var kept []offcuts.Label
	if shop, _ := s.shop(); err == nil && s.Take {
		t := takingOf(shop, p, s.day())
		data, err := shop.Take(t)
		if err != nil {
			return r, err
		}
		r.Shop = &File{s.Shop.Name, data}
		if s.Format != "json" && s.Format != "csv" {
			r.Report = append(r.Report, tookText(s.Shop.Name, t, o.Round)...)
		}
		kept = labelsOf(t, o.Round)
	}
	if err != nil || !s.Draw {
		return r, err
	}
	r.Document = draw.Document(p, o)
	doc, err := r.Document.PDF()
	r.Files = []File{{stockName, doc}}
	for _, d := range draw.Drawings(p, o) {
		r.Files = append(r.Files, File{d.Name, d.SVG})
	}
	if len(kept) > 0 {
		r.Beside = append(r.Beside, offcuts.Document(kept, o))
		labels, wrong := r.Beside[0].PDF()
		r.Files, err = append(r.Files, File{labelsOfOffcuts, labels}), cmp.Or(err, wrong)
	}
	r.Set = "stock"
	return r, err
}

const labelsOfOffcuts = "offcuts.pdf"

// taking tells what is wrong with the settings of a taking.
func (s Stock) taking() (bad jobfile.Issues) {
	if s.Take && s.Shop.Name == "" {
		bad = refuse(bad, "--take without a shop file", "put "+jobfile.ShopName+" beside the job, or name it with --shop")
	}
	if s.On == "" {
		return bad
	}
	if _, err := time.Parse(time.DateOnly, s.On); err != nil {
		bad = append(bad, issue("--on", fmt.Sprintf("%.40q is no date", s.On), "write it as in 2026-11-28"))
	}
	return bad
}

// day is that of the taking; "" where there is none.
func (s Stock) day() string {
	if s.On == "" && !s.Date.IsZero() {
		return s.Date.UTC().Format(time.DateOnly)
	}
	return s.On
}

// undo takes the last taking back.
func (s Stock) undo() (r Result, err error) {
	bad := Contradictions(s.Flags)
	switch {
	case s.Take:
		bad = refuse(bad, "both --take and --undo", "give one of them")
	case s.Draw:
		bad = refuse(bad, "--undo with --out", "leave --out out: nothing is laid out")
	case s.Shop.Name == "":
		bad = refuse(bad, "--undo without a shop file", "name it with --shop")
	}
	shop, wrong := s.shop()
	if bad = append(bad, wrong...); bad != nil {
		return r, bad
	}
	data, err := shop.Undo()
	if err != nil {
		return r, err
	}
	r.Shop = &File{s.Shop.Name, data}
	r.Report = fmt.Appendf(nil, "took the last taking back in %s: throw its labels away\n", s.Shop.Name)
	return r, nil
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
