package work

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"time"

	"forel/geometry/job"
	"forel/geometry/wording"
)

// Limits of how long a task can take, both allowed.
const (
	MostWork   = 24 * time.Hour
	MostDrying = 30 * 24 * time.Hour
)

// nights is the word for Overnight.
const nights = "overnight"

var duration = regexp.MustCompile(`^(?:(\d+(?:[.,]\d+)?) *(?:d|days?))?,? *(?:(\d+(?:[.,]\d+)?) *(?:h|hrs?|hours?))?,? *(?:(\d+(?:[.,]\d+)?) *(?:m|mins?|minutes?))?$`)

var thousands = regexp.MustCompile(`[1-9]\d{0,2},\d{3}\b`) // a decimal comma, or one between thousands

// ParseDuration reads a time as a maker types it, no longer than most: "45 min", "4 h",
// "1 h 30 min", "2 days" or "overnight"; a bare number is in minutes. The error is a
// job.Problem without a key.
func ParseDuration(text string, most time.Duration) (time.Duration, error) {
	s := strings.ToLower(strings.Join(strings.Fields(text), " "))
	d := Overnight
	if _, err := strconv.ParseFloat(s, 64); err == nil {
		s += " min"
	}
	if thousands.MatchString(s) {
		return 0, job.Problem{Value: wording.Quote(text), Reason: "can be read in two ways", Fix: "write it without a comma"}
	}
	if s != nights {
		m := duration.FindStringSubmatch(s)
		if m == nil || m[1]+m[2]+m[3] == "" {
			return 0, job.Problem{Value: wording.Quote(text), Reason: "is no time", Fix: `give one such as "45 min", "4 h", "1 h 30 min" or "overnight"; a bare number is in minutes`}
		}
		d = 0
		for i, unit := range []time.Duration{24 * time.Hour, time.Hour, time.Minute} {
			n, _ := strconv.ParseFloat(strings.Replace("0"+m[i+1], ",", ".", 1), 64)
			d += time.Duration(min(n*float64(unit), float64(most+unit))) // what is too long is no longer than need be
		}
	}
	if d > most {
		return 0, job.Problem{Value: wording.Quote(text), Reason: "is too long", Fix: "give at most " + Show(most)}
	}
	return d, nil
}

// Show writes a time as a maker reads it, to the minute: "1 h 30 min", "2 days".
func Show(d time.Duration) string {
	const day = 24 * time.Hour
	minutes := Minutes(d)
	switch {
	case d >= 2*day && d%day == 0:
		return fmt.Sprintf("%d days", d/day)
	case minutes < 60:
		return fmt.Sprintf("%d min", minutes)
	case minutes%60 == 0:
		return fmt.Sprintf("%d h", minutes/60)
	}
	return fmt.Sprintf("%d h %d min", minutes/60, minutes%60)
}

// Minutes returns a time in minutes, a part of one as a whole.
func Minutes(d time.Duration) int { return int((d + time.Minute - 1) / time.Minute) }
