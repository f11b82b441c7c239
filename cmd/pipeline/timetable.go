package pipeline

import (
	"cmp"
	"context"
	"fmt"
	"strings"
	"sync/atomic"
	"time"

	"forel/cmd/jobfile"
	"forel/cmd/roster"
	"forel/geometry/job"
	"forel/geometry/parallel"
	"forel/geometry/timetable"
	"forel/geometry/wording"
	look "forel/render/timetable"
)

// Timetable tells what to do when, for one case, for several, or for those of a roster.
type Timetable struct {
	Job                   // a file whose name ends in .csv or .tsv is a roster
	Base     *roster.Base // what a roster leaves out; nil: none
	Start    string       // the first day, and from when on; "": days are counted from 1
	Format   string       // text or json; "": text
	Draw     bool         // timetable.pdf and, where there is a date, timetable.ics too
	Progress Progress     `json:"-"`
}

const (
	timetableName = "timetable.pdf"
	calendarName  = "timetable.ics"
)

// Make makes the report, and the files if they are asked for.
func (t Timetable) Make(ctx context.Context) (r Result, err error) {
	bad := format(&t.Format, reportFormats)
	start, dated, wrong := startOf(t.Start)
	first, cases, err := t.read(&r, append(bad, wrong...))
	if err != nil {
		return r, err
	}
	made, err := timetable.Make(ctx, cases, first.file.Hours, start)
	if err != nil {
		return r, Problems(err)
	}
	table := look.Table{Timetable: made, Dated: dated}
	if t.Format == "json" {
		r.Report, err = table.JSON()
	} else {
		r.Report = table.Text()
	}
	if err != nil || !t.Draw {
		return r, err
	}
	r.Document = table.Document(first.printed())
	doc, err := r.Document.PDF()
	if err != nil {
		return r, err
	}
	r.Files, r.Set = []File{{timetableName, doc}}, "timetable"
	if !dated {
		r.Notes = append(r.Notes, "calendars need a date: --start 2026-12-01 writes "+calendarName+" too")
	} else {
		events, err := table.Calendar(first.date)
		if err != nil {
			return r, err
		}
		r.Files = append(r.Files, File{calendarName, events})
	}
	r.Wrote = namesOf(r.Files)
	return r, nil
}

// read reads the jobs, or the rows of a roster, and returns the work of each, with the
// first of them, whose bench it is.
func (t Timetable) read(r *Result, bad jobfile.Issues) (first worked, cases []timetable.Case, err error) {
	rosters := 0
	for _, f := range t.Files {
		if isRoster(f.Name) {
			rosters++
		}
	}
	switch {
	case rosters == 0:
		if t.Base != nil {
			bad = refuse(bad, "--job without a roster", "name a roster, such as class.csv, or the job file alone")
		}
		return t.readJobs(r, bad)
	case len(t.Files) > 1:
		return first, nil, refuse(bad, "a roster beside other files", "give one roster, or job files")
	case t.Example:
		return first, nil, refuse(bad, "both --example and a roster", "give one of them")
	}
	return t.readRoster(r, append(bad, Contradictions(t.Flags)...))
}

func (t Timetable) readJobs(r *Result, bad jobfile.Issues) (first worked, cases []timetable.Case, err error) {
	all, err := t.readAll(r, bad)
	if err != nil {
		return first, nil, err
	}
	first = all[0]
	var other []string
	for i, job := range atBench(all) {
		title := cmp.Or(wording.OneLine(job.Plan.Title), wording.Capital(job.Plan.Kind))
		cases = append(cases, timetable.Of(title, job.Plan.Steps, all[i].file.Times))
		if all[i].file.Hours.String() != first.file.Hours.String() {
			other = append(other, wording.Quote(title))
		}
	}
	if len(other) > 0 {
		r.Warnings = append(r.Warnings, issue("times.hours", "of "+wording.And(other)+" are others", "the bench is one: those of "+wording.Quote(cases[0].Name)+" are taken"))
	}
	return first, cases, nil
}

func (t Timetable) readRoster(r *Result, bad jobfile.Issues) (first worked, cases []timetable.Case, err error) {
	shop, wrongShop := t.shop()
	rows, err := roster.Reader{Base: t.Base, Shop: shop, Flags: t.Flags}.Read(t.Files[0].Name, t.Files[0].Data)
	bad = append(append(bad, wrongShop...), Problems(err)...)
	cases = make([]timetable.Case, len(rows))
	wrong := make([]jobfile.Issues, len(rows))
	var done atomic.Int64
	parallel.Each(len(rows), func(i int) {
		t.Progress.at(float64(done.Add(1)) / float64(len(rows)))
		row := rows[i]
		rows[i].File = jobfile.File{} // a class can be large
		if wrong[i] = row.Refused; wrong[i] != nil {
			return
		}
		w, err := work(row.File, t.Round, t.Date)
		for _, p := range Problems(err) {
			p.Source, p.Line = row.Source, row.Line
			wrong[i] = append(wrong[i], p)
		}
		cases[i] = timetable.Of(row.Name, w.plan.Steps, w.file.Times)
		if i == 0 {
			first = w
		}
	})
	for i, row := range rows {
		r.Warnings = append(r.Warnings, row.Suspects...)
		bad = append(bad, wrong[i]...)
	}
	return first, cases, bad.Err()
}

func isRoster(name string) bool {
	name = strings.ToLower(name)
	return strings.HasSuffix(name, ".csv") || strings.HasSuffix(name, ".tsv")
}

// startOf reads when the work begins: a date, and a time if there is one.
func startOf(text string) (start time.Time, dated bool, bad jobfile.Issues) {
	text = strings.TrimSpace(text)
	if text == "" {
		return look.FirstDay, false, nil
	}
	date, clock, timed := strings.Cut(strings.Replace(text, "T", " ", 1), " ")
	start, err := timetable.ParseDate(date)
	if err != nil {
		for _, p := range Problems(job.Problems{err.(job.Problem)}) {
			p.Key = "--start"
			bad = append(bad, p)
		}
		return look.FirstDay, false, bad
	}
	if timed {
		at, err := time.Parse("15:04", strings.TrimSpace(clock))
		if err != nil {
			return look.FirstDay, false, jobfile.Issues{issue("--start", fmt.Sprintf("%.20q is no time of day", clock), "write it like 2026-12-01 10:30")}
		}
		start = start.Add(time.Duration(at.Hour())*time.Hour + time.Duration(at.Minute())*time.Minute)
	}
	return start, true, nil
}
