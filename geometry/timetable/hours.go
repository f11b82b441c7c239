package timetable

import (
	"cmp"
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"time"

	"forel/geometry/job"
	"forel/geometry/wording"
)

// leastOpen is how long the bench must be open at a stretch, in minutes.
const leastOpen = 15

// span is part of a day, in minutes from midnight.
type span struct{ from, to int }

// Hours are when the bench is open: each week alike, but for days when it is closed.
type Hours struct {
	week   [7][]span // from Sunday
	closed []dates
	text   string
}

// dates are days from the first to the last, both in it.
type dates struct{ first, last time.Time }

// UsualHours are taken where a maker tells none (common practice, no source).
const UsualHours = "daily 09:00-12:30, 13:30-17:30"

// hoursFix says how hours are written.
const hoursFix = `write them like "Mon-Fri 09:00-12:30, 13:30-17:30; Sat 9-12", or "daily 18:00-21:00"`

var (
	hourToken = regexp.MustCompile(`^(\d{1,2})(?:[:.](\d\d))?(am|pm)?-(\d{1,2})(?:[:.](\d\d))?(am|pm)?$`)
	dayToken  = regexp.MustCompile(`^([a-z]+)(?:-([a-z]+))?$`)
	dashes    = regexp.MustCompile(`\s*(?:-|–|—|\bto\b)\s*`)
	halves    = regexp.MustCompile(`(\d)\s+(am|pm)\b`)
)

// ParseHours reads the hours of the bench: days of the week, each followed by when it is
// open. Without days they are for all seven. The error is a job.Problem without a key.
func ParseHours(text string) (Hours, error) {
	h := Hours{text: strings.Join(strings.Fields(text), " ")}
	wrong := func(value, reason string) (Hours, error) {
		return Hours{}, job.Problem{Value: wording.Quote(value), Reason: reason, Fix: hoursFix}
	}
	s := halves.ReplaceAllString(dashes.ReplaceAllString(strings.ToLower(h.text), "-"), "$1$2")
	days, told := everyDay(), true // told: the days have hours already
	for _, token := range strings.FieldsFunc(s, func(c rune) bool { return strings.ContainsRune(" ,;&\t", c) }) {
		if m := dayToken.FindStringSubmatch(token); m != nil {
			if token == "and" {
				continue
			}
			if token == "closed" {
				told = true
				continue
			}
			more, ok := daysOf(m[1], m[2])
			if !ok {
				return wrong(token, "is no day of the week")
			}
			if told {
				days, told = nil, false
			}
			for _, d := range more {
				if !slices.Contains(days, d) {
					days = append(days, d)
				}
			}
			continue
		}
		m := hourToken.FindStringSubmatch(token)
		if m == nil {
			return wrong(token, "is neither a day nor hours")
		}
		to, ok := minute(m[4], m[5], m[6])
		from, ok2 := minute(m[1], m[2], m[3])
		switch {
		case !ok || !ok2:
			return wrong(token, "has a time that no day has")
		case from >= to:
			return wrong(token, "ends before it begins; hours past midnight are two, one on each day")
		case to-from < leastOpen:
			return wrong(token, fmt.Sprintf("is shorter than %d minutes", leastOpen))
		}
		for _, d := range days {
			h.week[d] = append(h.week[d], span{from, to})
		}
		told = true
	}
	if !told {
		return wrong(text, "ends with a day without hours")
	}
	open := false
	for d := range h.week {
		slices.SortFunc(h.week[d], func(a, b span) int { return cmp.Compare(a.from, b.from) })
		for i := 1; i < len(h.week[d]); i++ {
			if h.week[d][i].from < h.week[d][i-1].to {
				return wrong(text, "has hours on "+time.Weekday(d).String()+" that overlap")
			}
		}
		h.week[d] = joined(h.week[d])
		open = open || len(h.week[d]) > 0
	}
	if !open {
		return wrong(text, "never opens the bench")
	}
	return h, nil
}

// joined returns spans with those that touch as one.
func joined(all []span) (out []span) {
	for _, s := range all {
		if n := len(out); n > 0 && out[n-1].to == s.from {
			out[n-1].to = s.to
			continue
		}
		out = append(out, s)
	}
	return out
}

func everyDay() []int { return []int{0, 1, 2, 3, 4, 5, 6} }

// daysOf returns the days from one to another; without the other, one or all.
func daysOf(first, last string) (days []int, ok bool) {
	if first == "daily" || first == "every" || first == "day" {
		return everyDay(), last == ""
	}
	find := func(name string) int {
		return slices.IndexFunc(everyDay(), func(d int) bool {
			full := strings.ToLower(time.Weekday(d).String())
			return len(name) >= 2 && strings.HasPrefix(full+"s", name)
		})
	}
	a := find(first)
	if last == "" {
		return []int{a}, a >= 0
	}
	b := find(last)
	if a < 0 || b < 0 {
		return nil, false
	}
	for d := a; ; d = (d + 1) % 7 {
		if days = append(days, d); d == b {
			return days, true
		}
	}
}

// minute reads a time of day; 24:00 ends it.
func minute(hour, minutes, half string) (int, bool) {
	h, _ := strconv.Atoi(hour)
	m, _ := strconv.Atoi(minutes)
	if half != "" {
		if h < 1 || h > 12 {
			return 0, false
		}
		if h %= 12; half == "pm" {
			h += 12
		}
	}
	at := 60*h + m
	return at, m < 60 && at <= 24*60
}

// Alike tells whether all days of the week have the same hours.
func (h Hours) Alike() bool {
	return !slices.ContainsFunc(h.week[:], func(s []span) bool { return !slices.Equal(s, h.week[0]) })
}

// String returns the hours as the maker wrote them.
func (h Hours) String() string { return h.text }

// longest returns how long the bench is open at a stretch, in minutes.
func (h Hours) longest() (most int) {
	for _, day := range h.week {
		for _, s := range day {
			most = max(most, s.to-s.from)
		}
	}
	return most
}

// Limits of dates.
const (
	firstYear  = 1970
	lastYear   = 2199
	mostClosed = 100 // entries
	mostDays   = 366 // of one entry
)

// Closed returns the hours with days on which the bench is closed: dates, or "2026-12-24
// to 2027-01-06". The error is a job.Problem without a key.
func (h Hours) Closed(entries []string) (Hours, error) {
	if len(entries) > mostClosed {
		return h, job.Problem{Reason: fmt.Sprintf("%d entries are too many", len(entries)), Fix: fmt.Sprintf("give at most %d", mostClosed)}
	}
	h.closed = nil
	for _, e := range entries {
		first, last, two := strings.Cut(e, " to ")
		if !two {
			last = first
		}
		a, err := ParseDate(first)
		if err != nil {
			return h, err
		}
		b, err := ParseDate(last)
		if err != nil {
			return h, err
		}
		if b.Before(a) || b.Sub(a) > mostDays*24*time.Hour {
			return h, job.Problem{Value: wording.Quote(e), Reason: "does not run from a day to a later one within a year", Fix: `write it like "2026-12-24 to 2027-01-06"`}
		}
		h.closed = append(h.closed, dates{a, b})
	}
	return h, nil
}

// ParseDate reads a date as ISO 8601 has it: 2026-12-01. The error is a job.Problem
// without a key.
func ParseDate(text string) (time.Time, error) {
	s := strings.TrimSpace(text)
	t, err := time.Parse(time.DateOnly, s)
	fix := "write year, month and day like 2026-12-01"
	switch {
	case err != nil && isoDate.MatchString(s):
		return t, job.Problem{Value: wording.Quote(text), Reason: "is a day that no calendar has", Fix: fix}
	case err != nil:
		return t, job.Problem{Value: wording.Quote(text), Reason: "is no date", Fix: fix}
	case t.Year() < firstYear || t.Year() > lastYear:
		return t, job.Problem{Value: wording.Quote(text), Reason: "is too far off", Fix: fmt.Sprintf("give a year from %d to %d", firstYear, lastYear)}
	}
	return t, nil
}

var isoDate = regexp.MustCompile(`^\d{4}-\d\d-\d\d$`)

// on returns when the bench is open on a day.
func (h Hours) on(day time.Time) []span {
	for _, c := range h.closed {
		if !day.Before(c.first) && !day.After(c.last) {
			return nil
		}
	}
	return h.week[day.Weekday()]
}

// Open tells whether the bench is open on a day.
func (h Hours) Open(day time.Time) bool { return len(h.on(day)) > 0 }

// On returns when the bench opens and closes on a day.
func (h Hours) On(day time.Time) (out [][2]time.Time) {
	for _, s := range h.on(day) {
		out = append(out, [2]time.Time{day.Add(time.Duration(s.from) * time.Minute), day.Add(time.Duration(s.to) * time.Minute)})
	}
	return out
}

// Closes tells whether there are days on which the bench is closed out of turn.
func (h Hours) Closes() bool { return len(h.closed) > 0 }
