package timetable

import (
	"bytes"
	"context"
	"fmt"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	ics "github.com/arran4/golang-ical"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/geometry/timetable"
	"forel/geometry/work"
	"forel/render/document"
	"forel/render/pagetest"
)

// anyTable draws the timetable of some cases of any kind, with titles of any letters.
func anyTable(t *rapid.T) Table {
	h, err := timetable.ParseHours(rapid.SampledFrom([]string{timetable.UsualHours, "Mon-Fri 09:00-12:00; Sat 9-10", "daily 18:00-18:30", "Tue 0-24"}).Draw(t, "hours"))
	require.NoError(t, err)
	var cases []timetable.Case
	most := rapid.SampledFrom([]int{1, 2, 4, 14}).Draw(t, "most")
	for i := range rapid.IntRange(1, most).Draw(t, "cases") {
		title := rapid.SampledFrom([]string{"", "Log, part 2; again", `back\slash`, "line\nend", "Ünïcode 日本 🧵📚 " + strings.Repeat("é", 80), "%d %s", pagetest.AnyTitle(t)}).Draw(t, "title")
		cases = append(cases, timetable.Of(fmt.Sprintf("%s %d", title, i+1), pagetest.AnyCase(t).Plan().Steps, work.UsualTimes()))
	}
	start, dated := FirstDay, rapid.Bool().Draw(t, "dated")
	if dated {
		start = time.Date(2026, 12, 1, 10, 30, 0, 0, time.UTC)
	}
	made, err := timetable.Make(context.Background(), cases, h, start)
	require.NoError(t, err)
	return Table{Timetable: made, Dated: dated}
}

// Pages of any timetable have their words apart, off the lines and within the margins, and
// every step has its row.
func TestAnyPages(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		table := anyTable(t)
		o := document.Options{Setup: pagetest.Broad(t), Round: pagetest.Rounding(geometry.MM)}
		var got, want []string
		for i, p := range table.Document(o).Pages() {
			require.Empty(t, pagetest.Faults(&p.Surface, o.Setup.Reach(false)), "page %d", i+1)
			clocks := map[geometry.Length]string{} // by line of text
			var order []geometry.Length
			for _, w := range p.Texts {
				if len(w.String) == 5 && w.String[2] == ':' {
					if _, ok := clocks[w.At.Y]; !ok {
						order = append(order, w.At.Y)
					}
					clocks[w.At.Y] += w.String
				}
			}
			for _, y := range order {
				if len(clocks[y]) >= 10 { // from and to; a time alone is of a sentence
					got = append(got, clocks[y][:10])
				}
			}
		}
		for _, l := range batches(table.lines()) {
			want = append(want, l.from.Format("15:04")+l.to.Format("15:04"))
		}
		require.Equal(t, want, got)
	})
}

// Another reader finds in the calendar what the timetable has: each step and each drying
// with its times of no zone, words as they were. Lines are as RFC 5545 wants them.
func TestCalendarIsReadBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		table := anyTable(t)
		data, err := table.Calendar(time.Date(2026, 11, 28, 4, 0, 0, 0, time.UTC))
		require.NoError(t, err)
		require.True(t, bytes.HasSuffix(data, []byte("\r\n")))
		for _, line := range strings.Split(strings.TrimSuffix(string(data), "\r\n"), "\r\n") {
			require.LessOrEqual(t, len(line), 75, "octets (3.1)")
			require.True(t, utf8.ValidString(line), "a character is broken")
			require.NotContains(t, line, "\n")
			require.NotContains(t, line, "\r")
		}
		c, err := ics.ParseCalendar(bytes.NewReader(data))
		require.NoError(t, err)
		type event struct{ what, from, to, free string }
		var want, got []event
		for _, e := range table.Entries {
			b, at, name := table.Cases[e.Case].Blocks[e.Block], e.From, strings.Join(strings.Fields(table.Cases[e.Case].Name), " ")
			add := func(what string, from, to time.Time, free string) {
				one := event{what + " (" + name + ")", from.Format("20060102T150405"), to.Format("20060102T150405"), free}
				if !to.After(from) {
					one.to = ""
				}
				want = append(want, one)
			}
			for _, p := range b.Parts {
				to := at.Add(time.Duration(p.Work) * time.Minute)
				add(p.Title, at, to, "")
				at = to
			}
			require.Equal(t, e.To, at)
			if !e.Dry.IsZero() {
				add("Drying: "+b.Dries.What, e.To, e.Dry, "TRANSPARENT")
			}
		}
		value := func(e *ics.VEvent, p ics.ComponentProperty) string {
			if prop := e.GetProperty(p); prop != nil {
				require.Empty(t, prop.ICalParameters, "no zone")
				return prop.Value
			}
			return ""
		}
		seen := map[string]bool{}
		over := 0
		for _, e := range c.Events() {
			require.Equal(t, "20261128T040000Z", value(e, ics.ComponentPropertyDtstamp))
			require.False(t, seen[e.Id()], "a UID twice")
			seen[e.Id()] = true
			summary := value(e, ics.ComponentPropertySummary)
			if strings.HasPrefix(summary, "To be handed over") {
				require.Equal(t, table.Ready[over].Over.Format("20060102T150405"), value(e, ics.ComponentPropertyDtStart))
				over++
				continue
			}
			got = append(got, event{ics.FromText(summary), value(e, ics.ComponentPropertyDtStart), value(e, ics.ComponentPropertyDtEnd), value(e, ics.ComponentPropertyTransp)})
		}
		require.Equal(t, len(table.Cases), over)
		require.Equal(t, want, got)
	})
}

// Begun on another day, a step keeps its UID, so that a calendar moves it.
func TestEventsKeepTheirUID(t *testing.T) {
	uids := func(day int) (out []string) {
		h, _ := timetable.ParseHours("daily 9-17")
		cases := []timetable.Case{{Name: "a", Blocks: []timetable.Block{{Parts: []timetable.Part{{Step: 1, Title: "Cut", Work: 30}}}, {Parts: []timetable.Part{{Step: 1, Title: "Cut", Work: 20}}}}}}
		made, err := timetable.Make(context.Background(), cases, h, time.Date(2026, 12, day, 9, 0, 0, 0, time.UTC))
		require.NoError(t, err)
		data, err := Table{Timetable: made, Dated: true}.Calendar(time.Time{})
		require.NoError(t, err)
		c, err := ics.ParseCalendar(bytes.NewReader(data))
		require.NoError(t, err)
		for _, e := range c.Events() {
			out = append(out, e.Id())
		}
		return out
	}
	require.Len(t, uids(1), 3)
	require.Equal(t, uids(1), uids(2))
}
