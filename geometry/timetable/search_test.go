package timetable

import (
	"context"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// anyHours draws hours of a bench.
func anyHours(t *rapid.T) Hours {
	text := rapid.SampledFrom([]string{UsualHours, "daily 9-12", "Mon-Fri 09:00-12:30, 13:30-17:30; Sat 9-12", "Sat Sun 10:00-10:45", "Wed 19:00-22:00", "daily 0-24", "Mon 9-12, 13-16; Tue-Thu 18:00-18:20"}).Draw(t, "hours")
	h, err := ParseHours(text)
	require.NoError(t, err)
	if rapid.Bool().Draw(t, "closed") {
		h, err = h.Closed([]string{"2026-12-02", "2026-12-05 to 2026-12-08"})
		require.NoError(t, err)
	}
	return h
}

// anyCases draws a few cases.
func anyCases(t *rapid.T, most, blocks, longest int) (cases []Case) {
	for range rapid.IntRange(1, most).Draw(t, "cases") {
		var c Case
		for range rapid.IntRange(1, blocks).Draw(t, "blocks") {
			b := Block{Parts: []Part{{Work: rapid.IntRange(0, longest).Draw(t, "work")}}}
			if rapid.Bool().Draw(t, "dries") {
				b.Dry = rapid.SampledFrom([]int{10, 45, 120, 720}).Draw(t, "drying")
			}
			c.Blocks = append(c.Blocks, b)
		}
		cases = append(cases, c)
	}
	return cases
}

var start = time.Date(2026, 12, 1, 8, 20, 0, 0, time.UTC)

// open tells whether the bench is open from one time to another, by looking at each minute.
func open(h Hours, from, to time.Time) bool {
	for t := from; t.Before(to); t = t.Add(time.Minute) {
		day := t.Truncate(24 * time.Hour)
		minute := int(t.Sub(day) / time.Minute)
		ok := false
		for _, s := range h.on(day) {
			ok = ok || minute >= s.from && minute < s.to
		}
		if !ok {
			return false
		}
	}
	return true
}

// A timetable keeps what it promises: all work is done once and in order, nothing before
// it is dry, no two at a time, only while the bench is open; nobody is told that they could
// be earlier than they can.
func TestTimetableHolds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h, cases := anyHours(t), anyCases(t, 5, 5, 90)
		got, err := Make(context.Background(), cases, h, start)
		require.NoError(t, err)
		hands := start
		next, ready, work := make([]int, len(cases)), make([]time.Time, len(cases)), make([]int, len(cases))
		for _, e := range got.Entries {
			b := got.Cases[e.Case].Blocks[e.Block]
			require.Equal(t, next[e.Case], e.Block, "the order of the case")
			require.False(t, e.From.Before(hands), "two things at a time")
			require.False(t, e.From.Before(ready[e.Case]), "not dry")
			require.True(t, open(h, e.From, e.To), "%v to %v: the bench is closed", e.From, e.To)
			require.Equal(t, time.Duration(b.Work())*time.Minute, e.To.Sub(e.From))
			require.Equal(t, b.Dry > 0, !e.Dry.IsZero())
			next[e.Case]++
			work[e.Case] += b.Work()
			hands, ready[e.Case] = e.To, e.To.Add(time.Duration(b.Dry)*time.Minute)
		}
		for i, c := range cases {
			require.Equal(t, c.Work(), work[i])
			require.Len(t, got.Cases[i].Blocks, next[i])
			require.Equal(t, ready[i], got.Ready[i].Done)
			require.False(t, got.Ready[i].Over.Before(got.Ready[i].Done))
			alone, err := Make(context.Background(), []Case{c}, h, start)
			require.NoError(t, err)
			require.False(t, got.Ready[i].Done.Before(alone.Ready[0].Done), "earlier than alone")
		}
		require.False(t, got.Last().Before(got.Earliest), "earlier than can be")
		again, _ := Make(context.Background(), cases, h, start)
		require.Equal(t, got, again)
	})
}

// minutes is the bench by the minute: how long it stays open from each, midnight apart.
// Where it is closed, when it opens next, below zero. It is reckoned from the end.
type minutes []int

func byTheMinute(h Hours, days int) minutes {
	m := make(minutes, days*24*60)
	opens := len(m)
	first := start.Truncate(24 * time.Hour)
	for i := len(m) - 1; i >= 0; i-- {
		at := first.Add(time.Duration(i) * time.Minute)
		switch {
		case !open(h, at, at.Add(time.Minute)):
			m[i] = -opens
			continue
		case i+1 < len(m) && m[i+1] > 0 && (i+1)%(24*60) > 0:
			m[i] = 1 + m[i+1]
		default:
			m[i] = 1
		}
		opens = i
	}
	return m
}

// fit returns when work can begin at the earliest.
func (m minutes) fit(at, work int) int {
	for {
		switch run := m[at]; {
		case run < 0:
			at = -run
		case run < work:
			at += run
		default:
			return at
		}
	}
}

// exhaustive returns when the last case is ready at the earliest, by trying every order
// of all blocks, each begun as early as its order lets it.
func exhaustive(m minutes, from int, cases []Case) int {
	best := 1 << 60
	next, ready := make([]int, len(cases)), make([]int, len(cases))
	for i := range ready {
		ready[i] = from
	}
	var goOn func(hands, last int)
	goOn = func(hands, last int) {
		left := false
		for i := range cases {
			if next[i] == len(cases[i].Blocks) {
				continue
			}
			left = true
			b, was := cases[i].Blocks[next[i]], ready[i]
			at := m.fit(max(hands, was), b.Work())
			next[i]++
			ready[i] = at + b.Work() + b.Dry
			goOn(at+b.Work(), max(last, ready[i]))
			next[i]--
			ready[i] = was
		}
		if !left {
			best = min(best, last)
		}
	}
	goOn(from, from)
	return best
}

// Of small cases every order is tried: one case is ready as early as can be, and of several
// none is ever told to be ready before that, nor that it could be.
func TestAgainstEveryOrder(t *testing.T) {
	late, tried, told := 0, 0, 0
	rapid.Check(t, func(t *rapid.T) {
		h, cases := anyHours(t), anyCases(t, 3, 3, 90)
		got, err := Make(context.Background(), cases, h, start)
		require.NoError(t, err)
		midnight := start.Truncate(24 * time.Hour)
		first := int(start.Sub(midnight) / time.Minute)
		want := midnight.Add(time.Duration(exhaustive(byTheMinute(h, 90), first, got.Cases)) * time.Minute)
		require.False(t, got.Last().Before(want))
		require.False(t, got.Earliest.After(want), "the bound is above what can be")
		if len(cases) == 1 {
			require.Equal(t, want, got.Last())
			require.Equal(t, want, got.Earliest)
		}
		tried++
		if got.Last().After(want) {
			late++
		}
		if got.Earliest.Equal(want) {
			told++
		}
	})
	t.Logf("of %d, %d later than the best order; %d with the bound met", tried, late, told)
	assert.LessOrEqual(t, late, 1+tried/100, "one in a hundred may be later")
}
