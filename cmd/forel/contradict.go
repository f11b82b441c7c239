package main

import (
	"fmt"
	"strings"

	"forel/cmd/jobfile"
)

// contradictions tells of keys of a job file that flags set to two values, of
// which one would be lost.
func contradictions(flags []jobfile.Flag) []error {
	first := map[string]jobfile.Flag{}
	var out []error
	for _, f := range flags {
		was, seen := first[f.Key]
		switch {
		case !seen:
			first[f.Key] = f
		case strings.TrimSpace(was.Value) != strings.TrimSpace(f.Value):
			out = append(out, contradiction(was.Name, was.Value, f.Name, f.Value))
		}
	}
	return out
}

// contradiction is one thing given two values.
func contradiction(name, value, other, otherValue string) refusal {
	if name == other {
		return refusal{fmt.Sprintf("%s is given twice, %.40q and %.40q", name, value, otherValue), "keep one"}
	}
	return refusal{fmt.Sprintf("%s is %.40q, but %s is %.40q", name, value, other, otherValue), "keep one"}
}

// once reads words of the form key=value, each key in one spelling, and tells of
// those that are given two values.
func once(flag string, words []string) []error {
	var flags []jobfile.Flag
	for _, kv := range words {
		key, value, _ := strings.Cut(kv, "=")
		key = strings.ToLower(strings.TrimSpace(key))
		flags = append(flags, jobfile.Flag{Name: flag + " " + key, Key: key, Value: strings.ToLower(value)})
	}
	return contradictions(flags)
}
