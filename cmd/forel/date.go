package main

import (
	"os"
	"strconv"
	"time"

	"forel/cmd/jobfile"
)

// dateVariable is set where files are to have a date, in seconds since 1970:
// the SOURCE_DATE_EPOCH specification of reproducible-builds.org.
const dateVariable = "SOURCE_DATE_EPOCH"

// lastDate is the end of the year 9999: a date in a PDF has four figures of year.
const lastDate = 253402300799

// fileDate returns the date that files bear: none, the zero time, where the
// variable is not set or empty. The clock is never asked.
func fileDate() (time.Time, jobfile.Issues) {
	text := os.Getenv(dateVariable)
	if text == "" {
		return time.Time{}, nil
	}
	seconds, err := strconv.ParseUint(text, 10, 63)
	if err != nil || seconds > lastDate {
		return time.Time{}, refuse(dateVariable+": "+strconv.Quote(text[:min(len(text), 40)])+" is no number of seconds since 1970",
			"give a whole number such as 1700000000, or take the variable away")
	}
	return time.Unix(int64(seconds), 0).UTC(), nil
}
