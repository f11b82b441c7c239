package timetable

import (
	"sort"
	"time"
)

// calendar is the hours of a bench from a first day on, in minutes from its midnight. It
// grows as it is asked. Midnight closes the bench.
type calendar struct {
	hours Hours
	first time.Time
	days  int    // looked at
	open  []span // when it is open, in order
	until []int  // how long it was open until the end of each
	from  int    // nothing is done before
	hint  int    // the opening that was asked for last
}

func newCalendar(h Hours, start time.Time) *calendar {
	first := time.Date(start.Year(), start.Month(), start.Day(), 0, 0, 0, 0, time.UTC)
	return &calendar{hours: h, first: first, from: int(start.Sub(first) / time.Minute)}
}

// grow looks at one more day.
func (c *calendar) grow() {
	for _, s := range c.hours.on(c.first.AddDate(0, 0, c.days)) {
		s.from, s.to = s.from+c.days*minutesADay, s.to+c.days*minutesADay
		if s.from = max(s.from, c.from); s.from >= s.to {
			continue
		}
		before := 0
		if n := len(c.open); n > 0 {
			before = c.until[n-1]
		}
		c.open, c.until = append(c.open, s), append(c.until, before+s.to-s.from)
	}
	c.days++
}

const minutesADay = 24 * 60

// at returns the index of the opening that a minute is in, or of the next.
func (c *calendar) at(minute int) int {
	for c.days*minutesADay <= minute || len(c.open) == 0 || c.open[len(c.open)-1].to <= minute {
		c.grow()
	}
	if h := c.hint; h >= len(c.open) || c.open[h].to <= minute || h > 0 && c.open[h-1].to > minute {
		c.hint = sort.Search(len(c.open), func(i int) bool { return c.open[i].to > minute })
	}
	return c.hint
}

// fit returns when work of some minutes can begin at the earliest, and be done without
// being put down. It must be no longer than the bench is open at a stretch.
func (c *calendar) fit(minute, work int) int {
	for i := c.at(minute); ; i++ {
		for i >= len(c.open) {
			c.grow()
		}
		if at := max(minute, c.open[i].from); at+work <= c.open[i].to {
			return at
		}
	}
}

// full returns when an amount of work is done that begins at a minute, all openings
// filled: no order of work is done earlier.
func (c *calendar) full(minute, work int) int {
	if work == 0 {
		return minute
	}
	i := c.at(minute)
	want := work + max(minute, c.open[i].from) - c.open[i].from
	if i > 0 {
		want += c.until[i-1]
	}
	for c.until[len(c.until)-1] < want {
		c.grow()
	}
	i = sort.SearchInts(c.until, want)
	return c.open[i].to - (c.until[i] - want)
}

// over returns when something that is ready at a minute can be handed over.
func (c *calendar) over(minute int) int {
	return max(minute, c.open[c.at(max(minute-1, 0))].from)
}

// time returns a minute as a time.
func (c *calendar) time(minute int) time.Time {
	return c.first.Add(time.Duration(minute) * time.Minute)
}
