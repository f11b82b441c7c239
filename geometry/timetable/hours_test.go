package timetable

import (
	"errors"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry/job"
)

// anyWords draws text that looks like hours, and text that does not.
func anyWords(t *rapid.T) string {
	words := rapid.SampledFrom([]string{"Mon", "tuesday", "-", "–", "to", ",", ";", "9", "09:00", "9.30", "12:60", "24:00", "25", "9-12", "13:30-17:30", "5pm", "9am-5pm", "closed", "daily", "every day", "and", "2026-12-01", "\x00", "☃", "-5", "1e9"})
	return strings.Join(rapid.SliceOfN(rapid.OneOf(words, rapid.String()), 0, 8).Draw(t, "words"), rapid.SampledFrom([]string{" ", "", ";"}).Draw(t, "between"))
}

// Whatever stands there is read as hours that open sometime and are in order, or refused
// in one line that says what would do.
func TestAnyHours(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h, err := ParseHours(anyWords(t))
		if err != nil {
			var p job.Problem
			require.True(t, errors.As(err, &p))
			require.NotEmpty(t, p.Fix)
			require.NotContains(t, err.Error(), "\n")
			return
		}
		open := 0
		for _, day := range h.week {
			last := -1
			for _, s := range day {
				require.Greater(t, s.from, last, "overlaps or touches")
				require.GreaterOrEqual(t, s.to-s.from, leastOpen)
				require.LessOrEqual(t, s.to, 24*60)
				last, open = s.to, open+s.to-s.from
			}
		}
		require.Positive(t, open)
		again, err := ParseHours(h.String())
		require.NoError(t, err)
		require.Equal(t, h, again)
	})
}

// A date is one that the calendar of the standard library has, and no other (ISO 8601).
func TestAnyDate(t *testing.T) {
	for text, ok := range map[string]bool{"2026-12-01": true, " 2028-02-29 ": true, "2027-02-29": false, "2026-02-31": false, "2026-13-01": false, "2026-00-10": false, "01.12.2026": false, "2026-12-1": false, "1969-12-31": false, "2200-01-01": false, "": false, "2026-12-01T10:00": false} {
		d, err := ParseDate(text)
		require.Equal(t, ok, err == nil, text)
		if ok {
			require.Equal(t, strings.TrimSpace(text), d.Format(time.DateOnly))
		}
	}
}
