package jobfile_test

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/cmd/jobfile"
	"forel/geometry/work"
)

// What a maker writes under [times] goes; all else is as usual, and so is a new job file.
func TestTimes(t *testing.T) {
	for _, own := range []string{"", "[times]\nhours = ''\nclosed = ''\n"} {
		f, _, err := jobfile.Parse("case.toml", []byte(book+own))
		require.NoError(t, err)
		assert.Equal(t, work.UsualTimes(), f.Times)
		assert.Equal(t, "daily 09:00-12:30, 13:30-17:30", f.Hours.String())
	}
	f, _, err := jobfile.Parse("starter.toml", jobfile.Starter())
	require.NoError(t, err)
	assert.Equal(t, work.UsualTimes(), f.Times)
	for text, want := range map[string]time.Duration{
		`45`: 45 * time.Minute, `"45"`: 45 * time.Minute, `"45 min"`: 45 * time.Minute, `"45m"`: 45 * time.Minute, `0`: 0, `"0 min"`: 0,
		`"4 h"`: 4 * time.Hour, `"1 h 30 min"`: 90 * time.Minute, `"1h30m"`: 90 * time.Minute, `"1 hour, 30 minutes"`: 90 * time.Minute,
		`"1.5 h"`: 90 * time.Minute, `"1,5 h"`: 90 * time.Minute, `0.5`: 30 * time.Second, `"2 days"`: 48 * time.Hour,
		`"1 day 2 h"`: 26 * time.Hour, `"overnight"`: 12 * time.Hour, `" Overnight "`: 12 * time.Hour, `"30 days"`: 720 * time.Hour,
	} {
		f, _, err := jobfile.Parse("case.toml", []byte(book+"[times]\nlining_dry = "+text+"\n"))
		require.NoError(t, err, text)
		assert.Equal(t, want, f.Times[work.LiningDry], text)
		delete(f.Times, work.LiningDry)
		for task, took := range f.Times {
			assert.Equal(t, work.UsualTimes()[task], took)
		}
	}
	f, _, err = fromFlags([]jobfile.Flag{
		{Name: "--height", Key: "book.height", Value: "200"}, {Name: "--width", Key: "book.width", Value: "100"},
		{Name: "--thickness", Key: "book.thickness", Value: "20"}, {Name: "--set times.cut_board", Key: "times.cut_board", Value: "2 min"},
	})
	require.NoError(t, err)
	assert.Equal(t, 2*time.Minute, f.Times[work.CutBoard])
}

func TestTimesRefused(t *testing.T) {
	for text, wrong := range map[string]string{
		`cut_board = "soon"`: `times.cut_board: "soon" is no time; give one such as "45 min"`, `cut_board = "-5 min"`: "is no time", `cut_board = -5`: "is no time",
		`cut_board = true`: "true is no time", `cut_board = [1]`: "is no time", `cut_board = ""`: "is no time", `cut_board = nan`: "is no time", `cut_board = inf`: "is no time",
		`cut_board = "25 h"`: `"25 h" is too long; give at most 24 h`, `glue_dry = "31 days"`: "give at most 30 days", `cut_board = 1e300`: "is ", `glue_dry = "99999999999999999999 days"`: "is too long",
		`glue_dry = "1,440 min"`: "can be read in two ways", `glue_dry = "1:30"`: "is no time", `glue_dry = 07:30:00`: "07:30:00 is no time",
		`hours = "Mon 9-12; Tusday 9-12"`: `times.hours: "tusday" is no day of the week`, `hours = "9-12, 11-13"`: "that overlap", `hours = "17-9"`: "ends before it begins",
		`hours = "closed"`: "never opens the bench", `hours = "Mon"`: "ends with a day without hours", `hours = "9-9:05"`: "is shorter than 15 minutes", `hours = "9-25"`: "has a time that no day has",
		`hours = "9-12:60"`: "has a time that no day has", `hours = 9`: "9 is ", `hours = "13pm-14pm"`: "has a time that no day has", `hours = "\u0007"`: "is neither a day nor hours",
		`closed = "2026-02-31"`: `times.closed: "2026-02-31" is a day that no calendar has`, `closed = "Christmas"`: `"Christmas" is no date`, `closed = 3`: "3 is no date",
		`closed = "2026-12-24 to 2026-12-01"`: "does not run from a day to a later one", `closed = "2026-12-24 to 2029-12-01"`: "within a year", `closed = "9999-01-01"`: "is too far off",
	} {
		_, _, err := jobfile.Parse("case.toml", []byte(book+"[times]\n"+text+"\n"))
		assert.ErrorContains(t, err, "case.toml:6: times.", text)
		assert.ErrorContains(t, err, wrong, text)
		assert.NotContains(t, err.Error(), "\n", text)
	}
}

// Hours are read as makers write them.
func TestHours(t *testing.T) {
	parse := func(hours string) (week [][][2]time.Time) {
		f, _, err := jobfile.Parse("case.toml", []byte(book+"[times]\nhours = '''"+hours+"'''\n"))
		require.NoError(t, err, hours)
		for day := range 7 {
			week = append(week, f.Hours.On(time.Date(2026, 11, 29+day, 0, 0, 0, 0, time.UTC)))
		}
		return week
	}
	week := parse("Mon-Fri 09:00-12:30, 13:30-17:30; Sat 09:00-12:00")
	for _, same := range []string{
		"monday to friday 9 - 12.30 and 13:30–17:30; saturday 9am-12pm", "Sat 9-12 Mon-Fri 9-12:30 1:30pm-5:30pm", "Sun closed; Mon-Fri 9-12:30; Mon - Fri 13:30-17:30; Sa 9-12",
		"Tue Wed Thu Fri Mon 9-10, 10-12:30, 13:30-17:30; sat 9-12",
	} {
		assert.Equal(t, week, parse(same), same)
	}
	assert.Equal(t, parse("9-12"), parse("every day 9-12"))
	assert.Equal(t, parse("9-12"), parse("daily 9am-12pm"))
	assert.Equal(t, parse("Sat, Sun, Mon 0-24"), parse("Sat-Mon 00:00-24:00"))
	assert.NotEqual(t, parse("9-12"), parse("Mon-Sat 9-12"))
	for _, closed := range []string{`"2026-12-24, 2026-12-26 to 2026-12-28"`, `["2026-12-24", "2026-12-26 to 2026-12-28"]`, `["2026-12-24", 2026-12-26, 2026-12-27, "2026-12-28"]`} {
		f, _, err := jobfile.Parse("case.toml", []byte(book+"[times]\nclosed = "+closed+"\n"))
		require.NoError(t, err, closed)
		for day, open := range map[int]bool{23: true, 24: false, 25: true, 26: false, 27: false, 28: false, 29: true} {
			assert.Equal(t, open, f.Hours.Open(time.Date(2026, 12, day, 0, 0, 0, 0, time.UTC)), "%s: %d", closed, day)
		}
	}
}
