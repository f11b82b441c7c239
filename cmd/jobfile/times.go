package jobfile

import (
	"maps"
	"strings"
	"time"

	"forel/geometry/job"
	"forel/geometry/timetable"
	"forel/geometry/work"
)

// The keys of [times] that are no task's.
var (
	benchHours = job.Setting{Key: "times.hours", What: "when the bench is open"}
	benchDays  = job.Setting{Key: "times.closed", What: "days when it is closed"}
)

// timesSettings are the keys of [times]; what they hold is read by times.
func timesSettings() (out []job.Setting) {
	for _, t := range work.TaskTimes {
		out = append(out, job.Setting{Key: timeKey(t), What: t.What, Max: mostTime(t).Minutes()})
	}
	return append(out, benchHours, benchDays)
}

func timeKey(t work.TaskTime) string { return "times." + string(t.Task) }

func mostTime(t work.TaskTime) time.Duration {
	if t.Dries {
		return work.MostDrying
	}
	return work.MostWork
}

// usualTimes is shared by all jobs that have no times of their own.
var usualTimes = work.UsualTimes()

// date reads a day of the calendar (ISO 8601, RFC 3339 full-date), in quotes or without.
func (r *reader) date(key string) string {
	v, ok := r.get(key)
	if _, err := time.Parse(time.DateOnly, v.text); ok && !blank(v) && err != nil {
		r.reject(v, "is no date", `write it as in 2026-11-28`)
	}
	return v.text
}

// times reads how long work and drying take, and when the bench is open. What is left out
// is as usual.
func (r *reader) times() (work.Times, timetable.Hours) {
	times, own := usualTimes, false
	for _, t := range work.TaskTimes {
		v, ok := r.get(timeKey(t))
		if !ok {
			continue
		}
		d, err := work.ParseDuration(v.text, mostTime(t))
		if v.kind != textKind && v.kind != numberKind {
			r.reject(v, "is no time", `give one such as "45 min" (`+t.What+")")
		} else if err != nil {
			r.tell(v.at, problem(err))
		} else {
			if !own {
				times, own = maps.Clone(usualTimes), true
			}
			times[t.Task] = d
		}
	}
	hours, err := timetable.ParseHours(timetable.UsualHours)
	if err != nil {
		panic(err)
	}
	if v, ok := r.get(benchHours.Key); ok && !blank(v) {
		own, err := timetable.ParseHours(v.text)
		if v.kind != textKind {
			r.reject(v, "is no text", `write hours like "`+timetable.UsualHours+`"`)
		} else if err != nil {
			r.tell(v.at, problem(err))
		} else {
			hours = own
		}
	}
	if v, ok := r.get(benchDays.Key); ok && !blank(v) {
		var entries []string
		for _, i := range append([]value{v}, v.items...) {
			for _, e := range strings.FieldsFunc(i.text, func(c rune) bool { return c == ',' || c == ';' }) {
				entries = append(entries, strings.TrimSpace(e))
			}
		}
		if v.kind == tableKind || v.kind == numberKind || v.text == "true" || v.text == "false" {
			r.reject(v, "is no date", `write days like "2026-12-24 to 2027-01-06"`)
		} else if own, err := hours.Closed(entries); err != nil {
			r.tell(v.at, problem(err))
		} else {
			hours = own
		}
	}
	return times, hours
}
