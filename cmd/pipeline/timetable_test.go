package pipeline_test

import (
	"bytes"
	"context"
	"encoding/json"
	"maps"
	"slices"
	"strings"
	"testing"

	ics "github.com/arran4/golang-ical"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/cmd/jobfile"
	"forel/cmd/pipeline"
)

// The page, the calendar and the JSON of a timetable tell the same: read back by others,
// each step stands in all three with its times.
func TestTimetableFilesAgree(t *testing.T) {
	for _, kind := range []string{"slipcase", "chemise and slipcase", "drop-spine box"} {
		c := pipeline.Timetable{Cases: pipeline.Cases{Job: job("kind="+kind, "title=Log; 2, “part”")}, Start: "2026-12-01", Format: "json", Draw: true}
		r, err := c.Make(context.Background())
		require.NoError(t, err)
		var told struct {
			Ready   string
			Cases   []struct{ Work_min, Drying_min int }
			Entries []struct{ Title, From, To, Dries, Dry string }
		}
		require.NoError(t, json.Unmarshal(r.Report, &told))
		require.NotEmpty(t, told.Entries)
		text := read(t, pipeline.Timetable{Cases: pipeline.Cases{Job: c.Job}, Start: c.Start, Draw: true})
		calendar, err := ics.ParseCalendar(bytes.NewReader(r.Files[1].Data))
		require.NoError(t, err)
		moment := strings.NewReplacer("-", "", ":", "")
		var want, got []string
		for _, e := range told.Entries {
			inOrder(t, text, e.From[11:], e.To[11:], strings.Fields(e.Title)[0])
			want = append(want, e.Title+" (Log; 2, “part”) "+moment.Replace(e.From)+"00 "+moment.Replace(e.To)+"00")
			if e.Dries != "" {
				want = append(want, "Drying: "+e.Dries+" (Log; 2, “part”) "+moment.Replace(e.To)+"00 "+moment.Replace(e.Dry)+"00")
			}
		}
		for _, e := range calendar.Events() {
			if end := e.GetProperty(ics.ComponentPropertyDtEnd); end != nil {
				got = append(got, ics.FromText(e.GetProperty(ics.ComponentPropertySummary).Value)+" "+e.GetProperty(ics.ComponentPropertyDtStart).Value+" "+end.Value)
			}
		}
		assert.Equal(t, want, got)
		last := told.Entries[len(told.Entries)-1]
		assert.Equal(t, told.Ready, last.To, "it is tried last, and nothing dries then")
	}
}

// The labour of a quote and the work of a timetable are of the same times: a maker's own go
// into both, and twice the time is twice the work.
func TestTimesAreTheMakers(t *testing.T) {
	work := func(set ...string) int {
		r, err := pipeline.Timetable{Cases: pipeline.Cases{Job: job(set...)}, Format: "json"}.Make(context.Background())
		require.NoError(t, err)
		var told struct{ Cases []struct{ Work_min int } }
		require.NoError(t, json.Unmarshal(r.Report, &told))
		return told.Cases[0].Work_min
	}
	usual := work()
	assert.Equal(t, usual-5*5, work("times.cut_board=0"), "five boards of 5 min")
	assert.Equal(t, usual+5*5, work("times.cut_board=10 min"))
	assert.Equal(t, usual, work("times.lining_dry=30 days"))
}

// Bad input to a timetable is told in one go; nothing at all to do is a timetable too.
func TestTimetableOfHostileJobs(t *testing.T) {
	_, err := pipeline.Timetable{Cases: pipeline.Cases{Job: job("times.hours=never", "times.closed=31 February")}, Start: "tomorrow", Format: "xml"}.Make(context.Background())
	require.Error(t, err)
	for _, wrong := range []string{`"never" is no day of the week`, `"31 February" is no date`, `"tomorrow" is no date`, `unknown format "xml"`} {
		assert.ErrorContains(t, err, wrong)
	}
	var none []string
	state, err := jobfile.Read("starter.toml", jobfile.Starter())
	require.NoError(t, err)
	for _, key := range slices.Sorted(maps.Keys(state.Values)) {
		if strings.HasPrefix(key, "times.") && key != "times.hours" {
			none = append(none, key+"=0")
		}
	}
	r, err := pipeline.Timetable{Cases: pipeline.Cases{Job: job(none...)}, Start: "2026-12-01", Draw: true}.Make(context.Background())
	require.NoError(t, err)
	assert.Contains(t, string(r.Report), "09:00-09:00  Measure the book")
	calendar, err := ics.ParseCalendar(bytes.NewReader(r.Files[1].Data))
	require.NoError(t, err)
	for _, e := range calendar.Events() {
		assert.Nil(t, e.GetProperty(ics.ComponentPropertyDtEnd), "an end must be later than its start")
	}
	for _, hours := range []string{"Wed 9:00-9:15", "daily 0-24"} {
		r, err := pipeline.Timetable{Cases: pipeline.Cases{Job: job("times.hours="+hours, "times.cut_board=24 h", "times.last_dry=30 days")}, Start: "2199-12-31 23:59", Draw: true}.Make(context.Background())
		require.NoError(t, err)
		assert.Contains(t, string(r.Report), "Measure the book")
		assert.Contains(t, string(r.Report), "it is parted")
	}
}
