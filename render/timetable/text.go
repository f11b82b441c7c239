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

// JSON returns the timetable for other programs. Times are in minutes; moments have no
// zone, and without dates they are counted from day 1. Cases are counted from 1.
func (t Table) JSON() ([]byte, error) {
	moment := func(at time.Time) string {
		if t.Dated {
			return at.Format("2006-01-02T15:04")
		}
		return t.at(at, time.Time{})
	}
	var cases []data.Object
	for i, c := range t.Cases {
		cases = append(cases, data.Object{{"name", c.Name}, {"work_min", c.Work()}, {"drying_min", c.Drying()}, {"ready", moment(t.Ready[i].Done)}, {"hand_over", moment(t.Ready[i].Over)}})
	}
	return data.JSON("timetable", data.Object{
		{"hours", t.Hours.String()},
		{"cases", cases},
		{"entries", data.List(t.lines(), func(l line) data.Object {
			e := data.Object{{"case", l.cases[0] + 1}, {"step", l.step}, {"title", l.title}, {"from", moment(l.from)}, {"to", moment(l.to)}, {"next_at_once", data.Given(l.wet)}}
			if !l.dry.IsZero() {
				e = append(e, data.Object{{"dries", data.Given(l.dries.What)}, {"under", data.Given(l.dries.Under)}, {"dry", moment(l.dry)}}...)
			}
			return e
		})},
		{"ready", moment(t.Last())},
		{"earliest_possible", moment(t.Earliest)},
		{"notes", notes},
	})
}
