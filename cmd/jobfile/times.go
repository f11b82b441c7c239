package jobfile

import (
	"maps"
	"strings"
	"time"

	"forel/geometry/job"
	"forel/geometry/timetable"
	"forel/geometry/work"
)

// timesKeys are the keys of [times]: how long work and drying take, and when the bench is
// open.
func (r *reader) timesKeys(f *File) (keys []kept) {
	own := false
	for _, t := range work.TaskTimes {
		most := work.MostWork
		if t.Dries {
			most = work.MostDrying
		}
		keys = append(keys, kept{job.Setting{Key: "times." + string(t.Task), What: t.What, Max: most.Minutes()}, func(v value) {
			d, err := work.ParseDuration(v.text, most)
			if v.kind != textKind && v.kind != numberKind {
				r.reject(v, "is no time", `give one such as "45 min" (`+t.What+")")
			} else if err != nil {
				r.tell(v.at, problem(err))
			} else {
				if !own {
					f.Times, own = maps.Clone(f.Times), true
				}
				f.Times[t.Task] = d
			}
		}})
	}
	open := func(own timetable.Hours, err error, v value) {
		if err != nil {
			r.tell(v.at, problem(err))
		} else {
			f.Hours = own
		}
	}
	return append(keys, kept{job.Setting{Key: "times.hours", What: "when the bench is open"}, func(v value) {
		if v.kind != textKind {
			r.reject(v, "is no text", `write hours like "`+timetable.UsualHours+`"`)
		} else if !blank(v) {
			own, err := timetable.ParseHours(v.text)
			open(own, err, v)
		}
	}}, kept{job.Setting{Key: "times.closed", What: "days when it is closed"}, func(v value) {
		var entries []string
		for _, i := range append([]value{v}, v.items...) {
			for _, e := range strings.FieldsFunc(i.text, func(c rune) bool { return c == ',' || c == ';' }) {
				entries = append(entries, strings.TrimSpace(e))
			}
		}
		if v.kind == tableKind || v.kind == numberKind || v.text == "true" || v.text == "false" {
			r.reject(v, "is no date", `write days like "2026-12-24 to 2027-01-06"`)
		} else if !blank(v) {
			own, err := f.Hours.Closed(entries)
			open(own, err, v)
		}
	}})
}

// usualTimes is shared by all jobs that have no times of their own.
var usualTimes = work.UsualTimes()

// usualHours are those of a bench where nothing is said.
func usualHours() timetable.Hours {
	hours, err := timetable.ParseHours(timetable.UsualHours)
	if err != nil {
		panic(err)
	}
	return hours
}

// date reads a day of the calendar (ISO 8601, RFC 3339 full-date), in quotes or without.
func (r *reader) date(key string) string {
	v, ok := r.get(key)
	if _, err := time.Parse(time.DateOnly, v.text); ok && !blank(v) && err != nil {
		r.reject(v, "is no date", `write it as in 2026-11-28`)
	}
	return v.text
}
