package slipcase_test

import (
	"errors"
	"fmt"

	"pgregory.net/rapid"

	"forel/geometry/job"
	"forel/geometry/slipcase"
)

// settled does what refusals say, about thumb holes too, until a job is accepted.
func settled(j slipcase.Job) (slipcase.Case, error) {
	for round := 0; ; round++ {
		c, err := slipcase.Make(j)
		var refused job.Problems
		if !errors.As(err, &refused) {
			return c, err
		}
		if round == mendRounds || !applied(&j, refused) {
			return c, fmt.Errorf("after %d rounds: %w", round, err)
		}
	}
}

// casesWith draws cases of ordinary and odd settings, each job changed before it
// is settled.
func casesWith(change func(*rapid.T, *slipcase.Job)) *rapid.Generator[slipcase.Case] {
	return rapid.Custom(func(t *rapid.T) slipcase.Case {
		j := rapid.OneOf(defaultJobs(), anyJobs()).Draw(t, "job")
		change(t, &j)
		c, err := settled(j)
		if err != nil {
			t.Fatalf("%v: %+v", err, j)
		}
		return c
	})
}

// boards gives the thickness of a board as joined and of a lining that is not
// on it yet.
func boards(j slipcase.Job) (edge, lining float64) {
	if j.Lining.Order == slipcase.LinedAfter {
		return j.Board.Thickness.MM(), j.Lining.Thickness.MM()
	}
	return j.Board.Thickness.MM() + j.Lining.Thickness.MM(), 0
}

// carcass gives the outside of a plain case of one book by the tables of the
// design, and the space between its boards: height, depth, thickness.
func carcass(j slipcase.Job) (outside, between [3]float64) {
	edge, lining := boards(j)
	b := j.Books[0]
	between = [3]float64{
		largest(b.Height) + j.Clearance.Height.MM() + 2*lining,
		largest(b.Width) + j.Clearance.Width.MM() + lining,
		largest(b.Thickness) + j.Clearance.Thickness.MM() + 2*lining,
	}
	return [3]float64{between[0] + 2*edge, between[1] + edge, between[2] + 2*edge}, between
}
