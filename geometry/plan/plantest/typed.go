package plantest

import (
	"fmt"
	"regexp"
	"strconv"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/plan"
)

// The words of a fix that name a change.
var (
	limit = regexp.MustCompile(`^at (most|least) (\d+(?:\.\d+)?) (mm|in)$`)
	word  = regexp.MustCompile(`^give "([^"]+)"$`)
)

// Typed changes settings as the fix of a problem says, read from the words that a maker
// sees, and by so much more; by less where that is below zero. It is an error where no
// change is named.
func Typed(settings job.Settings, p job.Problem, more geometry.Length) error {
	s, known := settings.Find(p.Key)
	if w := word.FindStringSubmatch(p.Fix); w != nil && s.Word != nil {
		*s.Word = w[1]
		return nil
	}
	w := limit.FindStringSubmatch(p.Fix)
	if w == nil || !known || s.Length == nil && s.Readings == nil {
		return fmt.Errorf("no change is named by %w", p)
	}
	n, err := strconv.ParseFloat(w[2], 64)
	l := geometry.Length(n)
	if w[3] == "in" {
		l *= geometry.Inch
	}
	if w[1] == "most" {
		more = -more
	}
	l += more
	if s.Readings != nil {
		*s.Readings = job.Readings{l}
	} else {
		*s.Length = l
	}
	return err
}

// rounds is how often a maker is asked to change something before giving up.
const rounds = 6

// Mended types in what each refusal of a job names, until the job is accepted.
func Mended(j plan.Job) error {
	for range rounds {
		_, refused, _ := j.Check()
		if len(refused) == 0 {
			return nil
		}
		for _, p := range refused {
			if err := Typed(j.Settings(), p, 0); err != nil {
				return err
			}
		}
	}
	if _, refused, _ := j.Check(); len(refused) > 0 {
		return fmt.Errorf("after %d rounds: %w", rounds, refused)
	}
	return nil
}
