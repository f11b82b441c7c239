package main

import (
	"context"
	"fmt"
	"io"
	"os"
	"os/signal"
	"path/filepath"
	"strconv"
	"strings"
	"time"

	"forel/geometry/wording"
	"forel/paper/bench"
	"forel/paper/pack"
	draw "forel/render/bench"
)

// defaultSteps is how long is searched where nothing is asked for: steps, not
// seconds, so that the same jobs give the same plan on every machine.
const defaultSteps = 5000

var aboutStock = fmt.Sprintf(`
usage: forel stock [JOB.toml ...] [flags]

Lays the pieces of all jobs out on the sheets and rolls that [[stock]] in the job
files tells of, for a knife and straightedge or a board shear: every cut runs
edge to edge. Prints what to buy, and with --out writes stock.pdf (the shopping
list, a drawing of each sheet, the order of the cuts with the fence setting of
each) and a drawing of each sheet as SVG. A material without [[stock]] is laid
out on a usual size.

Fewest sheets count first, then fewest settings of the fence, then large
offcuts. --effort takes a number of steps (%d where it is left out), which gives
the same plan every time, or a time such as 20s, which may not. An interrupt ends
the search with the best plan until then.

%s

example:
  forel stock case.toml --out bench/
  forel stock class/*.toml --effort 20s --out bench/
`, defaultSteps, careful(wording.Knife, wording.Shear))

// benchName is the file with everything.
const benchName = "stock.pdf"

func runStock(args []string, out io.Writer, say voice) error {
	f := flagSet("stock", aboutStock, out)
	job := addJobFlags(f)
	format := f.String("format", "text", "`format` of the list: text, markdown, json (everything) or csv (the cuts)")
	cuts := f.Bool("cuts", false, "with text and markdown: the order of the cuts too")
	folder := f.String("out", "", "`folder` to write stock.pdf and a drawing of each sheet into; made if it is not there")
	job.addPrint()
	loose := f.Bool("loose-walls", false, "let the walls of one case come off different strips, where that saves a sheet")
	effort := f.String("effort", strconv.Itoa(defaultSteps), "how long to search: `steps`, or a time such as 20s; 0: the first good plan")
	if err := parseFlags(f, args); err != nil {
		return err
	}
	if err := checkFormat(*format, "text", "markdown", "json", "csv"); err != nil {
		return err
	}
	if *cuts && (*format == "json" || *format == "csv") {
		return refusal{"--cuts goes with text and markdown only", "leave it out: " + *format + " holds the cuts"}
	}
	if err := checkOut(f, *folder, "bench/"); err != nil {
		return err
	}
	e, err := effortOf(*effort)
	if err != nil {
		return err
	}
	all, err := job.loadAll(say)
	if err != nil {
		return err
	}
	plan, err := layOut(all, bench.Options{Effort: e, Loose: *loose}, say)
	if err != nil {
		return err
	}
	o := all[0].printed()
	var data []byte
	switch *format {
	case "json":
		data, err = draw.JSON(plan, o.Round)
	case "csv":
		data, err = draw.CSV(plan, o.Round)
	case "markdown":
		data = draw.Markdown(plan, o.Round, *cuts)
	default:
		data = draw.Text(plan, o.Round, *cuts)
	}
	if err != nil {
		return failure{err, ""}
	}
	if *folder != "" {
		if err := writeBench(*folder, plan, o, say); err != nil {
			return err
		}
	}
	if _, err := out.Write(data); err != nil {
		return failure{err, ""}
	}
	return nil
}

// layOut plans the bench work of all jobs, telling how it goes on a terminal.
func layOut(all []loaded, o bench.Options, say voice) (bench.Plan, error) {
	var jobs []bench.Job
	seen := map[string]int{}
	for _, l := range all {
		seen[l.plan.Title]++
	}
	for i, l := range all {
		if seen[l.plan.Title] > 1 { // pieces must be told apart
			l.plan.Title = strings.TrimSpace(fmt.Sprintf("%s [job %d]", l.plan.Title, i+1))
		}
		jobs = append(jobs, bench.Job{Plan: l.plan, Unit: l.file.Job.Unit, Stock: l.file.Stock, Names: l.file.Names, Source: l.name})
	}
	bar := say.progress("laying out")
	o.Effort.Progress = bar.tell
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	p, err := bench.Lay(ctx, jobs, o)
	bar.done()
	if ctx.Err() != nil && err == nil {
		fmt.Fprintln(say.w, "warning: stopped early: this is the best plan until then")
	}
	return p, err
}

// effortOf reads steps or a time.
func effortOf(text string) (pack.Effort, error) {
	text = strings.TrimSpace(text)
	if n, err := strconv.Atoi(text); err == nil && n >= 0 && n <= 1e9 {
		return pack.Effort{Iterations: n}, nil
	}
	if d, err := time.ParseDuration(text); err == nil && d >= 0 && d <= 24*time.Hour {
		return pack.Effort{Time: d}, nil
	}
	return pack.Effort{}, refusal{fmt.Sprintf("--effort: %.20q is neither steps nor a time", text), "give steps such as 5000, or a time such as 20s or 5m"}
}

// writeBench writes the document and the drawings into a folder, or nothing.
func writeBench(folder string, p bench.Plan, o draw.Options, say voice) error {
	doc, err := draw.Booklet(p, o)
	if err != nil {
		return failure{err, ""}
	}
	files := []output{{benchName, doc}}
	for _, d := range draw.Drawings(p, o) {
		files = append(files, output{d.Name, d.SVG})
	}
	if err := writeInto(folder, files); err != nil {
		return err
	}
	now := map[string]bool{}
	for _, f := range files {
		now[filepath.Join(folder, f.name)] = true
	}
	for n := len(files); ; n++ { // sheets of an earlier plan have the numbers after these
		name := filepath.Join(folder, draw.FileName(bench.Sheet{Number: n}))
		if _, err := os.Stat(name); err != nil {
			return nil
		}
		if !now[name] {
			fmt.Fprintf(say.w, "warning: %s is from an earlier plan and not part of this one; take it away\n", wording.Printable(name))
		}
	}
}
