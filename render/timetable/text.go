package timetable

import (
	"fmt"
	"strings"
	"time"

	"forel/geometry/wording"
	"forel/render/data"
)

const wide = 80 // of lines of text

// handedHeads are the heads of handed.
var handedHeads = []string{"no.", "case", "work", "drying", "ready", "to be handed over"}

func handedRight(column int) bool { return column == 2 || column == 3 }

// Text returns the timetable as text.
func (t Table) Text() []byte {
	var b strings.Builder
	b.WriteString("Timetable: " + wording.Printable(t.title()) + "\n\n")
	for _, s := range t.summary() {
		b.WriteString(wording.Wrap(s, wide) + "\n")
	}
	for _, d := range days(batches(t.lines())) {
		b.WriteString("\n" + t.dayName(d[0].from) + "\n")
		for _, l := range d {
			what := wording.Printable(l.title)
			if t.several() {
				what += " [" + wording.Printable(t.caseNames(l.cases)) + "]"
			}
			b.WriteString(indented(l.from.Format("15:04")+"-"+l.to.Format("15:04"), what))
			if dries := t.dries(l); dries != "" {
				b.WriteString(indented("", dries))
			}
		}
	}
	b.WriteString("\n")
	rows := [][]string{handedHeads}
	for _, r := range t.handed() {
		r[1] = wording.Printable(r[1])
		rows = append(rows, r)
	}
	b.WriteString(wording.Aligned(rows, handedRight) + "\n")
	for _, n := range notes {
		b.WriteString(wording.Wrap(n, wide) + "\n")
	}
	return []byte(b.String())
}

// indented sets text beside a time, on further lines below itself.
func indented(time, text string) string {
	const in = 13
	return fmt.Sprintf("%-*s", in, time) + strings.ReplaceAll(wording.Wrap(text, wide-in), "\n", "\n"+strings.Repeat(" ", in)) + "\n"
}

// jsonTable is the timetable for other programs. Times are in minutes; moments have no
// zone, and without dates they are counted from day 1.
type jsonTable struct {
	Hours    string      `json:"hours"`
	Cases    []jsonCase  `json:"cases"`
	Entries  []jsonEntry `json:"entries"`
	Ready    string      `json:"ready"`
	Earliest string      `json:"earliest_possible"`
	Notes    []string    `json:"notes"`
}

type jsonCase struct {
	Name   string `json:"name"`
	Work   int    `json:"work_min"`
	Drying int    `json:"drying_min"`
	Ready  string `json:"ready"`
	Over   string `json:"hand_over"`
}

type jsonEntry struct {
	Case  int    `json:"case"` // from 1
	Step  int    `json:"step"`
	Title string `json:"title"`
	From  string `json:"from"`
	To    string `json:"to"`
	Wet   bool   `json:"next_at_once,omitempty"`
	Dries string `json:"dries,omitempty"`
	Under string `json:"under,omitempty"`
	Dry   string `json:"dry,omitempty"`
}

// JSON returns the timetable for other programs.
func (t Table) JSON() ([]byte, error) {
	moment := func(at time.Time) string {
		if t.Dated {
			return at.Format("2006-01-02T15:04")
		}
		return t.at(at, time.Time{})
	}
	out := jsonTable{Hours: t.Hours.String(), Ready: moment(t.Last()), Earliest: moment(t.Earliest), Notes: notes}
	for i, c := range t.Cases {
		out.Cases = append(out.Cases, jsonCase{c.Name, c.Work(), c.Drying(), moment(t.Ready[i].Done), moment(t.Ready[i].Over)})
	}
	for _, l := range t.lines() {
		e := jsonEntry{Case: l.cases[0] + 1, Step: l.step, Title: l.title, From: moment(l.from), To: moment(l.to), Wet: l.wet}
		if !l.dry.IsZero() {
			e.Dries, e.Under, e.Dry = l.dries.What, l.dries.Under, moment(l.dry)
		}
		out.Entries = append(out.Entries, e)
	}
	return data.JSON(out)
}
