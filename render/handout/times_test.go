package handout_test

import (
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/geometry/timetable"
	"forel/geometry/work"
)

var (
	shownTime = regexp.MustCompile(`(\d+ days|\d+ h(?: \d+ min)?|\d+ min)`)
	ofStep    = regexp.MustCompile(`Time: (.*?)\. `)
	dried     = regexp.MustCompile(`dries (.*?) at least`)
)

// minutes adds up the times that a text names.
func minutes(t *testing.T, text string) (sum int) {
	t.Helper()
	for _, s := range shownTime.FindAllString(text, -1) {
		d, err := work.ParseDuration(s, work.MostDrying)
		require.NoError(t, err, s)
		sum += work.Minutes(d)
	}
	return sum
}

// The steps take together what the timetable has of the same job, and dry as long; a maker's
// own times go before the usual ones. The short handout has the same work.
func TestTimesAreThoseOfTheTimetable(t *testing.T) {
	own := work.UsualTimes()
	own[work.CutBoard], own[work.LiningDry], own[work.TurnIn] = 17*time.Minute, 5*time.Hour, 90*time.Second
	for i, name := range []string{"lined last, hole", "wrap of paper, hole", "ordinary", "unlined"} {
		p := subjects()[name]
		for k, times := range []work.Times{nil, own} {
			if testing.Short() && i != k {
				continue
			}
			o := on(t, "A4")
			o.Times = times
			if times == nil {
				times = work.UsualTimes()
			}
			want := timetable.Of("", p.Steps, times)
			text := wordsOn(pagesOf(name, p, o, false))
			work, drying := 0, 0
			for _, m := range ofStep.FindAllStringSubmatch(text, -1) {
				for _, d := range dried.FindAllStringSubmatch(m[1], -1) {
					drying += minutes(t, d[1])
				}
				work += minutes(t, dried.ReplaceAllString(m[1], ""))
			}
			assert.Equal(t, want.Drying(), drying, name)
			assert.InDelta(t, want.Work(), work, float64(len(p.Steps)), "%s: %s", name, text) // parts of a minute are rounded step by step
			all := regexp.MustCompile(`All steps together: (.*?) of work`).FindStringSubmatch(text)
			assert.InDelta(t, want.Work(), minutes(t, all[1]), float64(len(p.Steps)), name)
			assert.Equal(t, 1, strings.Count(text, "drying times and ways of working are common practice without a source"))
			o.Short = true
			assert.Contains(t, wordsOn(pagesOf(name, p, o, false)), all[0], name)
		}
	}
}

// What dries overnight is told with its step.
func TestOvernight(t *testing.T) {
	p := subjects()["ordinary"]
	o := on(t, "A4")
	text := wordsOn(pagesOf("ordinary", p, o, false))
	m := regexp.MustCompile(`Overnight dry: the paste of the linings \(step (\d+)\); `).FindStringSubmatch(text)
	require.NotNil(t, m, text)
	step, err := strconv.Atoi(m[1])
	require.NoError(t, err)
	assert.Equal(t, "Line the boards", p.Steps[step-1].Title)
	o.Times = work.UsualTimes()
	o.Times[work.LiningDry] = time.Hour
	assert.NotContains(t, wordsOn(pagesOf("ordinary", p, o, false)), "the paste of the linings (step")
}
