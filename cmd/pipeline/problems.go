package pipeline

import (
	"errors"
	"fmt"
	"strings"

	"forel/cmd/jobfile"
	"forel/geometry"
	"forel/geometry/job"
	"forel/render"
)

// issue is something wrong with a flag, or with no key in particular.
func issue(key, reason, fix string) jobfile.Issue {
	return jobfile.Issue{Problem: job.Problem{Key: key, Reason: reason, Fix: fix}}
}

// refuse adds what is wrong and what would be right.
func refuse(bad jobfile.Issues, wrong, right string) jobfile.Issues {
	return append(bad, issue("", wrong, right))
}

// Problems returns what an error tells of, each problem by itself.
func Problems(err error) (out jobfile.Issues) {
	var issues jobfile.Issues
	var wrong job.Problems
	several, ok := err.(interface{ Unwrap() []error })
	switch {
	case err == nil:
	case errors.As(err, &wrong) && len(wrong) == 0:
	case ok:
		for _, one := range several.Unwrap() {
			out = append(out, Problems(one)...)
		}
	case errors.As(err, &issues):
		return issues
	case errors.As(err, &wrong):
		for _, p := range wrong {
			out = append(out, jobfile.Issue{Source: p.At.Source, Line: p.At.Line, Problem: p})
		}
	default:
		out = refuse(out, err.Error(), "")
	}
	return out
}

// Contradictions tells of keys that are given two values, of which one would be
// lost.
func Contradictions(flags []jobfile.Flag) (bad jobfile.Issues) {
	first := map[string]jobfile.Flag{}
	for _, f := range flags {
		was, seen := first[f.Key]
		switch {
		case !seen:
			first[f.Key] = f
		case strings.TrimSpace(was.Value) == strings.TrimSpace(f.Value):
		case was.Name == f.Name:
			bad = refuse(bad, fmt.Sprintf("%s is given twice, %.40q and %.40q", f.Name, was.Value, f.Value), "keep one")
		default:
			bad = refuse(bad, fmt.Sprintf("%s is %.40q, but %s is %.40q", was.Name, was.Value, f.Name, f.Value), "keep one")
		}
	}
	return bad
}

// themeOf changes lines to the colours asked for, each as line=#rrggbb. Inside cuts that
// have the colour of outlines keep to it.
func themeOf(colours []string, theme render.Theme) (render.Theme, jobfile.Issues) {
	var bad jobfile.Issues
	var flags []jobfile.Flag
	inside := theme[render.InsideCuts].Color
	follows := inside == theme[render.Cutting].Color
	for _, kv := range colours {
		layer, hex, _ := strings.Cut(kv, "=")
		key := strings.ToLower(strings.TrimSpace(layer))
		flags = append(flags, jobfile.Flag{Name: "--colour " + key, Key: key, Value: strings.ToLower(hex)})
		colour, err := render.ParseColor(hex)
		if err == nil {
			err = theme.SetColor(layer, colour)
		}
		if err != nil {
			bad = append(bad, issue(fmt.Sprintf("--colour %.40q", kv), err.Error(), ""))
		}
	}
	if follows && theme[render.InsideCuts].Color == inside {
		theme[render.InsideCuts] = theme[render.Cutting]
	}
	return theme, append(bad, Contradictions(flags)...)
}

// lineOf reads the width of lines for a machine; nothing asked for is 0.
func lineOf(text string) (geometry.Length, jobfile.Issues) {
	if text == "" {
		return 0, nil
	}
	const least, most = jobfile.LeastLine, jobfile.MostLine
	l, err := geometry.ParseLength(text, geometry.MM)
	switch {
	case err != nil:
		return 0, jobfile.Issues{issue("--line", err.Error(), "")}
	case l < least || l > most:
		return 0, jobfile.Issues{issue("--line", fmt.Sprintf("a line of %.4g mm", l.MM()), fmt.Sprintf("give %.4g to %.4g mm", least.MM(), most.MM()))}
	}
	return l, nil
}

// counted says how many there are.
func counted(n int, one, many string) string {
	if n == 1 {
		return one
	}
	return fmt.Sprintf("%d %s", n, many)
}
