// Package timetable tells what to do when: as text, as pages with a table and a picture for
// each day, as JSON, and as an iCalendar file.
package timetable

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"forel/geometry/timetable"
	"forel/geometry/wording"
	"forel/geometry/work"
	"forel/render"
	"forel/render/document"
)

// Table is a timetable with what is said of it.
type Table struct {
	timetable.Timetable
	Dated bool // its days are those of the calendar; else they are told as day 1, day 2
}

// FirstDay is day 1 of a timetable that has no dates. It is a Monday.
var FirstDay = time.Date(2001, 1, 1, 0, 0, 0, 0, time.UTC)

// line is work at one step of a case, or the same step of several cases one after the
// other.
type line struct {
	cases    []int
	step     int
	title    string
	from, to time.Time
	wet      bool // the next follows at once, while glue is wet
	dries    work.Drying
	dry      time.Time // when the last of it is dry; zero where nothing must
}

// lines returns the work in order of time, a step of a case each.
func (t Table) lines() (out []line) {
	for _, e := range t.Entries {
		b, at := t.Cases[e.Case].Blocks[e.Block], e.From
		for i, p := range b.Parts {
			l := line{cases: []int{e.Case}, step: p.Step, title: wording.OneLine(p.Title), from: at, to: at.Add(time.Duration(p.Work) * time.Minute), wet: i < len(b.Parts)-1}
			if !l.wet {
				l.dries, l.dry = b.Dries, e.Dry
			}
			out, at = append(out, l), l.to
		}
	}
	return out
}

// batches returns the lines with the same step of several cases as one, where they follow
// each other.
func batches(lines []line) (out []line) {
	for _, l := range lines {
		if n := len(out); n > 0 && out[n-1].same(l) {
			out[n-1].cases = append(slices.Clone(out[n-1].cases), l.cases...)
			out[n-1].to = l.to
			if l.dry.After(out[n-1].dry) {
				out[n-1].dry = l.dry
			}
			continue
		}
		out = append(out, l)
	}
	return out
}

// same tells whether the next line is the same step of another case, or more of the same
// work of one.
func (l line) same(next line) bool {
	return l.title == next.title && l.to.Equal(next.from) && !l.wet && !next.wet && l.dries == next.dries && l.dry.IsZero() == next.dry.IsZero() &&
		day(l.from).Equal(day(next.from)) && (!slices.Contains(l.cases, next.cases[0]) || len(l.cases) == 1)
}

// days returns lines by day.
func days(lines []line) (out [][]line) {
	for _, l := range lines {
		if n := len(out); n > 0 && day(out[n-1][0].from).Equal(day(l.from)) {
			out[n-1] = append(out[n-1], l)
			continue
		}
		out = append(out, []line{l})
	}
	return out
}

func day(t time.Time) time.Time { return t.Truncate(24 * time.Hour) }

// number returns the number of a day, from 1.
func number(t time.Time) int { return int(t.Sub(FirstDay)/(24*time.Hour)) + 1 }

// dayName names a day in full.
func (t Table) dayName(at time.Time) string {
	switch {
	case t.Dated:
		return at.Format("Monday 2 January 2006")
	case t.Hours.Alike():
		return fmt.Sprintf("Day %d", number(at))
	}
	return fmt.Sprintf("Day %d, a %s", number(at), at.Weekday())
}

// at names a time in short: the day too where it is another than that of since.
func (t Table) at(at, since time.Time) string {
	clock := at.Format("15:04")
	switch {
	case day(at).Equal(day(since)):
		return clock
	case t.Dated:
		return at.Format("Mon 2 Jan ") + clock
	}
	return fmt.Sprintf("day %d, %s", number(at), clock)
}

// when names a time in full.
func (t Table) when(at time.Time) string { return t.dayName(at) + ", " + at.Format("15:04") }

// dries says what dries after a line, and until when.
func (t Table) dries(l line) string {
	if l.dry.IsZero() {
		if l.wet {
			return "go on at once, while it is wet"
		}
		return ""
	}
	said := "dries until " + t.at(l.dry, l.from) + " at least: " + l.dries.Words()
	if len(l.cases) > 1 {
		said = "the last " + said
	}
	return said
}

// caseNames lists the names of cases; of many how many they are.
func (t Table) caseNames(of []int) string {
	const most = 6
	if len(of) == len(t.Cases) && len(of) > most {
		return fmt.Sprintf("all %d", len(of))
	}
	var names []string
	for _, c := range of {
		names = append(names, t.Cases[c].Name)
	}
	return strings.Join(names, "; ")
}

// several tells whether there are several cases.
func (t Table) several() bool { return len(t.Cases) > 1 }

// title says what the timetable is of.
func (t Table) title() string {
	return wording.Cases(len(t.Cases), func(n int) string { return t.Cases[n].Name })
}

// summary says in sentences when all is ready, and how long it takes.
func (t Table) summary() (out []string) {
	worked, dries := 0, 0
	for _, c := range t.Cases {
		worked, dries = worked+c.Work(), dries+c.Drying()
	}
	last := t.Last()
	ready := "All is ready " + t.when(last) + ". This is the best order that was found; no order has all ready before " + t.when(t.Earliest) + "."
	if last.Equal(t.Earliest) {
		ready = "Ready " + t.when(last) + ". With these times and hours nothing is ready earlier, in whatever order the work is done."
	}
	took := fmt.Sprintf("Work: %s. Drying: %s", minutes(worked), minutes(dries))
	if t.several() {
		took += ", of all cases together"
	}
	out = append(out, ready, took+".", "The bench is open "+t.Hours.String()+". One pair of hands works; what dries goes on drying when the bench is closed.")
	for _, p := range t.parted() {
		out = append(out, fmt.Sprintf("“%s” takes %s, longer than the bench is open at a stretch (%s): it is parted. Glue no more at a time than you can finish.", p.Title, minutes(p.Work), minutes(p.Open)))
	}
	return out
}

// parted returns what had to be parted, each step once.
func (t Table) parted() (out []timetable.Parted) {
	for _, c := range t.Cases {
		for _, p := range c.Parted {
			if !slices.ContainsFunc(out, func(have timetable.Parted) bool { return have.Title == p.Title }) {
				out = append(out, p)
			}
		}
	}
	return out
}

func minutes(n int) string { return work.Show(time.Duration(n) * time.Minute) }

// notes is what is said at the end.
var notes = []string{work.TimesNote, work.DryNote}

// handed returns the table of cases with when each is ready.
func (t Table) handed() document.Table {
	columns := []document.Column{{Head: "no.", Right: true}, {Head: "case", Broken: true}, {Head: "work", Right: true}, {Head: "drying", Right: true}, {Head: "ready", Broken: true}, {Head: "to be handed over", Broken: true, Bold: true}}
	out := document.Table{Columns: columns, Size: render.BodySize}
	for i, c := range t.Cases {
		r := t.Ready[i]
		over := t.dayName(r.Over)
		if !day(r.Over).Equal(day(r.Done)) {
			over += ", " + r.Over.Format("15:04")
		}
		no := ""
		if t.several() {
			no = fmt.Sprint(i + 1)
		}
		out.Rows = append(out.Rows, []string{no, wording.OneLine(c.Name), minutes(c.Work()), minutes(c.Drying()), t.at(r.Done, time.Time{}), over})
	}
	return out
}
