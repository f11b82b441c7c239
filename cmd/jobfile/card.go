package jobfile

import (
	"strconv"

	"forel/geometry/job"
	"forel/geometry/onepiece"
	"forel/geometry/slipcase"
)

// Constructions: what a case is made of.
const (
	Boards = "boards" // five boards, lined and covered
	Card   = "card"   // one piece of scored card
)

// construction is the key that tells.
var construction = job.Setting{Key: "construction", What: "what the case is made of", Words: []string{Boards, Card}}

// card makes the job of a one-piece case of all that was set.
func (r *reader) card(common job.Common) onepiece.Job {
	c := onepiece.DefaultJob()
	c.Common = common
	shared := c.Common.Settings()
	for _, s := range c.Settings() {
		if _, ok := shared.Find(s.Key); !ok {
			r.fill(job.Settings{s})
		}
	}
	return c
}

// checkCard holds a one-piece case against its own checks.
func (r *reader) checkCard(f File) (refused, suspect job.Problems) {
	refused, suspect = f.Card.Check()
	standard := slipcase.DefaultJob()
	usual := standard.Settings()
	for _, s := range f.Job.Settings().Words() {
		if was, _ := usual.Find(s.Key); *s.Word != *was.Word {
			suspect = append(suspect, job.Problem{Key: s.Key, Value: strconv.Quote(*s.Word), Reason: "is for a case of boards; a case of card has none of it",
				Fix: `leave it out, or give construction = "boards"`})
		}
	}
	return refused, suspect
}
