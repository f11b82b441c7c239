package work_test

import (
	"errors"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry/job"
	"forel/geometry/work"
)

// What is shown of a time is read as that time again.
func TestTimesAreReadBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := time.Duration(rapid.IntRange(0, int(work.MostDrying/time.Minute)).Draw(t, "minutes")) * time.Minute
		got, err := work.ParseDuration(work.Show(d), work.MostDrying)
		require.NoError(t, err)
		require.Equal(t, d, got, work.Show(d))
	})
}

// Whatever stands there is a time within its limits, or refused in one line that says what
// would do.
func TestAnyTime(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.OneOf(rapid.String(), rapid.StringMatching(`[0-9.,]{0,5} ?(h|min|d|days)? ?[0-9.,]{0,25} ?(h|min|m)?`)).Draw(t, "text")
		d, err := work.ParseDuration(text, work.MostWork)
		if err == nil {
			require.True(t, d >= 0 && d <= work.MostWork, "%q: %v", text, d)
			return
		}
		var p job.Problem
		require.True(t, errors.As(err, &p))
		require.NotEmpty(t, p.Fix)
		require.NotContains(t, err.Error(), "\n")
	})
}
