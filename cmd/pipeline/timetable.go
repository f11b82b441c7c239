package pipeline

import (
	"context"
	"fmt"
	"strings"
	"time"

	"forel/cmd/jobfile"
	"forel/geometry/job"
	"forel/geometry/timetable"
	"forel/geometry/wording"
	look "forel/render/timetable"
)

// Timetable tells what to do when, for one case, for several, or for those of a roster.
type Timetable struct {
	Cases
	Start    string // the first day, and from when on; "": days are counted from 1
	Format   string // text or json; "": text
	Draw     bool   // timetable.pdf and, where there is a date, timetable.ics too
	Progress Progress
}

const (
	timetableName = "timetable.pdf"
	calendarName  = "timetable.ics"
)

// Make makes the report, and the files if they are asked for.
func (t Timetable) Make(ctx context.Context) (r Result, err error) {
	bad := chosen(t.Settings())
	start, dated, wrong := startOf(t.Start)
	t.reading = t.Progress
	all, err := t.cases(&r, append(bad, wrong...))
	if err != nil {
		return r, err
	}
	first := all[0] // whose bench it is
	var cases []timetable.Case
	var other []string
	for _, w := range all {
		cases = append(cases, timetable.Of(w.plan.Title, w.plan.Steps, w.file.Times))
		if w.file.Hours.String() != first.file.Hours.String() {
			other = append(other, wording.Quote(w.plan.Title))
		}
	}
	if len(other) > 0 {
		r.Warnings = append(r.Warnings, issue("times.hours", "of "+wording.And(other)+" are others", "the bench is one: those of "+wording.Quote(first.plan.Title)+" are taken"))
	}
	if first.file.Hours.Closes() && !dated {
		r.Warnings = append(r.Warnings, issue("times.closed", "days that are counted have no date, so the bench is open on all of them", "give the date to start on"))
	}
	made, err := timetable.Make(ctx, cases, first.file.Hours, start)
	if err != nil {
		return r, Problems(err)
	}
	table := look.Table{Timetable: made, Dated: dated}
	if t.Format == "json" {
		r.Report = table.JSON()
	} else {
		r.Report = table.Text()
	}
	if !t.Draw {
		return r, nil
	}
	if err := r.add(timetableName, table.Document(first.printed())); err != nil {
		return r, err
	}
	r.Set = "timetable"
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
