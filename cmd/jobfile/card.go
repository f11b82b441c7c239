package jobfile

import (
	"math"
	"strconv"
	"strings"

	"forel/geometry/onepiece"
	"forel/geometry/slipcase"
)

// Constructions: what a case is made of.
const (
	Boards = "boards" // five boards, lined and covered
	Card   = "card"   // one piece of scored card
)

// construction is the key that tells.
var construction = slipcase.Choice{Key: "construction", What: "what the case is made of", Words: []string{Boards, Card}}

// cardFields are the lengths that only a case of card has; its clearance is
// that of any case.
var cardFields = func() []onepiece.Field {
	var out []onepiece.Field
	for _, f := range onepiece.Fields {
		if !strings.HasPrefix(f.Key, "clearance.") {
			out = append(out, f)
		}
	}
	return out
}()

// card makes the job of a one-piece case of all that was set.
func (r *reader) card(job slipcase.Job) onepiece.Job {
	c := onepiece.DefaultJob()
	c.Title, c.Unit, c.Book, c.Clearance = job.Title, job.Unit, job.Book(), job.Clearance
	for _, f := range cardFields {
		if v, ok := r.get(f.Key); ok {
			*f.At(&c) = r.length(v, f.Key, f.What, f.Min, f.Max)
		}
	}
	for _, f := range onepiece.Fractions {
		if v, ok := r.get(f.Key); ok {
			*f.At(&c) = r.fraction(v, f)
		}
	}
	return c
}

// fraction reads a plain number.
func (r *reader) fraction(v value, f onepiece.Fraction) float64 {
	n := math.NaN()
	switch v.kind {
	case numberKind:
		n = float(v.text)
	case textKind:
		if m := share.FindStringSubmatch(strings.TrimSpace(v.text)); m != nil && !strings.Contains(v.text, "%") {
			n = float(strings.Replace(m[1], ",", ".", 1))
		}
	}
	if n >= f.Min && n <= f.Max { // false for NaN too
		return n
	}
	r.refuse(v.at, written(v)+" is no such fraction", "give "+plain(f.Min)+" to "+plain(f.Max)+" ("+f.What+")")
	return f.Min
}

// checkCard holds a one-piece case against its own checks.
func (r *reader) checkCard(f File) (refused, suspect slipcase.Problems) {
	refused, suspect = f.Card.Check()
	refused = append(refused, f.Job.CheckLimits()...)
	standard := slipcase.DefaultJob()
	for _, c := range slipcase.Choices {
		if word := *c.At(&f.Job); word != *c.At(&standard) {
			suspect = append(suspect, slipcase.Problem{Key: c.Key, Wrong: strconv.Quote(word) + " is for a case of boards; a case of card has none of it",
				Right: `leave it out, or give construction = "boards"`})
		}
	}
	if n := len(f.Job.Books); n > 1 {
		refused = append(refused, slipcase.Problem{Key: slipcase.BookKey(1, "height"), Wrong: "a case of card holds one book", Right: `keep one [[book]], or give construction = "boards"`})
	}
	return refused, suspect
}
